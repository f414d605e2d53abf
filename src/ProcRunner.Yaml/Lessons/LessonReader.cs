using ProcRunner.Lessons;
using ProcRunner.Quantities;
using ProcRunner.Yaml.Trees;
using ProcRunner.Yaml.Values;

namespace ProcRunner.Yaml.Lessons;

/// <summary>A lesson's tree to the lesson.</summary>
internal sealed class LessonReader(ProblemLog log)
{
    private static readonly string[] Known =
    [
        "lesson",
        "title",
        "practice",
        "head-spec",
        "seed",
        "learn",
        "minutes",
        "unit",
        "from",
        "at",
        "until",
        "until-way",
        "head",
        "then",
        "parts",
        "gauges",
        "tools",
        "planted",
        "told",
        "hints",
    ];

    private readonly ValueReader _values = new(log);

    /// <summary>The lesson; of use only when nothing was reported.</summary>
    public Lesson? Read(Node root)
    {
        if (Keys.Of(root, "a lesson", Known, log) is not { } keys)
        {
            return null;
        }

        Unit unit = _values.UnitOf(keys.Require("unit")) ?? Units.Inch;
        TruthReader truths = new(log, unit);
        Lesson lesson = new()
        {
            Name = _values.Name(keys.Require("lesson")) ?? "",
            Title = _values.Text(keys.Require("title")) ?? "",
            Practice = _values.Name(keys.Require("practice")) ?? "",
            HeadSpec = keys.Find("head-spec") is { } head ? _values.Name(head) : null,
            Seed = _values.Whole(keys.Require("seed"), 0, int.MaxValue) ?? 0,
            Learn = _values.Text(keys.Require("learn")) ?? "",
            Minutes = keys.Find("minutes") is { } minutes ? _values.Whole(minutes, 1, 600) : null,
            From = keys.Find("from") is { } from ? _values.Text(from) : null,
            At = keys.Find("at") is { } at ? _values.Text(at) : null,
            Until = _values.Text(keys.Require("until")) ?? "",
            UntilWay = keys.Find("until-way") is { } way ? _values.Text(way) : null,
            Heads = truths.Read(keys.Find("head"), "true values"),
            Then = truths.Read(keys.Find("then"), "true values"),
            Parts = truths.ReadParts(keys.Find("parts")),
            Gauges = new GaugeReader(log).ReadAll(keys.Find("gauges"), unit),
            Tools = new SetupReader(log).Tools(keys.Find("tools")),
            Planted = [.. _values.List(keys.Find("planted"), "faults").Select(Fault).OfType<PlantedFault>()],
            Told = Texts(keys.Find("told")),
            Hints = Texts(keys.Find("hints")),
        };
        return log.Count == 0 ? lesson : null;
    }

    private PlantedFault? Fault(Node node)
    {
        if (
            Keys.Of(
                node,
                "a planted fault",
                ["fault", "what", "step", "at", "answer", "or-change", "shown-by", "rule"],
                log
            )
            is not { } keys
        )
        {
            return null;
        }

        string? name = _values.Name(keys.Require("fault"));
        string? what = _values.Text(keys.Require("what"));
        string? step = _values.Text(keys.Require("step"));
        string? answer = _values.Text(keys.Require("answer"));
        string? rule = _values.Text(keys.Require("rule"));
        return name is null || what is null || step is null || answer is null || rule is null
            ? null
            : new PlantedFault(name, what, step, _values.Text(keys.Find("at")), answer, rule, keys.Place)
            {
                OrChange = keys.Find("or-change") is { } change ? _values.Text(change) : null,
                ShownBy = keys.Find("shown-by") is { } shown ? _values.Text(shown) : null,
            };
    }

    private Dictionary<string, string> Texts(Node? node)
    {
        if (node is not Node.Map map)
        {
            return [];
        }

        return map
            .Entries.Select(e => (Step: e.Key.Text, Text: _values.Text(e.Value)))
            .Where(h => h.Text is not null)
            .ToDictionary(h => h.Step, h => h.Text!, StringComparer.Ordinal);
    }
}
