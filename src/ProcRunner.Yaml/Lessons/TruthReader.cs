using ProcRunner.Lessons;
using ProcRunner.Quantities;
using ProcRunner.Yaml.Trees;
using ProcRunner.Yaml.Values;

namespace ProcRunner.Yaml.Lessons;

/// <summary>
/// True values: a number, a list of numbers, or <c>is</c> with how much heads vary; a word is a condition; a map without
/// <c>is</c> holds those of a kind of position or of one position.
/// </summary>
internal sealed class TruthReader(ProblemLog log, Unit length)
{
    private readonly ValueReader _values = new(log);

    public TruthTable Read(Node? node, string what)
    {
        TruthTable table = new();
        Read(node, what, null, table);
        return table;
    }

    /// <summary>Tables by the name of a part.</summary>
    public IReadOnlyDictionary<string, TruthTable> ReadParts(Node? node) =>
        _values
            .Entries(node, "parts")
            .ToDictionary(e => e.Key.Text, e => Read(e.Value, "a part's values"), StringComparer.Ordinal);

    private void Read(Node? node, string what, string? where, TruthTable table)
    {
        foreach (Node.MapEntry entry in _values.Entries(node, what))
        {
            TruthKey key = new(entry.Key.Text, where);
            switch (entry.Value)
            {
                case Node.Map map when map.Find("is") is null && where is null:
                    Read(map, what, entry.Key.Text, table);
                    break;
                case Node.Scalar word when !Quantity.TryParse(word.Text, out _):
                    table.Conditions[key] = Condition(word);
                    break;
                default:
                    if (Value(entry.Value) is { } value)
                    {
                        table.Values[key] = value;
                    }

                    break;
            }
        }
    }

    // "nicked", or "nicked in 0.02" for two of a hundred.
    private TrueCondition Condition(Node.Scalar node)
    {
        string text = _values.Text(node) ?? "";
        int share = text.LastIndexOf(" in ", StringComparison.Ordinal);
        return
            share > 0
            && double.TryParse(
                text[(share + 4)..],
                System.Globalization.NumberStyles.AllowDecimalPoint,
                System.Globalization.CultureInfo.InvariantCulture,
                out double of
            )
            && of is >= 0 and <= 1
            ? new TrueCondition(text[..share], of, node.Place)
            : new TrueCondition(text, 1, node.Place);
    }

    private TrueValue? Value(Node node)
    {
        if (node is not Node.Map)
        {
            return List(node) is { Count: > 0 } plain ? new TrueValue(plain, null, null, node.Place) : null;
        }

        if (Keys.Of(node, "a true value", ["is", "varies", "each-varies"], log) is not { } keys)
        {
            return null;
        }

        IReadOnlyList<Quantity> values = List(keys.Require("is"));
        return values.Count == 0
            ? null
            : new TrueValue(
                values,
                _values.Quantity(keys.Find("varies"), length),
                _values.Quantity(keys.Find("each-varies"), length),
                keys.Place
            );
    }

    private IReadOnlyList<Quantity> List(Node? node) =>
        node is Node.List list
            ? [.. list.Items.Select(item => _values.Quantity(item, length)).OfType<Quantity>()]
            : [.. new[] { _values.Quantity(node, length) }.OfType<Quantity>()];
}
