using ProcRunner.Procedures;
using ProcRunner.Quantities;
using ProcRunner.Yaml.Trees;
using ProcRunner.Yaml.Values;

namespace ProcRunner.Yaml.Plans;

/// <summary>Reads which questions a reading can raise: <c>doubt: no</c>, or rule by rule <c>no</c>, <c>yes</c> or a distance.</summary>
internal sealed class DoubtReader(ValueReader values, ProblemLog log)
{
    private static readonly string[] Rules = ["one-turn", "against-wear", "swapped", "odd-one-out"];

    private static readonly Dictionary<string, bool> Words = new(StringComparer.Ordinal)
    {
        ["yes"] = true,
        ["no"] = false,
    };

    /// <summary>The rules of a reading in a unit; null: the head's unit of length.</summary>
    public DoubtRules Read(Node? node, Unit? unit)
    {
        if (node is null)
        {
            return DoubtRules.Usual;
        }

        if (node is Node.Scalar)
        {
            return values.OneOf(node, Words) is false ? DoubtRules.None : DoubtRules.Usual;
        }

        return Keys.Of(node, "doubt", Rules, log) is { } keys
            ? new DoubtRules
            {
                OneTurn = Rule(keys.Find(Rules[0]), unit),
                AgainstWear = Rule(keys.Find(Rules[1]), unit),
                Swapped = Rule(keys.Find(Rules[2]), unit),
                OddOneOut = Rule(keys.Find(Rules[3]), unit),
            }
            : DoubtRules.Usual;
    }

    // A bare number could be in any head's unit, so a distance says its own.
    private DoubtRule Rule(Node? node, Unit? unit)
    {
        if (node is null)
        {
            return DoubtRule.Usual;
        }

        if (node is Node.Scalar scalar && Words.TryGetValue(scalar.Text, out bool on))
        {
            return on ? DoubtRule.Usual : DoubtRule.Off;
        }

        if (values.Quantity(node, null) is not { } by)
        {
            return DoubtRule.Usual;
        }

        Dimension wanted = unit?.Dimension ?? Dimension.OfLength;
        if (by.Dimension == wanted && by.Value > 0)
        {
            return new DoubtRule(On: true, by);
        }

        log.Add("PR-Y10", node.Place, $"{by} was read; write yes, no or a {wanted} over 0, as 0.005 in");
        return DoubtRule.Usual;
    }
}
