using System.Collections.Frozen;
using ProcRunner.Procedures;
using ProcRunner.Quantities;
using ProcRunner.Yaml.Trees;
using ProcRunner.Yaml.Values;

namespace ProcRunner.Yaml.Heads;

/// <summary>A head spec's tree to the head spec.</summary>
internal sealed class HeadSpecReader(ProblemLog log)
{
    private static readonly string[] Known =
    [
        "head",
        "title",
        "revision",
        "revised",
        "material",
        "unit",
        "positions",
        "features",
        "figures",
        "limits",
        "fits",
        "forbidden",
    ];

    private readonly ValueReader _values = new(log);
    private readonly Dictionary<SpecKey, Limit> _limits = [];
    private readonly Dictionary<SpecKey, Figure> _figures = [];
    private IReadOnlyList<string> _kinds = [];

    /// <summary>The head spec; of use only when nothing was reported.</summary>
    public HeadSpec? Read(Node root)
    {
        if (Keys.Of(root, "a head spec", Known, log) is not { } keys)
        {
            return null;
        }

        string? name = _values.Name(keys.Require("head"));
        string? title = _values.Text(keys.Require("title"));
        int? revision = _values.Whole(keys.Require("revision"), 1, 1_000_000);
        Revised? revised = _values.Revised(keys.Find("revised"));
        string? material = _values.Text(keys.Require("material"));
        Unit? unit = ReadUnit(keys.Require("unit"));
        PositionsReader positions = new(_values, log);
        IReadOnlyList<Position> all = positions.Read(keys.Require("positions"));
        _kinds = positions.Kinds;

        if (unit is not null && _kinds.Count > 0)
        {
            ReadFigures(keys, unit);
        }

        FrozenDictionary<string, bool> features = ReadFeatures(keys.Find("features"));
        FrozenDictionary<string, string> forbidden = ReadForbidden(keys.Find("forbidden"));
        if (log.Count > 0)
        {
            return null;
        }

        return new HeadSpec
        {
            Name = name!,
            Title = title!,
            Revision = revision!.Value,
            Revised = revised,
            Material = material!,
            LengthUnit = unit!,
            Positions = all,
            Limits = _limits.ToFrozenDictionary(),
            Figures = _figures.ToFrozenDictionary(),
            Features = features,
            Forbidden = forbidden,
        };
    }

    /// <summary>Reads what is written in the head's unit and by its kinds; without those every line would seem wrong.</summary>
    private void ReadFigures(Keys keys, Unit length)
    {
        ReadByKind(keys.Find("figures"), "figures", LooksLikeFigure, (key, node) => ReadFigure(key, node, length));
        LimitReader limits = new(length, _values, log);
        ReadByKind(
            keys.Find("limits"),
            "limits",
            LimitReader.LooksLikeLimit,
            (key, node) => AddLimits(key.Kind, node, limits.Read(key.Name, node))
        );
        FitReader fits = new(length, _values, log);
        ReadByKind(
            keys.Find("fits"),
            "fits",
            FitReader.LooksLikeFit,
            (key, node) => AddLimits(key.Kind, node, fits.Read(key.Name, node))
        );
    }

    private Unit? ReadUnit(Node? node)
    {
        Unit? unit = _values.UnitOf(node);
        if (unit is null || unit.Dimension == Dimension.OfLength)
        {
            return unit;
        }

        log.Add(
            "PR-Y09",
            node!.Place,
            $"{unit.Symbol} is a unit of {unit.Dimension}; the head's unit is one of length, as in or mm"
        );
        return null;
    }

    /// <summary>Goes through a section whose keys are names, or kinds that hold names.</summary>
    private void ReadByKind(Node? section, string what, Func<Node, bool> isOne, Action<SpecKey, Node> read)
    {
        if (section is not Node.Map map)
        {
            _values.Entries(section, what);
            return;
        }

        foreach (Node.MapEntry entry in map.Entries)
        {
            if (_kinds.Contains(entry.Key.Text, StringComparer.Ordinal))
            {
                foreach (Node.MapEntry inner in _values.Entries(entry.Value, what))
                {
                    read(new SpecKey(inner.Key.Text, entry.Key.Text), inner.Value);
                }
            }
            else if (!isOne(entry.Value))
            {
                log.Add(
                    "PR-H09",
                    entry.Key.Place,
                    $"{Quoting.Of(entry.Key.Text)} holds {what} as a kind does, but it is no kind of this head; {Quoting.Hint(entry.Key.Text, _kinds)}"
                );
            }
            else if (_values.Name(entry.Key) is { } name)
            {
                read(new SpecKey(name, null), entry.Value);
            }
        }
    }

    private void AddLimits(string? kind, Node node, IEnumerable<Limit> limits)
    {
        foreach (Limit limit in limits)
        {
            if (!_limits.TryAdd(new SpecKey(limit.Name, kind), limit))
            {
                log.Add(
                    "PR-P02",
                    node.Place,
                    $"{Quoting.Of(limit.Name)} is already a limit of this head (a fit, or a wear limit, is one too); rename one"
                );
            }
        }
    }

    private static bool LooksLikeFigure(Node node) =>
        node is not Node.Map map || map.Find("is") is not null || map.Find("origin") is not null;

    private void ReadFigure(SpecKey key, Node node, Unit length)
    {
        if (Keys.Of(node, "a figure", ["is", "origin"], log) is not { } keys)
        {
            return;
        }

        if (keys.Find("origin") is null)
        {
            string words = Quoting.AnyOf([.. OriginWords.Table.Keys]);
            log.Add(
                "PR-H01",
                keys.Place,
                $"the figure '{key.Name}' doesn't say where it comes from; add 'origin: {words}'"
            );
        }

        Origin? origin = _values.OneOf(keys.Find("origin"), OriginWords.Table);
        if (_values.Quantity(keys.Require("is"), length) is { } value && origin is { } from)
        {
            _figures[key] = new Figure(value, from);
        }
    }

    private FrozenDictionary<string, bool> ReadFeatures(Node? node)
    {
        Dictionary<string, bool> features = new(StringComparer.Ordinal);
        foreach (Node.MapEntry entry in _values.Entries(node, "features"))
        {
            if (_values.YesNo(entry.Value) is { } has)
            {
                features[entry.Key.Text] = has;
            }
        }

        return features.ToFrozenDictionary(StringComparer.Ordinal);
    }

    private FrozenDictionary<string, string> ReadForbidden(Node? node)
    {
        Dictionary<string, string> forbidden = new(StringComparer.Ordinal);
        foreach (Node.MapEntry entry in _values.Entries(node, "forbidden works"))
        {
            if (_values.Text(entry.Value) is { } why)
            {
                forbidden[entry.Key.Text] = why;
            }
        }

        return forbidden.ToFrozenDictionary(StringComparer.Ordinal);
    }
}
