using ProcRunner.Lessons;
using ProcRunner.Quantities;
using ProcRunner.Shop;
using ProcRunner.Yaml.Trees;
using ProcRunner.Yaml.Values;

namespace ProcRunner.Yaml.Lessons;

/// <summary>A practice setup's tree to the setup.</summary>
internal sealed class SetupReader(ProblemLog log)
{
    private static readonly string[] Known =
    [
        "practice",
        "title",
        "procedure",
        "head",
        "unit",
        "readout",
        "gauges",
        "tools",
        "readings",
        "works",
        "ways",
        "findings",
        "decisions",
        "concedes",
        "ends-cuts-in-window",
        "heads",
        "parts",
    ];

    private readonly ValueReader _values = new(log);

    /// <summary>The setup; of use only when nothing was reported.</summary>
    public PracticeSetup? Read(Node root)
    {
        if (Keys.Of(root, "a practice setup", Known, log) is not { } keys)
        {
            return null;
        }

        string? name = _values.Name(keys.Require("practice"));
        string? title = _values.Text(keys.Require("title"));
        string? procedure = _values.Name(keys.Require("procedure"));
        string? head = _values.Name(keys.Require("head"));
        Unit unit = _values.UnitOf(keys.Require("unit")) ?? Units.Inch;
        GaugeReader gauges = new(log);
        TruthReader truths = new(log, unit);
        Readout? readout = gauges.ReadReadout(keys.Require("readout"));
        PracticeSetup setup = new()
        {
            Name = name ?? "",
            Title = title ?? "",
            Procedure = procedure ?? "",
            Head = head ?? "",
            Readout = readout ?? new Readout(Units.Inch, 1, true, false, false, false),
            Gauges = gauges.ReadAll(keys.Find("gauges"), unit),
            Tools = Tools(keys.Find("tools")),
            Readings = [.. Map(keys.Require("readings"), "readings").Select(Reading).OfType<BoundReading>()],
            Works = [.. Map(keys.Find("works"), "works").Select(Work).OfType<BoundWork>()],
            Ways = [.. Map(keys.Find("ways"), "ways on").Select(Work).OfType<BoundWork>()],
            Findings = [.. Map(keys.Find("findings"), "findings").Select(Finding).OfType<BoundFinding>()],
            Decisions = Map(keys.Find("decisions"), "decisions")
                .ToDictionary(e => e.Key.Text, e => Rules(e.Value), StringComparer.Ordinal),
            Concedes = Amounts(keys.Find("concedes"), "concessions", unit),
            EndsCutsInWindow = _values.YesNo(keys.Find("ends-cuts-in-window")) ?? false,
            Heads = truths.Read(keys.Require("heads"), "true values"),
            Parts = truths.ReadParts(keys.Find("parts")),
        };
        return log.Count == 0 ? setup : null;
    }

    /// <summary>Errors of tools by name; a number alone is a pure number.</summary>
    public IReadOnlyDictionary<string, Quantity> Tools(Node? node) => Amounts(node, "tools", null);

    private Dictionary<string, Quantity> Amounts(Node? node, string what, Unit? bare) =>
        _values
            .Entries(node, what)
            .Select(e => (e.Key.Text, Value: _values.Quantity(e.Value, bare)))
            .Where(t => t.Value is not null)
            .ToDictionary(t => t.Text, t => t.Value!.Value, StringComparer.Ordinal);

    // Keys here are full names of steps, with a slash, so they aren't names of the file's own.
    private IReadOnlyList<Node.MapEntry> Map(Node? node, string what)
    {
        if (node is Node.Map map)
        {
            return map.Entries;
        }

        if (node is not null)
        {
            log.Add("PR-Y08", node.Place, $"{what} are written as NAME: ...; here stands {node.Shape}");
        }

        return [];
    }

    private BoundReading? Reading(Node.MapEntry entry)
    {
        if (entry.Value is Node.Scalar plain)
        {
            return _values.Text(plain) is { } of
                ? new BoundReading(entry.Key.Text, of, new Dictionary<string, string>(), entry.Key.Place)
                : null;
        }

        if (
            Keys.Of(entry.Value, "a reading", ["of", "places"], log) is not { } keys
            || _values.Text(keys.Require("of")) is not { } name
        )
        {
            return null;
        }

        Dictionary<string, string> places = Map(keys.Find("places"), "places")
            .ToDictionary(e => e.Key.Text, e => _values.Text(e.Value) ?? "", StringComparer.Ordinal);
        return new BoundReading(entry.Key.Text, name, places, entry.Key.Place);
    }

    private BoundWork? Work(Node.MapEntry entry)
    {
        if (entry.Value is Node.Scalar plain)
        {
            return _values.Text(plain) is { } work ? new BoundWork(entry.Key.Text, work, [], entry.Key.Place) : null;
        }

        if (
            Keys.Of(entry.Value, "work", ["work", "to"], log) is not { } keys
            || _values.Text(keys.Require("work")) is not { } name
        )
        {
            return null;
        }

        AimTerm[] to =
        [
            .. _values.List(keys.Find("to"), "names").Select(n => _values.Text(n)).OfType<string>().Select(Term),
        ];
        return new BoundWork(entry.Key.Text, name, to, entry.Key.Place);
    }

    private static AimTerm Term(string text) =>
        text.StartsWith("less ", StringComparison.Ordinal) ? new AimTerm(text[5..], true) : new AimTerm(text, false);

    private BoundFinding? Finding(Node.MapEntry entry)
    {
        if (
            Keys.Of(entry.Value, "a finding", ["of", "seen", "words"], log) is not { } keys
            || _values.Text(keys.Require("of")) is not { } of
        )
        {
            return null;
        }

        Dictionary<string, string> words = Map(keys.Find("words"), "words")
            .ToDictionary(e => e.Key.Text, e => _values.Text(e.Value) ?? "", StringComparer.Ordinal);
        return new BoundFinding(entry.Key.Text, of, words, entry.Key.Place)
        {
            Seen = _values.Text(keys.Find("seen")) ?? of,
        };
    }

    private IReadOnlyList<ChoiceRule> Rules(Node node) =>
        [.. _values.List(node, "rules").Select(Rule).OfType<ChoiceRule>()];

    private ChoiceRule? Rule(Node node)
    {
        if (
            Keys.Of(node, "a rule", ["choose", "reading", "out-of", "found", "is"], log) is not { } keys
            || _values.Text(keys.Require("choose")) is not { } choose
        )
        {
            return null;
        }

        string[] words = keys.Find("is") is Node.List list
            ? [.. list.Items.Select(i => _values.Text(i)).OfType<string>()]
            : [.. new[] { _values.Text(keys.Find("is")) }.OfType<string>()];
        return new ChoiceRule(
            choose,
            _values.Text(keys.Find("reading")),
            _values.Text(keys.Find("out-of")),
            _values.Text(keys.Find("found")),
            words,
            keys.Place
        );
    }
}
