using System.Globalization;
using ProcRunner.Procedures;
using ProcRunner.Quantities;
using ProcRunner.Yaml.Trees;
using ProcRunner.Yaml.Values;

namespace ProcRunner.Yaml.Heads;

/// <summary>Reads how many cylinders a head has, its kinds of position and their guide angles.</summary>
internal sealed class PositionsReader(ValueReader values, ProblemLog log)
{
    private const int MostCylinders = 24;
    private const int MostKinds = 8;

    /// <summary>The kinds, as far as they can be read.</summary>
    public IReadOnlyList<string> Kinds { get; private set; } = [];

    /// <summary>Every position, by cylinder, then in the order of the kinds; empty when something is wrong.</summary>
    public IReadOnlyList<Position> Read(Node? node)
    {
        if (Keys.Of(node, "positions", ["cylinders", "kinds", "guide-angle"], log) is not { } keys)
        {
            return [];
        }

        int? cylinders = values.Whole(keys.Require("cylinders"), 1, MostCylinders);
        Kinds = ReadKinds(keys.Require("kinds"));
        Dictionary<string, decimal> angles = ReadAngles(keys.Require("guide-angle"));
        if (cylinders is not { } count || Kinds.Any(kind => !angles.ContainsKey(kind)))
        {
            return [];
        }

        return
        [
            .. Enumerable
                .Range(1, count)
                .SelectMany(cylinder => Kinds.Select(kind => new Position(cylinder, kind, angles[kind]))),
        ];
    }

    /// <summary>Whether a text can be a kind: one to three capitals.</summary>
    public static bool IsKind(string text) => text.Length is >= 1 and <= 3 && text.All(char.IsAsciiLetterUpper);

    private List<string> ReadKinds(Node? node)
    {
        List<string> kinds = [];
        IReadOnlyList<Node> items = values.List(node, "kinds");
        if (node is Node.List && items.Count is 0 or > MostKinds)
        {
            log.Add(
                "PR-Y09",
                node!.Place,
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"a head has 1 to {MostKinds} kinds of position, as in [I, E]"
                )
            );
        }

        foreach (Node item in items)
        {
            if (values.Text(item) is not { } kind)
            {
                continue;
            }

            if (!IsKind(kind))
            {
                log.Add(
                    "PR-Y11",
                    item.Place,
                    $"{Quoting.Of(kind)} can't be a kind: write one to three capitals, as I, E or IA"
                );
            }
            else if (kinds.Contains(kind, StringComparer.Ordinal))
            {
                log.Add("PR-P02", item.Place, $"the kind {kind} stands twice; keep one");
            }
            else
            {
                kinds.Add(kind);
            }
        }

        return kinds;
    }

    private Dictionary<string, decimal> ReadAngles(Node? node)
    {
        Dictionary<string, decimal> angles = new(StringComparer.Ordinal);
        if (node is not Node.Map map)
        {
            if (ReadAngle(node) is { } all)
            {
                foreach (string kind in Kinds)
                {
                    angles[kind] = all;
                }
            }

            return angles;
        }

        foreach (Node.MapEntry entry in map.Entries)
        {
            if (!Kinds.Contains(entry.Key.Text, StringComparer.Ordinal))
            {
                log.Add(
                    "PR-H09",
                    entry.Key.Place,
                    $"{Quoting.Of(entry.Key.Text)} is no kind of this head; {Quoting.Hint(entry.Key.Text, Kinds)}"
                );
            }
            else if (ReadAngle(entry.Value) is { } angle)
            {
                angles[entry.Key.Text] = angle;
            }
        }

        foreach (string kind in Kinds.Where(kind => map.Find(kind) is null))
        {
            log.Add("PR-Y07", map.Place, $"the guide angle of {kind} is missing; add '{kind}: 0 deg' or what it is");
        }

        return angles;
    }

    private decimal? ReadAngle(Node? node)
    {
        if (values.Quantity(node, Units.Degree) is not { } read)
        {
            return null;
        }

        if (
            read.Dimension == Dimension.OfAngle
            && read.TryConvert(Units.Degree, 6, Rounding.Nearest, out Quantity angle)
        )
        {
            decimal degrees = angle.Value / 1.000000000000m;
            if (degrees is >= 0 and < 60)
            {
                return degrees;
            }
        }

        log.Add("PR-Y10", node!.Place, $"{read} was read; a guide's angle to the deck's normal is 0 deg to 60 deg");
        return null;
    }
}
