using ProcRunner.Procedures;
using ProcRunner.Quantities;
using ProcRunner.Yaml.Trees;
using ProcRunner.Yaml.Values;

namespace ProcRunner.Yaml.Heads;

/// <summary>Reads a press fit from the limits of both parts; what they give is the limit of its interference.</summary>
internal sealed class FitReader(Unit length, ValueReader values, ProblemLog log)
{
    // More places than any length in a shop has; only a fit in two units needs them.
    private const int ConvertedPlaces = 10;

    private static readonly string[] FitKeys = ["outside", "hole", "interference", "origin", "note"];
    private static readonly string[] EndKeys = ["low", "high"];

    public static bool LooksLikeFit(Node node) =>
        node is not Node.Map { Entries.Count: > 0 } map
        || map.Entries.Any(entry => FitKeys.Contains(entry.Key.Text, StringComparer.Ordinal))
        || !map.Entries.All(entry => entry.Value is Node.Map);

    /// <summary>The fit as the limit of its interference; nothing when it can't be read or can be loose.</summary>
    public IEnumerable<Limit> Read(string name, Node node)
    {
        if (Keys.Of(node, "a fit", FitKeys, log) is not { } keys)
        {
            return [];
        }

        if (keys.Find("origin") is null)
        {
            string words = Quoting.AnyOf([.. OriginWords.Table.Keys]);
            log.Add("PR-H01", keys.Place, $"the fit '{name}' doesn't say where it comes from; add 'origin: {words}'");
        }

        Origin? origin = values.OneOf(keys.Find("origin"), OriginWords.Table);
        string note = values.Text(keys.Find("note")) ?? "";
        (Quantity Low, Quantity High)? outside = ReadRange(name, keys.Require("outside"), "outside");
        (Quantity Low, Quantity High)? hole = ReadRange(name, keys.Require("hole"), "hole");
        (Quantity Low, Quantity High)? stated = ReadRange(name, keys.Find("interference"), "interference");
        if (outside is not { } part || hole is not { } bore)
        {
            return [];
        }

        Quantity least = Less(part.Low, bore.High);
        Quantity most = Less(part.High, bore.Low);
        if (least.Value <= 0)
        {
            log.Add(
                "PR-H05",
                keys.Place,
                $"the fit '{name}' can be loose: the smallest part {part.Low} in the largest hole {bore.High} leaves {least} of interference; it must be above zero"
            );
            return [];
        }

        if (stated is { } said && !(Agrees(said.Low, least) && Agrees(said.High, most)))
        {
            log.Add(
                "PR-H06",
                keys.PlaceOf("interference"),
                $"the fit '{name}' says interference {said.Low} to {said.High}, but its limits give {least} to {most}; correct the one that is wrong"
            );
        }

        return origin is { } from ? [new Limit(name, least, null, most, from, note, null)] : [];
    }

    private (Quantity Low, Quantity High)? ReadRange(string name, Node? node, string of)
    {
        if (Keys.Of(node, $"the {of} of a fit", EndKeys, log) is not { } keys)
        {
            return null;
        }

        Quantity? low = ReadLength(name, keys.Require("low"));
        Quantity? high = ReadLength(name, keys.Require("high"));
        if (low is not { } least || high is not { } most)
        {
            return null;
        }

        if (least.CompareTo(most) > 0)
        {
            log.Add(
                "PR-H02",
                keys.PlaceOf("high"),
                $"'{name}' {of} has low {least} above high {most}; turn them round or correct one"
            );
            return null;
        }

        return (least, most);
    }

    private Quantity? ReadLength(string name, Node? node)
    {
        if (values.Quantity(node, length) is not { } value)
        {
            return null;
        }

        if (value.Dimension != Dimension.OfLength)
        {
            log.Add("PR-H04", node!.Place, $"'{name}' has {value}, a {value.Dimension}; a fit is made of lengths");
            return null;
        }

        return value;
    }

    private static Quantity Less(Quantity left, Quantity right)
    {
        if (ReferenceEquals(left.Unit, right.Unit))
        {
            return new Quantity(left.Value - right.Value, left.Unit);
        }

        Exact difference = new(Exact.Of(left).Value - Exact.Of(right).Value, Dimension.OfLength);
        return difference.TryToQuantity(left.Unit, ConvertedPlaces, Rounding.Down, out Quantity result)
            ? result
            : new Quantity(0, left.Unit);
    }

    // In one unit the sum must come out to the digit; in two, as far as the last digit written can tell.
    private static bool Agrees(Quantity stated, Quantity given) =>
        ReferenceEquals(stated.Unit, given.Unit)
            ? stated.Value == given.Value
            : DigitInterval.Of(stated).Overlaps(DigitInterval.Of(given));
}
