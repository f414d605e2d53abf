using ProcRunner.Formulas;

namespace ProcRunner.Procedures.Checks;

/// <summary>Which names a formula can't do without.</summary>
internal static class FormulaNames
{
    /// <summary>
    /// The names that must have a value: all but those that <c>else</c> has a fallback for and <c>known</c> only asks about.
    /// </summary>
    public static IEnumerable<string> Needed(Formula formula) => Needed(formula.Root).Distinct(StringComparer.Ordinal);

    private static IEnumerable<string> Needed(FormulaNode node) =>
        node switch
        {
            FormulaNode.Name name => [name.Text],
            FormulaNode.Negative one => Needed(one.Of),
            FormulaNode.Opposite one => Needed(one.Of),
            FormulaNode.Arithmetic two => Needed(two.Left).Concat(Needed(two.Right)),
            FormulaNode.Comparison two => Needed(two.Left).Concat(Needed(two.Right)),
            FormulaNode.Joint two => Needed(two.Left).Concat(Needed(two.Right)),
            FormulaNode.Call { Function.Name: "known" } => [],
            FormulaNode.Call { Function.Name: "else" } call => call.Values.Skip(1).SelectMany(Needed),
            FormulaNode.Call call => call.Values.SelectMany(Needed),
            FormulaNode.Work work => work.Values.SelectMany(Needed),
            _ => [],
        };
}
