using ProcRunner.Formulas;

namespace ProcRunner.Procedures.Checks;

/// <summary>
/// Asks of a condition whether any case makes it hold. Decisions, findings, kinds and features have few values each, so
/// every case is gone through; whatever else a condition reads counts as "may be".
/// </summary>
internal static class Conditions
{
    private const int MostCases = 256;

    /// <summary>False only when the condition is sure not to hold in every case.</summary>
    /// <param name="condition">A formula that gives yes or no.</param>
    /// <param name="valuesOf">The values that a name can have, texts or <c>yes</c> and <c>no</c>; null when there is no telling.</param>
    public static bool CanHold(Formula condition, Func<string, IReadOnlyList<string>?> valuesOf)
    {
        (string Name, IReadOnlyList<string> Values)[] free =
        [
            .. condition
                .Names.Select(name => (Name: name, Values: valuesOf(name)))
                .Where(one => one.Values is { Count: > 0 })
                .Select(one => (one.Name, one.Values!)),
        ];
        long cases = free.Aggregate(1L, (product, one) => Math.Min(MostCases + 1L, product * one.Values.Count));
        if (cases > MostCases)
        {
            return true;
        }

        Dictionary<string, string> values = new(StringComparer.Ordinal);
        for (long i = 0; i < cases; i++)
        {
            long rest = i;
            foreach ((string name, IReadOnlyList<string> choices) in free)
            {
                values[name] = choices[(int)(rest % choices.Count)];
                rest /= choices.Count;
            }

            if (Truth(condition.Root, values) is not false)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Every text that the condition compares a name with, by name.</summary>
    public static IEnumerable<(string Name, string Text)> Compared(FormulaNode node) =>
        node switch
        {
            FormulaNode.Comparison two => ComparedHere(two.Left, two.Right).Concat(ComparedHere(two.Right, two.Left)),
            FormulaNode.Opposite one => Compared(one.Of),
            FormulaNode.Joint two => Compared(two.Left).Concat(Compared(two.Right)),
            FormulaNode.Call call => call.Values.SelectMany(Compared),
            FormulaNode.Work work => work.Values.SelectMany(Compared),
            _ => [],
        };

    private static IEnumerable<(string Name, string Text)> ComparedHere(FormulaNode left, FormulaNode right) =>
        left is FormulaNode.Name name && right is FormulaNode.Constant { Value: FormulaValue.Word word }
            ? [(name.Text, word.Text)]
            : Compared(left);

    // Three-valued: null is "may be" (Kleene's strong logic).
    private static bool? Truth(FormulaNode node, Dictionary<string, string> values) =>
        node switch
        {
            FormulaNode.Constant { Value: FormulaValue.Truth truth } => truth.Holds,
            FormulaNode.Name name => values.TryGetValue(name.Text, out string? text) ? text == "yes" : null,
            FormulaNode.Opposite one => !Truth(one.Of, values),
            FormulaNode.Joint { NeedsBoth: true } two => And(Truth(two.Left, values), Truth(two.Right, values)),
            FormulaNode.Joint two => !And(!Truth(two.Left, values), !Truth(two.Right, values)),
            FormulaNode.Comparison two => Compare(two, values),
            FormulaNode.Call { Function.Name: "if" } call => Truth(call.Values[0], values) switch
            {
                true => Truth(call.Values[1], values),
                false => Truth(call.Values[2], values),
                null => null,
            },
            _ => null,
        };

    private static bool? And(bool? left, bool? right) =>
        left is false || right is false ? false
        : left is true && right is true ? true
        : null;

    private static bool? Compare(FormulaNode.Comparison two, Dictionary<string, string> values)
    {
        if (Word(two.Left, values) is not { } left || Word(two.Right, values) is not { } right)
        {
            return null;
        }

        return two.Operator switch
        {
            FormulaComparison.Equal => left == right,
            FormulaComparison.NotEqual => left != right,
            _ => null,
        };
    }

    private static string? Word(FormulaNode node, Dictionary<string, string> values) =>
        node switch
        {
            FormulaNode.Constant { Value: FormulaValue.Word word } => word.Text,
            FormulaNode.Constant { Value: FormulaValue.Truth truth } => truth.Holds ? "yes" : "no",
            FormulaNode.Name name => values.GetValueOrDefault(name.Text),
            _ => null,
        };
}
