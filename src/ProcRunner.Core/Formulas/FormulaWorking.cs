using System.Globalization;
using System.Runtime.CompilerServices;
using ProcRunner.Quantities;

namespace ProcRunner.Formulas;

/// <summary>Writes a formula with its numbers filled in, straight into one line: a run writes one for each value that it works out.</summary>
internal readonly struct FormulaWorking(IFormulaScope scope, Unit displayUnit, int digits)
{
    // Most formulas of a shop fit, so that nothing but the text itself takes memory.
    private const int Usual = 256;
    private const int FewPlaces = 8;
    private const int MostPlaces = 12;

    /// <summary>The formula and the amount that came of it.</summary>
    public string Show(string text, IReadOnlyList<FormulaToken> tokens, Exact amount)
    {
        DefaultInterpolatedStringHandler line = new(0, 0, CultureInfo.InvariantCulture, stackalloc char[Usual]);
        Fill(ref line, text, tokens);
        line.AppendLiteral(" = ");
        Amount(ref line, amount, null);
        return line.ToStringAndClear();
    }

    /// <summary>The formula and what came of it, or why there is no result.</summary>
    public string Show(string text, IReadOnlyList<FormulaToken> tokens, FormulaOutcome outcome)
    {
        DefaultInterpolatedStringHandler line = new(0, 0, CultureInfo.InvariantCulture, stackalloc char[Usual]);
        Fill(ref line, text, tokens);
        line.AppendLiteral(" = ");
        switch (outcome)
        {
            case FormulaOutcome.Known known:
                Value(ref line, known.Value, null);
                break;
            case FormulaOutcome.Missing missing:
                line.AppendLiteral($"? ([{missing.Name}] is not known yet)");
                break;
            case FormulaOutcome.Impossible impossible:
                line.AppendLiteral($"? ({impossible.Why})");
                break;
            default:
                line.AppendLiteral("?");
                break;
        }

        return line.ToStringAndClear();
    }

    private void Fill(ref DefaultInterpolatedStringHandler line, string text, IReadOnlyList<FormulaToken> tokens)
    {
        int at = 0;
        for (int i = 0; i < tokens.Count; i++)
        {
            FormulaToken token = tokens[i];
            line.AppendFormatted(text.AsSpan(at, token.Span.Start - at));
            Token(ref line, text, token);
            at = token.Span.End;
        }

        line.AppendFormatted(text.AsSpan(at));
        if (!IsOnOneLine(line.Text))
        {
            string tidied = OnOneLine(line.Text);
            line.Clear();
            line = new DefaultInterpolatedStringHandler(0, 0, CultureInfo.InvariantCulture);
            line.AppendLiteral(tidied);
        }
    }

    private void Token(ref DefaultInterpolatedStringHandler line, string text, FormulaToken token)
    {
        switch (token.Kind)
        {
            case FormulaTokenKind.Name when scope.AmountOf(token.Text) is { } amount:
                Amount(ref line, amount, token.Text);
                break;
            case FormulaTokenKind.Name when scope.ValueOf(token.Text) is { } value:
                Value(ref line, value, token.Text);
                break;
            case FormulaTokenKind.Name:
                line.AppendLiteral("?");
                break;
            case FormulaTokenKind.Quoted when Quantity.TryParse(token.Text, out Quantity quantity):
                Exact quoted = Exact.Of(quantity);
                if (quoted.Dimension != displayUnit.Dimension || !InUnit(ref line, quoted, displayUnit))
                {
                    line.AppendLiteral(token.Text);
                }

                break;
            case FormulaTokenKind.Quoted:
                line.AppendLiteral(token.Text);
                break;
            default:
                line.AppendFormatted(text.AsSpan(token.Span.Start, token.Span.End - token.Span.Start));
                break;
        }
    }

    // A name's amount of another dimension than the one shown stands as it was entered, where it was.
    private void Amount(ref DefaultInterpolatedStringHandler line, Exact amount, string? name)
    {
        if (amount.Dimension == displayUnit.Dimension && InUnit(ref line, amount, displayUnit))
        {
            return;
        }

        if (name is not null && scope.TextOf(name) is { } entered)
        {
            line.AppendLiteral(entered);
        }
        else if (amount.Dimension == displayUnit.Dimension || !Other(ref line, amount))
        {
            // Too large for a decimal, or of a dimension that has no unit.
            line.AppendLiteral(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{amount.Value.ToDouble():G6} (base units of {amount.Dimension})"
                )
            );
        }
    }

    private void Value(ref DefaultInterpolatedStringHandler line, FormulaValue value, string? name)
    {
        switch (value)
        {
            case FormulaValue.Amount amount:
                Amount(ref line, amount.Value, name);
                break;
            case FormulaValue.Many many:
                for (int i = 0; i < many.Values.Count; i++)
                {
                    line.AppendLiteral(i > 0 ? ", " : "");
                    Amount(ref line, many.Values[i], null);
                }

                break;
            case FormulaValue.Truth truth:
                line.AppendLiteral(truth.Holds ? "yes" : "no");
                break;
            case FormulaValue.Word word:
                line.AppendLiteral(word.Text);
                break;
            default:
                line.AppendLiteral("?");
                break;
        }
    }

    private bool InUnit(ref DefaultInterpolatedStringHandler line, Exact amount, Unit unit)
    {
        bool fits = amount.TryToQuantity(unit, digits, Rounding.Nearest, out Quantity shown);
        if (fits)
        {
            line.AppendFormatted(shown.Value);
        }

        return fits;
    }

    private bool Other(ref DefaultInterpolatedStringHandler line, Exact amount)
    {
        if (
            Units.All.FirstOrDefault(unit => unit.Dimension == amount.Dimension) is not { } unit
            || InOwnPlaces(amount, unit) is not { } number
        )
        {
            return false;
        }

        line.AppendFormatted(number);
        line.AppendLiteral(unit.Symbol.Length > 0 ? " " : "");
        line.AppendLiteral(unit.Symbol);
        return true;
    }

    // The places asked for are those of the result. What it is worked out from is shown as it is where that takes few places,
    // and otherwise with as many as make it more than nought.
    private decimal? InOwnPlaces(Exact amount, Unit unit)
    {
        for (int places = digits; places <= FewPlaces; places++)
        {
            if (
                amount.TryToQuantity(unit, places, Rounding.Nearest, out Quantity shown)
                && Exact.Of(shown).Value == amount.Value
            )
            {
                return shown.Value;
            }
        }

        for (int places = digits; places <= MostPlaces; places++)
        {
            if (
                amount.TryToQuantity(unit, places, Rounding.Nearest, out Quantity shown)
                && shown.Value.ToString(CultureInfo.InvariantCulture).TrimStart('-', '0', '.').Length >= 2
            )
            {
                return shown.Value;
            }
        }

        return amount.TryToQuantity(unit, digits, Rounding.Nearest, out Quantity rounded) ? rounded.Value : null;
    }

    private static bool IsOnOneLine(ReadOnlySpan<char> line)
    {
        bool space = true;
        foreach (char letter in line)
        {
            bool isSpace = char.IsWhiteSpace(letter);
            if (isSpace && (space || letter != ' '))
            {
                return false;
            }

            space = isSpace;
        }

        return !space;
    }

    // Every run of white space becomes one space, none at the ends.
    private static string OnOneLine(ReadOnlySpan<char> text)
    {
        char[] line = new char[text.Length];
        int length = 0;
        foreach (char letter in text)
        {
            bool isSpace = char.IsWhiteSpace(letter);
            if (!isSpace || (length > 0 && line[length - 1] != ' '))
            {
                line[length++] = isSpace ? ' ' : letter;
            }
        }

        length -= length > 0 && line[length - 1] == ' ' ? 1 : 0;
        return new string(line, 0, length);
    }
}
