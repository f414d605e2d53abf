using ProcRunner.People;
using ProcRunner.Procedures;
using ProcRunner.Records.History;
using ProcRunner.Records.Story;
using ProcRunner.Runs;
using ProcRunner.Trail;

namespace ProcRunner.Records;

/// <summary>Makes a record: one walk over the entries, then what the run came to.</summary>
internal sealed class RecordMaker
{
    private readonly RecordSource _source;
    private readonly RunState _state;
    private readonly Telling _tell;
    private readonly Outlook _outlook;
    private readonly CaseBook _cases;
    private readonly CutBook _cuts;
    private readonly SayingBook _sayings;
    private readonly ValueBook _values;
    private readonly EarlierBook _earlier;

    public RecordMaker(RecordSource source)
    {
        (_source, _state) = (source, source.State);
        _tell = new Telling(source);
        _outlook = new Outlook(_state);
        _cases = new CaseBook(_tell);
        _cuts = new CutBook(_tell);
        _sayings = new SayingBook(_tell);
        _earlier = new EarlierBook(_tell);
        _values = new ValueBook(_state, _outlook, _tell);
    }

    /// <summary>The record.</summary>
    public BuildRecord Make()
    {
        foreach (RecordEntry entry in _source.Entries)
        {
            Stamped by = _tell.Stamp(entry);
            _cases.Take(entry, by);
            _cuts.Take(entry, by);
            _sayings.Take(entry, by);
            _earlier.Take(entry, by);
        }

        IReadOnlyList<FinalValue> values = _values.All();
        IReadOnlyList<Case> cases = _cases.All(_state);
        return new BuildRecord
        {
            Plan = _tell.Plan,
            Job = _state.Job!,
            JobId = _state.JobId,
            Shop = _source.Shop.Name,
            Contact = _source.Shop.Contact,
            IsDemo = _source.IsDemo,
            Standing = _state.Standing,
            StandingReason = _state.StandingReason,
            Opened = _tell.Stamp(_source.Entries[0]),
            Last = _tell.Stamp(_source.Entries[^1]),
            Proof = ProofOf(),
            Stages = [.. Stages()],
            Values = values,
            Findings = [.. Findings()],
            Decisions = [.. Decisions()],
            Parts = _sayings.Parts,
            Cuts = _cuts.All,
            Left = [.. new StockLeft(_tell.Plan, values).All()],
            Gauges = [.. Gauges()],
            Tools = _sayings.Tools,
            Cases = cases,
            Renewals = new RenewalBook(_state, _outlook, _tell).All(_source.Entries),
            Earlier = _earlier.All,
            Corrections = _sayings.Corrections,
            Questions = _sayings.Questions,
            ChosenLimits = _sayings.ChosenLimits,
            LeftOut = _sayings.LeftOut,
            OtherHeads = _sayings.OtherHeads,
            EarlierStamp = _state.Earlier?.Stamp ?? "",
            Comeback = _source.Earlier is { } earlier ? new Comeback(earlier, _state) : null,
            Notes = _sayings.Notes,
            Marks = _sayings.Marks,
            Clock = [.. ClockSetBack.In(_source.Entries.Select(e => e.Entry)).Select(set => set.InWords())],
            Advice = [.. new AdviceBook(_tell.Plan, _outlook, values, cases).All()],
        };
    }

    private Proof ProofOf()
    {
        RecordEntry last = _source.Entries[^1];
        Person? root = _source.Shop.Root;
        bool isClosed = _state.Standing is JobStanding.Released or JobStanding.Scrapped;
        return new Proof(
            isClosed ? ProofCode.Of(last.Digest) : null,
            last.Entry.Sequence,
            last.Digest,
            root?.Name ?? "",
            root is null ? "" : PersonKeys.Fingerprint(root)
        );
    }

    private IEnumerable<StageTold> Stages()
    {
        foreach (Stage stage in _tell.Plan.Procedure.Stages)
        {
            RecordEntry[] entries = [.. _source.Entries.Where(e => e.Events.Any(h => IsIn(h, stage)))];
            if (entries.Length > 0)
            {
                yield return new StageTold(
                    stage.Name,
                    [.. entries.Select(e => _tell.NameOf(e.Entry.Operator)).Distinct()],
                    _tell.Stamp(entries[0]),
                    _tell.Stamp(entries[^1]),
                    [.. _sayings.Marks.Where(m => _tell.Plan.Steps[m.Mark.At.Step].StageIndex == stage.Index)]
                );
            }
        }
    }

    private bool IsIn(RunEvent happened, Stage stage) =>
        EventPlace.Of(happened) is { } at && _tell.Plan.Steps[at.Step].StageIndex == stage.Index;

    private IEnumerable<Said> Findings() =>
        Results<StepWork.Inspect>()
            .Select(r => new Said(
                _tell.Plan.Steps[r.At.Step].FullName,
                _tell.Plan.PositionName(r.At.Position),
                r.Record.Said,
                IsBad: r.Record.Standing == StepStanding.Out || r.Record.Conceded,
                _tell.Stamp(r.Record.Sequence)
            ));

    // The latest choice about a subject counts, whichever step took it.
    private IEnumerable<Said> Decisions() =>
        Results<StepWork.Decide>()
            .Select(r => (Work: (StepWork.Decide)_tell.Plan.Steps[r.At.Step].Work, r.At, r.Record))
            .GroupBy(r => (r.Work.Subject, r.At.Position))
            .Select(g =>
            {
                StepRecord latest = g.MaxBy(r => r.Record.Sequence).Record;
                return new Said(
                    g.Key.Subject,
                    _tell.Plan.PositionName(g.Key.Position),
                    latest.Said,
                    IsBad: false,
                    _tell.Stamp(latest.Sequence),
                    WhyOf([.. g.Select(r => r.At)], latest.Sequence)
                );
            });

    // What led to a choice: the result out of spec whose way on made it, and what was noted where it was made.
    private string WhyOf(At[] madeAt, long sequence)
    {
        IEnumerable<string> led = _source
            .Entries[(int)sequence - 1]
            .Events.OfType<RunEvent.WayTaken>()
            .Select(way =>
                $"{way.Way}, decided at {_tell.Plan.Steps[way.At.Step].FullName}{(way.Reason.Length > 0 ? $", because: {way.Reason}" : "")}"
            );
        IEnumerable<string> noted = _source
            .Entries.SelectMany(e => e.Events.OfType<RunEvent.Noted>())
            .Where(note => note.At is { } at && madeAt.Contains(at))
            .Select(note => note.Text);
        return string.Join("; ", led.Concat(noted));
    }

    private IEnumerable<(At At, StepRecord Record)> Results<TWork>()
        where TWork : StepWork =>
        _tell
            .Plan.Steps.Where(s => s.Work is TWork)
            .SelectMany(s => _tell.Plan.PositionsOf(s).Select(p => new At(s.Index, p)))
            .Select(at => (At: at, Record: _state.Find(at)))
            .Where(r => r.Record is { Sequence: > 0, Standing: StepStanding.Done or StepStanding.Out })
            .Select(r => (r.At, r.Record!));

    private IEnumerable<GaugeTold> Gauges() =>
        _source
            .Entries.SelectMany(e => e.Events)
            .OfType<RunEvent.ReadingTaken>()
            .Where(e => e.Reading.Gauge.Length > 0)
            .CountBy(e => e.Reading.Gauge)
            .OrderBy(g => g.Key, StringComparer.Ordinal)
            .Select(g => new GaugeTold(g.Key, _source.Shop.Gauges.GetValueOrDefault(g.Key), g.Value));
}
