using ProcRunner.Quantities;

namespace ProcRunner.Formulas;

/// <summary>Collects what a formula's check finds and words it: what a part is, and what to write instead.</summary>
internal sealed class FormulaCheckNotes(string text, IReadOnlyList<FormulaToken> tokens, List<FormulaProblem> problems)
{
    /// <summary>Reports a problem; the part it is about counts as broken from then on.</summary>
    public FormulaNode Report(FormulaSpan span, FormulaFault fault, string message)
    {
        problems.Add(FormulaProblem.At(text, span, fault, message));
        return new FormulaNode.Broken(span);
    }

    /// <summary>Two quantities that should be of one dimension and aren't.</summary>
    /// <param name="one">The first.</param>
    /// <param name="other">The second.</param>
    /// <param name="span">Where to point if it is no matter of a missing unit.</param>
    /// <param name="done">What can't be done with them: <c>added</c>.</param>
    public FormulaNode Unlike(FormulaNode one, FormulaNode other, FormulaSpan span, string done) =>
        (NeedsUnit(one, other.Type) ?? NeedsUnit(other, one.Type)) is { } missing
            ? missing
            : Report(span, FormulaFault.Units, $"{IsA(one)} and {IsA(other)}: they can't be {done}");

    /// <summary>A part whose type is not what is needed there.</summary>
    public FormulaNode Wrong(FormulaNode node, FormulaType needed, string where) =>
        NeedsUnit(node, needed)
        ?? Report(
            node.Span,
            node.Type is FormulaType.OfQuantity && needed is FormulaType.OfQuantity
                ? FormulaFault.Units
                : FormulaFault.Kind,
            $"{IsA(node)}, but {where} is {WithArticle(needed)}"
        );

    /// <summary>Whether a side of a comparison is a comparison itself, with no parenthesis in between.</summary>
    public bool Chained(FormulaNode left, FormulaNode right) =>
        (left is FormulaNode.Comparison && !Between(left, right).Contains(')'))
        || (right is FormulaNode.Comparison && !Between(left, right).Contains('('));

    /// <summary><c>[depth] is a length</c>.</summary>
    public string IsA(FormulaNode node) =>
        node.Type is { } type ? $"{Quote(node)} is {WithArticle(type)}" : $"{Quote(node)} can't be judged";

    /// <summary>The part as written.</summary>
    public string Quote(FormulaNode node) => FormulaProblem.Quote(text, node.Span);

    /// <summary><c>a length</c>, <c>an angle</c>, <c>yes or no</c>.</summary>
    public static string WithArticle(FormulaType type) =>
        type is FormulaType.OfTruth ? "yes or no"
        : "aeiou".Contains(type.ToString()![0], StringComparison.Ordinal) ? $"an {type}"
        : $"a {type}";

    private ReadOnlySpan<char> Between(FormulaNode left, FormulaNode right) =>
        text.AsSpan(left.Span.End, Math.Max(0, right.Span.Start - left.Span.End));

    // A number written without a unit where a quantity with one is needed.
    private FormulaNode? NeedsUnit(FormulaNode node, FormulaType? needed)
    {
        FormulaNode bare = node;
        while (bare is FormulaNode.Negative negative)
        {
            bare = negative.Of;
        }

        if (
            bare is not FormulaNode.Constant
            || bare.Type != FormulaType.Number
            || needed is not FormulaType.OfQuantity { Dimension: var dimension }
            || dimension == Dimension.None
        )
        {
            return null;
        }

        string number = Quote(bare);
        string instead = UnitFor(dimension) is { } unit
            ? $"write '{number.Trim('\'')} {unit.Symbol}'"
            : $"{WithArticle(needed)} is needed here";
        return Report(bare.Span, FormulaFault.Units, $"{number} has no unit: {instead}");
    }

    // The unit that the formula itself uses for the dimension, else the first of the table.
    private Unit? UnitFor(Dimension dimension)
    {
        foreach (FormulaToken token in tokens)
        {
            if (
                token.Kind == FormulaTokenKind.Quoted
                && Quantity.TryParse(token.Text, out Quantity quantity)
                && quantity.Dimension == dimension
            )
            {
                return quantity.Unit;
            }
        }

        return Units.All.FirstOrDefault(unit => unit.Dimension == dimension);
    }
}
