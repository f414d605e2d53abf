using ProcRunner.Procedures;
using ProcRunner.Quantities;

namespace ProcRunner.Runs;

/// <summary>
/// A job as its entries left it. <c>Apply</c> only copies what the events say: it evaluates no formula and
/// compares no limit. Not thread-safe; one owner applies, others read.
/// </summary>
public sealed class RunState
{
    private readonly StepRecord?[] _steps;
    private readonly ValueRecord?[] _values;
    private readonly int _rows;
    private At? _corrected;
    private readonly Changes _changes;

    // By slot, in order.
    private readonly List<int> _stale = [];
    private Outlook? _outlook;

    /// <summary>The state before any entry.</summary>
    /// <param name="plan">What is worked to.</param>
    /// <param name="jobId">The job's id in the store.</param>
    public RunState(Plan plan, string jobId)
    {
        (Plan, JobId) = (plan, jobId);
        _rows = plan.Positions.Count + 1;
        _changes = new Changes(plan);
        _steps = new StepRecord?[plan.Steps.Count * _rows];
        _values = new ValueRecord?[plan.Procedure.Characteristics.Count * _rows];
    }

    /// <summary>What is worked to.</summary>
    public Plan Plan { get; }

    /// <summary>The job's id in the store.</summary>
    public string JobId { get; }

    /// <summary>The job, or null before it is opened.</summary>
    public JobHeader? Job { get; private set; }

    /// <summary>Where the job stands.</summary>
    public JobStanding Standing { get; private set; }

    /// <summary>Why it is held or scrapped; empty otherwise.</summary>
    public string StandingReason { get; private set; } = "";

    /// <summary>Sequence of the last entry; 0 before any.</summary>
    public long Sequence { get; private set; }

    /// <summary>The person the job was last handed to; empty when never.</summary>
    public string Worker { get; private set; } = "";

    /// <summary>The step and position that the last entry was about, or null.</summary>
    public At? LastAt { get; private set; }

    /// <summary>Gauges in use, by kind.</summary>
    public Dictionary<string, string> Gauges { get; } = new(StringComparer.Ordinal);

    /// <summary>Limits chosen in the run.</summary>
    public List<RunEvent.LimitChosen> ChosenLimits { get; } = [];

    /// <summary>Notes with the sequence of their entry.</summary>
    public List<(long Sequence, RunEvent.Noted Note)> Notes { get; } = [];

    /// <summary>Entries put in place of others, and steps left out that are to be done after all; in order.</summary>
    public List<CorrectedEntry> Corrections { get; } = [];

    /// <summary>Parts fitted, in order.</summary>
    public List<RunEvent.PartFitted> Parts { get; } = [];

    /// <summary>The earlier job that this one is a comeback of; null for none.</summary>
    public RunEvent.CameBack? Earlier { get; private set; }

    /// <summary>The other heads of the engine.</summary>
    public List<RunEvent.HeadLinked> Linked { get; } = [];

    /// <summary>How this head was last compared with another, by that one's job.</summary>
    public Dictionary<string, RunEvent.HeadsCompared> Compared { get; } = new(StringComparer.Ordinal);

    /// <summary>The record of a step at a position, or null before anything happened there.</summary>
    public StepRecord? Find(At at) => _steps[Slot(at.Step, at.Position)];

    /// <summary>The latest value of a characteristic at a position, or null.</summary>
    public ValueRecord? Value(int characteristic, int position) => _values[Slot(characteristic, position)];

    /// <summary>The latest value by name, or null when there is none of that name or no value yet.</summary>
    public ValueRecord? Value(string characteristic, int position) =>
        Plan.TryCharacteristic(characteristic, out int index) ? Value(index, position) : null;

    /// <summary>The standing of a step at a position.</summary>
    public StepStanding StandingOf(At at) => Find(at)?.Standing ?? StepStanding.Waiting;

    /// <summary>The latest choice about a subject at a position or of the head; null while there is none.</summary>
    public string? ChoiceOf(string subject, int position) => LastSaid(Plan.DecidersOf(subject), position);

    /// <summary>The latest finding of an inspection at a position or of the head; null while there is none.</summary>
    public string? FindingOf(string subject, int position) => LastSaid(Plan.InspectorsOf(subject), position);

    /// <summary>Takes over what one entry says.</summary>
    /// <param name="sequence">The entry's sequence in the trail.</param>
    /// <param name="events">Its events, in order.</param>
    public void Apply(long sequence, IReadOnlyList<RunEvent> events)
    {
        Sequence = sequence;
        _corrected = null;
        for (int i = 0; i < events.Count; i++)
        {
            Apply(events[i]);
        }

        if (_corrected is { } at)
        {
            Corrections[^1] = Corrections[^1] with { Became = SaidAt.Of(Touch(at)) };
        }
    }

    /// <summary>What is open now. It follows the run from entry to entry; <c>new Outlook(state)</c> stays as it is made.</summary>
    public Outlook Outlook
    {
        get
        {
            if (_outlook is null)
            {
                _outlook = new Outlook(this);
                _changes.Clear();
            }
            else if (!_changes.IsNothing)
            {
                _outlook.Follow(_changes);
                _changes.Clear();
            }

            return _outlook;
        }
    }

    /// <summary>The stale values, by characteristic, then by position.</summary>
    internal (int Characteristic, int Position)[] StaleValues()
    {
        if (_stale.Count == 0)
        {
            return [];
        }

        (int, int)[] values = new (int, int)[_stale.Count];
        for (int i = 0; i < values.Length; i++)
        {
            values[i] = (_stale[i] / _rows, (_stale[i] % _rows) - 1);
        }

        return values;
    }

    private void Apply(RunEvent happened)
    {
        switch (happened)
        {
            case RunEvent.JobOpened opened:
                Job = opened.Header;
                break;
            case RunEvent.ReadingTaken taken:
                Apply(taken);
                break;
            case RunEvent.EntryQuestioned questioned:
                Touch(questioned.At).IsAsked(questioned);
                break;
            case RunEvent.FindingNoted finding:
                Apply(finding);
                break;
            case RunEvent.ChoiceMade choice:
                Finish(choice.At, choice.Choice);
                break;
            case RunEvent.StepDone done:
                Finish(done.At, done.Said);
                break;
            case RunEvent.PartFitted fitted:
                Finish(fitted.At, $"{fitted.Number}, lot {fitted.Lot}");
                Parts.Add(fitted);
                break;
            case RunEvent.LeftOut leftOut:
                Finish(leftOut.At, leftOut.Reason).Standing = StepStanding.LeftOut;
                break;
            case RunEvent.LeavingOutTakenBack back:
                string until = $"left out: {Touch(back.At).Said}";
                Corrections.Add(new(Sequence, back.At, until, "to be done", back.Reason));
                break;
            case RunEvent.WentStale stale:
                Apply(stale);
                break;
            case RunEvent.Reopened reopened:
                Apply(reopened);
                break;
            default:
                ApplyCutOrMark(happened);
                break;
        }
    }

    private void ApplyCutOrMark(RunEvent happened)
    {
        switch (happened)
        {
            case RunEvent.ZeroSet zero:
                Apply(zero);
                break;
            case RunEvent.PassCut pass:
                Touch(pass.At).Cuts(pass, Sequence);
                break;
            case RunEvent.CutterLifted lifted:
                StepRecord raised = Touch(lifted.At);
                raised.Cut = raised.Cut is { } progress ? progress with { Measures = true } : null;
                raised.Question = null;
                break;
            case RunEvent.CutEnded ended:
                Apply(ended);
                break;
            case RunEvent.WayTaken way:
                if (Touch(way.At) is var result && way.Kind is WayKind.Again)
                {
                    result.IsTakenAgain(isCut: Plan.StepAt(way.At.Step).Work is StepWork.Cut);
                }

                break;
            case RunEvent.Conceded conceded:
                Apply(conceded);
                break;
            case RunEvent.SignedOff signed:
                Finish(signed.At, signed.Mark.Name);
                break;
            case RunEvent.JobReleased released:
                Finish(released.At, released.Mark.Name);
                Standing = JobStanding.Released;
                break;
            default:
                ApplyToJob(happened);
                break;
        }
    }

    private void ApplyToJob(RunEvent happened)
    {
        switch (happened)
        {
            case RunEvent.HeadScrapped scrapped:
                (Standing, StandingReason) = (JobStanding.Scrapped, scrapped.Reason);
                break;
            case RunEvent.JobHeld held:
                (Standing, StandingReason) = (JobStanding.Held, held.Reason);
                break;
            case RunEvent.JobTakenUp:
                (Standing, StandingReason) = (JobStanding.Open, "");
                break;
            case RunEvent.HandedOver handed:
                Worker = handed.To;
                break;
            case RunEvent.GaugeChosen chosen:
                Gauges[chosen.Kind] = chosen.Gauge;
                break;
            case RunEvent.LimitChosen limit:
                ChosenLimits.Add(limit);
                _changes.AddEverything();
                break;
            case RunEvent.Noted note:
                Notes.Add((Sequence, note));
                break;
            case RunEvent.EntryCorrected corrected:
                Apply(corrected);
                break;
            case RunEvent.CameBack back:
                Earlier = back;
                break;
            case RunEvent.HeadLinked linked:
                Linked.Add(linked);
                break;
            case RunEvent.HeadsCompared compared:
                Compared[compared.Job] = compared;
                break;
            default:
                break;
        }
    }

    private void Apply(RunEvent.ReadingTaken taken)
    {
        TakenReading reading = taken.Reading;
        StepRecord record = Touch(taken.At);
        record.Readings.Add(reading);
        (record.Question, record.Doubted) = (null, null);
        record.Stale = false;
        record.Sequence = Sequence;
        Keep(taken.At, reading.Characteristic, reading.Value, reading.Places, reading.Judgement);
        foreach (WorkedValue worked in reading.Worked)
        {
            Keep(taken.At, worked.Name, worked.Value, [], worked.Judgement);
        }

        record.Fails = reading.Good ? 0 : record.Fails + 1;
        record.Conceded = false;
        StepWork work = Plan.StepAt(taken.At.Step).Work;
        if (!reading.Good)
        {
            record.Standing = StepStanding.Out;
        }
        else if (work is StepWork.Zero)
        {
            (record.Standing, record.AtZero, record.Cut) = (StepStanding.InHand, reading, null);
        }
        else
        {
            record.Standing =
                reading.Judgement.Verdict == Verdict.Short ? StepStanding.InHand : Finish(taken.At, "").Standing;
        }

        if (work is StepWork.Cut && record.Cut is { } cut)
        {
            record.BeforeReading = cut;
            record.Cut = cut with { Reading = reading.Value, TravelAtReading = cut.Travel, Measures = false };
        }
    }

    private void Apply(RunEvent.FindingNoted finding)
    {
        StepRecord record = Finish(finding.At, finding.Finding);
        record.Standing = finding.Good ? StepStanding.Done : StepStanding.Out;
        record.Fails = finding.Good ? 0 : record.Fails + 1;
    }

    // The result stands as it is, finding and all; one that has gone stale meanwhile is still to be taken again.
    private void Apply(RunEvent.Conceded conceded)
    {
        StepRecord record = Touch(conceded.At);
        (string said, bool stale, string cause) = (record.Said, record.Stale, record.Cause);
        Finish(conceded.At, said).Conceded = true;
        (record.Stale, record.Cause) = (stale, cause);
        if (Plan.StepAt(conceded.At.Step).Work is StepWork.Zero && record.Readings.Count > 0)
        {
            // The depth at touch-off stands; the readout is still to be set there.
            (record.Standing, record.AtZero, record.Cut) = (StepStanding.InHand, record.Readings[^1], null);
        }
    }

    // Ended within its window: what was short of the aim counts as it is.
    private void Apply(RunEvent.CutEnded ended)
    {
        Finish(ended.At, "");
        foreach (string given in Plan.StepAt(ended.At.Step).Gives)
        {
            if (Value(given, ended.At.Position) is { Judgement.Verdict: Verdict.Short } value)
            {
                value.Judgement = value.Judgement with { Verdict = Verdict.In };
            }
        }
    }

    // The entry that follows takes the place of the last one: what that one did to the step is taken back.
    private void Apply(RunEvent.EntryCorrected corrected)
    {
        _corrected = corrected.At;
        Corrections.Add(new(Sequence, corrected.At, SaidAt.Of(Touch(corrected.At)), "", corrected.Reason));
        Touch(corrected.At).TakesBack(isCut: Plan.StepAt(corrected.At.Step).Work is StepWork.Cut);
        int part = Parts.FindLastIndex(p => p.At == corrected.At);
        if (part >= 0)
        {
            Parts.RemoveAt(part);
        }
    }

    private void Apply(RunEvent.ZeroSet zero)
    {
        StepRecord record = Finish(zero.At, zero.Typed);
        Quantity none = new(0, zero.Zero.Set.Unit);
        record.Cut = new CutProgress(zero.Zero, zero.Zero.Set, none, none, zero.Zero.Measured, Measures: false);
        if (Plan.CutOfZero(zero.At.Step) is { } cut)
        {
            Touch(new At(cut, zero.At.Position)).StartsFrom(record.Cut);
            LastAt = zero.At;
        }
    }

    private void Apply(RunEvent.WentStale stale)
    {
        foreach (StaleItem item in stale.Items)
        {
            if (item.Characteristic >= 0 && Value(item.Characteristic, item.Position) is { } value)
            {
                (value.Stale, value.Cause, value.Mover) = (true, stale.Cause, stale.Mover);
                AddStale(Slot(item.Characteristic, item.Position));
                _changes.AddStaleness();
            }
            else if (item.Step >= 0 && Find(new At(item.Step, item.Position)) is { } record)
            {
                (record.Stale, record.Cause) = (true, stale.Cause);
                _changes.Add(new At(item.Step, item.Position));
            }
        }
    }

    private void AddStale(int slot)
    {
        int at = _stale.BinarySearch(slot);
        if (at < 0)
        {
            _stale.Insert(~at, slot);
        }
    }

    private void Apply(RunEvent.Reopened reopened)
    {
        foreach (At at in reopened.Items)
        {
            StepRecord record = _steps[Slot(at.Step, at.Position)] ??= new StepRecord();
            record.BeginsAnew(reopened.Cause);
            _changes.Add(at);
        }
    }

    private void Keep(
        At at,
        string characteristic,
        Quantity value,
        IReadOnlyList<PlaceValue> places,
        Judgement judgement
    )
    {
        if (!Plan.TryCharacteristic(characteristic, out int index))
        {
            return;
        }

        bool ofHead = Plan.CharacteristicAt(index).OfHead;
        int slot = Slot(index, ofHead ? At.Head : at.Position);
        ValueRecord record = _values[slot] ??= new ValueRecord { ByStep = at.Step };
        bool again = record.AsFoundBy == at.Step && !record.Stale;
        if (Plan.IsAsFound(at.Step) && (record.AsFound is null || again))
        {
            (record.AsFound, record.AsFoundBy) = (value, at.Step);
        }

        // A corrected entry is as old as the one it takes the place of: a later step's reading still counts.
        if (_corrected == at && record.ByStep != at.Step)
        {
            return;
        }

        if (record.Stale)
        {
            _ = _stale.Remove(slot);
            _changes.AddStaleness();
        }

        (record.Value, record.Places, record.Judgement) = (value, places, judgement);
        (record.ByStep, record.Sequence) = (at.Step, Sequence);
        (record.Stale, record.Cause, record.Mover) = (false, "", -1);
    }

    private string? LastSaid(ReadOnlySpan<int> steps, int position)
    {
        (long Sequence, string? Said) last = (0, null);
        foreach (int step in steps)
        {
            int where = Plan.StepAt(step).OfHead ? At.Head : position;
            if (
                _steps[Slot(step, where)] is { Sequence: > 0 } record
                && record.Standing is StepStanding.Done or StepStanding.Out
                && record.Sequence >= last.Sequence
            )
            {
                last = (record.Sequence, record.Said);
            }
        }

        return last.Said;
    }

    private StepRecord Finish(At at, string said)
    {
        StepRecord record = Touch(at);
        record.Standing = StepStanding.Done;
        (record.Stale, record.Cause) = (false, "");
        (record.Question, record.Doubted) = (null, null);
        (record.Sequence, record.Said, record.Conceded) = (Sequence, said, false);
        return record;
    }

    private StepRecord Touch(At at)
    {
        LastAt = at;
        _changes.Add(at);
        return _steps[Slot(at.Step, at.Position)] ??= new StepRecord();
    }

    private int Slot(int index, int position) => (index * _rows) + position + 1;
}
