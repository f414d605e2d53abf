using System.Globalization;
using System.Text;
using ProcRunner.Quantities;

namespace ProcRunner.Formulas;

/// <summary>Writes a formula with its numbers filled in.</summary>
internal sealed class FormulaWorking(IFormulaScope scope, Unit displayUnit, int digits)
{
    private const int FewPlaces = 8;
    private const int MostPlaces = 12;

    public string Show(string text, IReadOnlyList<FormulaToken> tokens, FormulaOutcome outcome)
    {
        StringBuilder shown = new();
        int at = 0;
        foreach (FormulaToken token in tokens)
        {
            shown.Append(text, at, token.Span.Start - at);
            shown.Append(Show(text, token));
            at = token.Span.End;
        }

        shown.Append(text, at, text.Length - at);
        return $"{OnOneLine(shown)} = {Show(outcome)}";
    }

    // Every run of white space becomes one space, none at the ends.
    private static StringBuilder OnOneLine(StringBuilder text)
    {
        StringBuilder line = new(text.Length);
        foreach (ReadOnlyMemory<char> chunk in text.GetChunks())
        {
            foreach (char letter in chunk.Span)
            {
                bool isSpace = char.IsWhiteSpace(letter);
                if (!isSpace || (line.Length > 0 && line[^1] != ' '))
                {
                    line.Append(isSpace ? ' ' : letter);
                }
            }
        }

        line.Length -= line.Length > 0 && line[^1] == ' ' ? 1 : 0;
        return line;
    }

    private string Show(string text, FormulaToken token) =>
        token.Kind switch
        {
            FormulaTokenKind.Name => scope.ValueOf(token.Text) is { } value
                ? Show(value, () => scope.TextOf(token.Text))
                : "?",
            FormulaTokenKind.Quoted => Quantity.TryParse(token.Text, out Quantity quantity)
                ? Show(new FormulaValue.Amount(Exact.Of(quantity)), () => token.Text)
                : token.Text,
            _ => text[token.Span.Start..token.Span.End],
        };

    private string Show(FormulaOutcome outcome) =>
        outcome switch
        {
            FormulaOutcome.Known known => Show(known.Value, null),
            FormulaOutcome.Missing missing => $"? ([{missing.Name}] is not known yet)",
            FormulaOutcome.Impossible impossible => $"? ({impossible.Why})",
            _ => "?",
        };

    private string Show(FormulaValue value, Func<string?>? entered) =>
        value switch
        {
            FormulaValue.Amount { Value: var amount } when amount.Dimension == displayUnit.Dimension => InUnit(
                amount,
                displayUnit
            )
                ?? entered?.Invoke()
                ?? Roughly(amount),
            FormulaValue.Amount { Value: var amount } => entered?.Invoke() ?? Other(amount),
            FormulaValue.Many many => string.Join(
                ", ",
                many.Values.Select(one => Show(new FormulaValue.Amount(one), null))
            ),
            FormulaValue.Truth truth => truth.Holds ? "yes" : "no",
            FormulaValue.Word word => word.Text,
            _ => "?",
        };

    private string? InUnit(Exact amount, Unit unit) =>
        amount.TryToQuantity(unit, digits, Rounding.Nearest, out Quantity shown)
            ? shown.Value.ToString(CultureInfo.InvariantCulture)
            : null;

    // The places asked for are those of the result. What it is worked out from is shown as it is where that takes few places,
    // and otherwise with as many as make it more than nought.
    private string? InOwnPlaces(Exact amount, Unit unit)
    {
        for (int places = digits; places <= FewPlaces; places++)
        {
            if (
                amount.TryToQuantity(unit, places, Rounding.Nearest, out Quantity shown)
                && Exact.Of(shown).Value == amount.Value
            )
            {
                return shown.Value.ToString(CultureInfo.InvariantCulture);
            }
        }

        for (int places = digits; places <= MostPlaces; places++)
        {
            if (
                amount.TryToQuantity(unit, places, Rounding.Nearest, out Quantity shown)
                && shown.Value.ToString(CultureInfo.InvariantCulture).TrimStart('-', '0', '.').Length >= 2
            )
            {
                return shown.Value.ToString(CultureInfo.InvariantCulture);
            }
        }

        return InUnit(amount, unit);
    }

    private string Other(Exact amount) =>
        Units.All.FirstOrDefault(unit => unit.Dimension == amount.Dimension) is { } unit
        && InOwnPlaces(amount, unit) is { } number
            ? $"{number} {unit.Symbol}".TrimEnd()
            : Roughly(amount);

    // Too large for a decimal, or of a dimension that has no unit.
    private static string Roughly(Exact amount) =>
        string.Create(CultureInfo.InvariantCulture, $"{amount.Value.ToDouble():G6} (base units of {amount.Dimension})");
}
