using ProcRunner.Lessons;
using ProcRunner.Quantities;
using ProcRunner.Shop;
using ProcRunner.Yaml.Trees;
using ProcRunner.Yaml.Values;

namespace ProcRunner.Yaml.Lessons;

/// <summary>Gauges with how they really behave, and the readout.</summary>
internal sealed class GaugeReader(ProblemLog log)
{
    private static readonly string[] Known =
    [
        "kind",
        "called",
        "resolution",
        "uncertainty",
        "turn",
        "face",
        "bias",
        "spread",
        "feel",
        "wrong-turns",
        "not-zeroed",
        "not-zeroed-by",
        "pilot-bend",
        "dirty-seats",
        "dirt-by",
    ];

    private static readonly Dictionary<string, FaceKind> Faces = new(StringComparer.Ordinal)
    {
        ["digits"] = FaceKind.Digits,
        ["micrometer"] = FaceKind.Micrometer,
        ["dial"] = FaceKind.Dial,
        ["ring"] = FaceKind.Ring,
        ["scale"] = FaceKind.Scale,
        ["leaves"] = FaceKind.Leaves,
    };

    private readonly ValueReader _values = new(log);

    public GaugeList? ReadFile(Node root)
    {
        if (Keys.Of(root, "a gauge file", ["unit", "gauges"], log) is not { } keys)
        {
            return null;
        }

        if (_values.UnitOf(keys.Require("unit")) is not { } unit || keys.Require("gauges") is not { } node)
        {
            return null;
        }

        IReadOnlyList<GaugeCharacter> gauges = ReadAll(node, unit);
        if (node is Node.Map { Entries.Count: 0 })
        {
            log.Add("PR-Y10", node.Place, "no gauge was read; one or more is wanted, each under its id");
        }

        foreach (IGrouping<string, GaugeCharacter> kind in gauges.GroupBy(g => g.Gauge.Kind, StringComparer.Ordinal))
        {
            foreach (GaugeCharacter twice in kind.Skip(1))
            {
                log.Add(
                    "PR-Y10",
                    twice.Source,
                    $"a second gauge of the kind '{kind.Key}' was read; one of each is wanted"
                );
            }
        }

        return new GaugeList(gauges);
    }

    public IReadOnlyList<GaugeCharacter> ReadAll(Node? node, Unit length) =>
        [.. _values.Entries(node, "gauges").Select(e => Read(e, length)).OfType<GaugeCharacter>()];

    public Readout? ReadReadout(Node? node)
    {
        string[] known = ["unit", "step", "deeper", "shows-diameter", "step-mode", "preset"];
        if (Keys.Of(node, "a readout", known, log) is not { } keys)
        {
            return null;
        }

        Unit? unit = _values.UnitOf(keys.Require("unit"));
        Quantity? step = _values.Quantity(keys.Require("step"), unit);
        bool grows =
            _values.OneOf(
                keys.Find("deeper"),
                new Dictionary<string, bool>(StringComparer.Ordinal) { ["grows"] = true, ["shrinks"] = false }
            ) ?? true;
        bool diameter = _values.YesNo(keys.Find("shows-diameter")) ?? false;
        bool stepMode = _values.YesNo(keys.Find("step-mode")) ?? false;
        bool preset = _values.YesNo(keys.Find("preset")) ?? false;
        return unit is not null && step is { Value: > 0 } by
            ? new Readout(unit, by.Value, grows, diameter, stepMode, preset)
            : null;
    }

    private GaugeCharacter? Read(Node.MapEntry entry, Unit length)
    {
        if (Keys.Of(entry.Value, "a gauge", Known, log) is not { } keys)
        {
            return null;
        }

        string? kind = _values.Name(keys.Require("kind"));
        Quantity? resolution = _values.Quantity(keys.Require("resolution"), length);
        Quantity? uncertainty = _values.Quantity(keys.Require("uncertainty"), length);
        if (kind is null || resolution is not { } step || uncertainty is not { } stated)
        {
            return null;
        }

        if (step.Value <= 0)
        {
            log.Add("PR-Y10", keys.Find("resolution")!.Place, $"{step} was read; a resolution above 0 is wanted");
            return null;
        }

        Gauge gauge = new(
            entry.Key.Text,
            _values.Text(keys.Find("called")) ?? entry.Key.Text,
            kind,
            step,
            stated,
            _values.Quantity(keys.Find("turn"), length),
            CalibratedUntil: null
        );
        double Of(string key) => AmountIn(keys.Find(key), step.Unit);
        double Size(string key) => NotNegative(keys.Find(key), Of(key));
        _ = Size("uncertainty");
        return new GaugeCharacter(
            gauge,
            Of("bias"),
            Size("spread"),
            Size("feel"),
            Share(keys.Find("wrong-turns")),
            Share(keys.Find("not-zeroed")),
            Of("not-zeroed-by")
        )
        {
            Source = entry.Key.Place,
            PilotBend = Of("pilot-bend"),
            DirtySeats = Share(keys.Find("dirty-seats")),
            DirtBy = Of("dirt-by"),
            Face = _values.OneOf(keys.Find("face"), Faces),
        };
    }

    private double AmountIn(Node? node, Unit unit)
    {
        if (_values.Quantity(node, unit) is not { } amount)
        {
            return 0;
        }

        if (amount.Dimension == unit.Dimension)
        {
            return Exact.Of(amount).In(unit).ToDouble();
        }

        log.Add("PR-Y09", node!.Place, $"{amount} was read; this is an amount in {unit}, as the gauge's resolution is");
        return 0;
    }

    private double NotNegative(Node? node, double amount)
    {
        if (amount < 0)
        {
            log.Add("PR-Y10", node!.Place, "a deviation or an uncertainty below 0 was read; it has no sign");
        }

        return amount;
    }

    private double Share(Node? node)
    {
        if (_values.Quantity(node, null) is not { } share)
        {
            return 0;
        }

        if (share.Unit == Units.One && share.Value is >= 0 and <= 1)
        {
            return (double)share.Value;
        }

        log.Add("PR-Y10", node!.Place, $"{share} was read; how often, from 0 to 1, is wanted");
        return 0;
    }
}
