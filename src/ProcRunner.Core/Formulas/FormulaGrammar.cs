using System.Globalization;
using System.Text;
using NCalc;
using NCalc.Exceptions;

namespace ProcRunner.Formulas;

/// <summary>Has NCalc build the tree: precedence and grouping are its, everything else is ours.</summary>
/// <remarks>
/// Every value is handed over as a name that is its token's running number, <c>[3]</c>, and every function as <c>f3</c>.
/// So each leaf of the tree leads back to its place in the text, and no number passes through the parser's own types.
/// </remarks>
internal static class FormulaGrammar
{
    private static readonly LogicalExpressionParserOptions Options = new();

    /// <summary>The tree of tokens that <see cref="FormulaShape"/> let pass; null, with a problem, if NCalc can't read it.</summary>
    public static LogicalExpression? Parse(
        string text,
        IReadOnlyList<FormulaToken> tokens,
        List<FormulaProblem> problems,
        CancellationToken cancellation
    )
    {
        try
        {
            return LogicalExpressionParser.Parse(Numbered(tokens), Options, CultureInfo.InvariantCulture, cancellation);
        }
        catch (Exception error)
            when (error is NCalcException or InvalidOperationException or FormatException or OverflowException)
        {
            FormulaSpan whole = new(0, text.Length);
            problems.Add(FormulaProblem.At(text, whole, FormulaFault.Unreadable, "this can't be read as a formula"));
            return null;
        }
    }

    /// <summary>The token that a leaf or function of the tree stands for.</summary>
    public static FormulaToken TokenOf(string numbered, IReadOnlyList<FormulaToken> tokens) =>
        tokens[int.Parse(numbered.AsSpan(numbered[0] == 'f' ? 1 : 0), NumberStyles.None, CultureInfo.InvariantCulture)];

    private static string Numbered(IReadOnlyList<FormulaToken> tokens)
    {
        StringBuilder numbered = new();
        for (int i = 0; i < tokens.Count; i++)
        {
            FormulaToken token = tokens[i];
            _ = token.Kind switch
            {
                FormulaTokenKind.Number or FormulaTokenKind.Quoted or FormulaTokenKind.Name or FormulaTokenKind.Truth =>
                    numbered.Append(CultureInfo.InvariantCulture, $"[{i}]"),
                FormulaTokenKind.Function => numbered.Append(CultureInfo.InvariantCulture, $"f{i}"),

                // To the parser a value of its own before those that it names.
                FormulaTokenKind.Label => numbered.Append(CultureInfo.InvariantCulture, $"[{i}],"),
                _ => numbered.Append(token.Text),
            };
            numbered.Append(' ');
        }

        return numbered.ToString();
    }
}
