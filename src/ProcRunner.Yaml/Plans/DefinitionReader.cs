using ProcRunner.Problems;
using ProcRunner.Procedures;
using ProcRunner.Quantities;
using ProcRunner.Yaml.Trees;
using ProcRunner.Yaml.Values;

namespace ProcRunner.Yaml.Plans;

/// <summary>Reads the part of a procedure before its stages: settings, what the head must give, data, changes, readings.</summary>
internal sealed class DefinitionReader(ValueReader values, Things things, SourcePlaces sources, ProblemLog log)
{
    private static readonly Dictionary<string, bool> Whose = new(StringComparer.Ordinal)
    {
        ["head"] = true,
        ["position"] = false,
    };

    private static readonly Dictionary<string, Wear> WearWords = new(StringComparer.Ordinal)
    {
        ["smaller"] = Wear.Smaller,
        ["larger"] = Wear.Larger,
    };

    private static readonly string[] ReadingKeys =
    [
        "of",
        "measured-in",
        "places",
        "takes",
        "gauge",
        "rests-on",
        "measured-from",
        "wears",
        "doubt",
        "why",
    ];

    private readonly DoubtReader _doubts = new(values, log);

    /// <summary>Names that stand in the file but whose meaning couldn't be read; nothing more is said about them.</summary>
    public HashSet<string> Broken { get; } = new(StringComparer.Ordinal);

    public IReadOnlyDictionary<string, Setting> Settings(Node? node)
    {
        Dictionary<string, Setting> settings = new(StringComparer.Ordinal);
        foreach (Node.MapEntry entry in values.Entries(node, "settings"))
        {
            string name = entry.Key.Text;
            Broken.Add(name);
            if (Keys.Of(entry.Value, "a setting", ["is", "origin"], log) is not { } keys)
            {
                continue;
            }

            Quantity? value = values.Quantity(keys.Require("is"), null);
            Origin? origin = values.OneOf(keys.Require("origin"), OriginWords.Table);
            if (value is { } known && origin is { } from)
            {
                settings[name] = new Setting(name, known, from);
                Broken.Remove(name);
            }
        }

        return settings;
    }

    public IReadOnlyDictionary<string, Dimension> Figures(Node? node)
    {
        Dictionary<string, Dimension> figures = new(StringComparer.Ordinal);
        foreach (Node.MapEntry entry in values.Entries(node, "figures"))
        {
            if (DimensionOf(entry.Value) is { } dimension)
            {
                figures[entry.Key.Text] = dimension;
            }
            else
            {
                Broken.Add(entry.Key.Text);
            }
        }

        return figures;
    }

    public IReadOnlyList<Datum> Datums(Node? node)
    {
        List<Datum> datums = [];
        foreach (Node.MapEntry entry in values.Entries(node, "datums"))
        {
            if (Keys.Of(entry.Value, "a datum", ["of", "is"], log) is not { } keys)
            {
                continue;
            }

            bool ofHead = values.OneOf(keys.Require("of"), Whose) ?? false;
            string meaning = values.Text(keys.Require("is")) ?? "";
            if (things.Add(entry.Key.Text, ofHead, "a datum", entry.Key.Place))
            {
                datums.Add(new Datum(entry.Key.Text, ofHead, meaning));
            }
        }

        return datums;
    }

    /// <summary>Reads the changes; call it once everything that moves is known.</summary>
    public IReadOnlyList<Change> Changes(Node? node)
    {
        List<Change> changes = [];
        foreach (Node.MapEntry entry in values.Entries(node, "changes"))
        {
            if (Keys.Of(entry.Value, "a change", ["moves", "why"], log) is { } keys)
            {
                // A change is reported where the operator stands; reported at a step of the head it is every position's.
                IReadOnlyList<Move> moves = things.Moves(keys.Require("moves"), atPosition: true);
                changes.Add(new Change(entry.Key.Text, moves, values.Text(keys.Require("why")) ?? ""));
            }
        }

        return changes;
    }

    /// <summary>Reads the readings without what they rest on, which may be named further down.</summary>
    public IReadOnlyList<Characteristic> Readings(Node? node)
    {
        List<Characteristic> readings = [];
        foreach (Node.MapEntry entry in values.Entries(node, "readings"))
        {
            string name = entry.Key.Text;
            int before = log.Count;
            if (Keys.Of(entry.Value, "a reading", ReadingKeys, log) is not { } keys)
            {
                Broken.Add(name);
                continue;
            }

            bool ofHead = values.OneOf(keys.Require("of"), Whose) ?? false;
            Unit? unit = MeasuredIn(keys.Require("measured-in"));
            things.Add(name, ofHead, "a reading", entry.Key.Place);
            readings.Add(
                new Characteristic
                {
                    Name = name,
                    OfHead = ofHead,
                    MeasuredIn = unit,
                    Dimension = unit?.Dimension ?? Dimension.OfLength,
                    Places = Places(keys.Find("places")),
                    Takes = values.OneOf(keys.Find("takes"), FormulaName.StatisticWords) ?? Statistic.Largest,
                    GaugeKind = values.Name(keys.Find("gauge")),
                    Wears = values.OneOf(keys.Find("wears"), WearWords) ?? Wear.NotSaid,
                    Doubts = _doubts.Read(keys.Find("doubt"), unit),
                    Why = values.Text(keys.Find("why")) ?? "",
                }
            );
            if (log.Count > before)
            {
                Broken.Add(name);
            }
        }

        return readings;
    }

    /// <summary>The same readings with what they rest on.</summary>
    public IReadOnlyList<Characteristic> WithRestsOn(IReadOnlyList<Characteristic> readings, Node? node)
    {
        List<Characteristic> whole = [];
        Dictionary<string, Node.MapEntry> entries = new(StringComparer.Ordinal);
        foreach (Node.MapEntry one in (node as Node.Map)?.Entries ?? [])
        {
            entries[one.Key.Text] = one;
        }

        foreach (Characteristic reading in readings)
        {
            Node.MapEntry entry = entries[reading.Name];
            Node.Map? keys = entry.Value as Node.Map;
            Characteristic rested = reading with
            {
                RestsOn = things.RestsOn(keys?.Find("rests-on")),
                MeasuredFrom = things.RestsOn(keys?.Find("measured-from")),
            };
            sources.Add(rested, entry.Key.Place);
            whole.Add(rested);
        }

        return whole;
    }

    /// <summary>Names of places; words for statistics are kept free, since formulas read both alike.</summary>
    public IReadOnlyList<string> Places(Node? node)
    {
        IReadOnlyList<string> places = values.Names(node, "places");
        foreach (
            string place in places.Where(one => one == FormulaName.Each || FormulaName.StatisticWords.ContainsKey(one))
        )
        {
            log.Add(
                "PR-P02",
                node!.Place,
                $"a place can't be called '{place}': formulas take that for one of all places"
            );
        }

        return places;
    }

    // Null, with or without a problem, is the head's unit of length.
    private Unit? MeasuredIn(Node? node) =>
        node is Node.Scalar { Text: "length" } ? null
        : node is Node.Scalar { Text: "pure number" } ? Units.One
        : values.UnitOf(node);

    private Dimension? DimensionOf(Node node)
    {
        if (values.Scalar(node, "a kind of quantity") is not { } scalar)
        {
            return null;
        }

        if (Dimension.TryParse(scalar.Text, out Dimension dimension))
        {
            return dimension;
        }

        if (Units.Find(scalar.Text) is { } unit)
        {
            return unit.Dimension;
        }

        log.Add(
            "PR-Y09",
            node.Place,
            $"{Quoting.Of(scalar.Text)} is no kind of quantity and no unit; write length, angle, force and so on, or a unit such as mm"
        );
        return null;
    }
}
