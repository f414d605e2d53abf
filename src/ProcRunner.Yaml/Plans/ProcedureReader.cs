using System.Collections.Frozen;
using ProcRunner.Problems;
using ProcRunner.Procedures;
using ProcRunner.Procedures.Checks;
using ProcRunner.Quantities;
using ProcRunner.Yaml.Trees;
using ProcRunner.Yaml.Values;

namespace ProcRunner.Yaml.Plans;

/// <summary>
/// A procedure's tree to the procedure. In order: what stands before the stages; the stages a first time, for names; what
/// the worked-out values are; then the steps with their formulas; at last the checks of the whole.
/// </summary>
internal sealed class ProcedureReader
{
    private static readonly string[] Known =
    [
        "procedure",
        "title",
        "revision",
        "revised",
        "settings",
        "asks-of-the-head",
        "datums",
        "changes",
        "readings",
        "build-record",
        "stages",
    ];

    private readonly ProblemLog _log;
    private readonly ValueReader _values;
    private readonly Things _things;
    private readonly DefinitionReader _definitions;
    private readonly ProcedureNames _names = new();
    private readonly SourcePlaces _places = new();

    public ProcedureReader(ProblemLog log)
    {
        _log = log;
        _values = new ValueReader(log);
        _things = new Things(_values, log);
        _definitions = new DefinitionReader(_values, _things, _places, log);
    }

    /// <summary>The procedure; of use only when nothing was reported.</summary>
    public Procedure? Read(Node root)
    {
        if (Keys.Of(root, "a procedure", Known, _log) is not { } keys)
        {
            return null;
        }

        string? name = _values.Name(keys.Require("procedure"));
        string? title = _values.Text(keys.Require("title"));
        int? revision = _values.Whole(keys.Require("revision"), 1, 1_000_000);
        Revised? revised = _values.Revised(keys.Find("revised"));
        IReadOnlyDictionary<string, Setting> settings = _definitions.Settings(keys.Find("settings"));
        (IReadOnlyDictionary<string, Dimension> figures, IReadOnlyList<string> features) = ReadAsked(keys);
        IReadOnlyList<Datum> datums = _definitions.Datums(keys.Find("datums"));
        IReadOnlyList<Characteristic> readings = _definitions.Readings(keys.Find("readings"));

        DraftReader draftReader = new(readings, _values, _log);
        IReadOnlyList<StageDraft> stages = draftReader.Read(keys.Require("stages"));
        StepDraft[] drafts = [.. stages.SelectMany(stage => stage.Steps)];
        AddNames(settings, figures, features, readings, drafts);

        FormulaReader formulas = new(_names, _definitions.Broken, _places, _log);
        WorkedOutReader workedOut = new(formulas, _names, _definitions.Broken, _values, _log);
        workedOut.Read(drafts);
        readings = _definitions.WithRestsOn(readings, keys.Find("readings"));

        StepReader reader = new(
            formulas,
            new TakingReader(formulas, workedOut, _definitions, _values, _log),
            new WayOnReader(drafts, _names, _things, _values, _log),
            draftReader,
            _things,
            _values,
            _log
        );
        Step[] steps = [.. drafts.Select(reader.Read)];
        reader.ReportUnusedZeros(drafts);
        IReadOnlyList<Characteristic> all = [.. readings, .. workedOut.Found];
        RecordReader record = new(all, _definitions.Broken, steps, _values, _log);
        record.Read(keys.Find("build-record"));
        Procedure procedure = new()
        {
            Name = name ?? "?",
            Title = title ?? "?",
            Revision = revision ?? 1,
            Revised = revised,
            Characteristics = all,
            Datums = datums,
            Changes = _definitions.Changes(keys.Find("changes")),
            Settings = settings.ToFrozenDictionary(StringComparer.Ordinal),
            Figures = figures.ToFrozenDictionary(StringComparer.Ordinal),
            Features = features.ToFrozenSet(StringComparer.Ordinal),
            Stages = [.. stages.Select(StageOf)],
            Steps = steps,
            RecordNames = record.Names,
            ForTheBuilder = record.ForTheBuilder,
        };
        Check(procedure, lost: draftReader.Lost);
        return procedure;
    }

    private static Stage StageOf(StageDraft stage) =>
        new(
            stage.Index,
            stage.Name,
            stage.Walk,
            stage.AsFound,
            stage.Cautions,
            stage.Steps.Count > 0 ? stage.Steps[0].Index : 0,
            stage.Steps.Count
        );

    private (IReadOnlyDictionary<string, Dimension> Figures, IReadOnlyList<string> Features) ReadAsked(Keys keys)
    {
        Keys? asked = Keys.Of(
            keys.Find("asks-of-the-head"),
            "what is asked of the head",
            ["figures", "features"],
            _log
        );
        return (_definitions.Figures(asked?.Find("figures")), _values.Names(asked?.Find("features"), "features"));
    }

    private void AddNames(
        IReadOnlyDictionary<string, Setting> settings,
        IReadOnlyDictionary<string, Dimension> figures,
        IReadOnlyList<string> features,
        IReadOnlyList<Characteristic> readings,
        IReadOnlyList<StepDraft> drafts
    )
    {
        foreach (Setting setting in settings.Values)
        {
            _names.AddSetting(setting.Name, setting.Value.Dimension);
        }

        foreach ((string figure, Dimension dimension) in figures)
        {
            _names.AddFigure(figure, dimension);
        }

        foreach (string feature in features)
        {
            _names.AddFeature(feature);
        }

        foreach (Characteristic reading in readings.Where(reading => !_definitions.Broken.Contains(reading.Name)))
        {
            _names.AddCharacteristic(reading);
        }

        foreach (StepDraft draft in drafts)
        {
            AddNames(draft);
        }
    }

    private void AddNames(StepDraft draft)
    {
        if (draft.Kind == StepKind.Decide)
        {
            AddChoices(draft, (draft.Keys.Find("choices") as Node.List)?.Items ?? [], _names.AddDecision);
        }
        else if (draft.Kind == StepKind.Inspect)
        {
            IEnumerable<Node> findings =
                (draft.Keys.Find("findings") as Node.Map)?.Entries.Select(entry => entry.Key) ?? [];
            AddChoices(draft, findings, _names.AddFinding);
        }

        foreach (Node.MapEntry entry in draft.WorksOut)
        {
            _things.AddWorkedOut(entry.Key.Text, draft.OfHead, entry.Key.Place);
        }

        if (draft.Reading is not { } reading || _definitions.Broken.Contains(reading.Name))
        {
            return;
        }

        if (draft.Keys.Find("window") is Node.Scalar { Text: not "none" } limit)
        {
            _names.AddLimit(limit.Text, reading.Dimension);
        }

        if (draft.Keys.Find("places") is Node.List places)
        {
            _names.AddPlaces(reading.Name, places.Items.OfType<Node.Scalar>().Select(place => place.Text));
        }
    }

    private void AddChoices(StepDraft draft, IEnumerable<Node> words, Action<string, bool, IEnumerable<string>> add)
    {
        NamedChoices? before =
            draft.Kind == StepKind.Decide ? _names.Decision(draft.Subject) : _names.Finding(draft.Subject);
        if (before is not null && before.OfHead != draft.OfHead)
        {
            _log.Add(
                "PR-P02",
                draft.Place,
                $"{Quoting.Of(draft.Subject)} is asked of the head in one step and at positions in another; rename one"
            );
            return;
        }

        add(draft.Subject, draft.OfHead, words.OfType<Node.Scalar>().Select(word => word.Text));
    }

    private void Check(Procedure procedure, bool lost)
    {
        _log.AddAll(ProcedureCheck.Run(procedure, _places, _log.File, ordered: !lost, _definitions.Broken));
    }
}
