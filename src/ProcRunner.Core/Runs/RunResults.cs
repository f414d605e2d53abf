using ProcRunner.Procedures;
using ProcRunner.Quantities;

namespace ProcRunner.Runs;

/// <summary>What a run's entries left at its steps and of its values. It only copies what the events say.</summary>
internal sealed class RunResults
{
    private readonly Plan _plan;
    private readonly StepRecord?[] _steps;
    private readonly ValueRecord?[] _values;
    private readonly int _rows;

    // By slot, in order.
    private readonly List<int> _stale = [];
    private long _sequence;
    private At? _corrected;

    /// <summary>Nothing yet.</summary>
    public RunResults(Plan plan)
    {
        _plan = plan;
        _rows = plan.Positions.Count + 1;
        Changes = new Changes(plan);
        _steps = new StepRecord?[plan.Steps.Count * _rows];
        _values = new ValueRecord?[plan.Procedure.Characteristics.Count * _rows];
    }

    /// <summary>What has changed since the outlook looked.</summary>
    public Changes Changes { get; }

    /// <summary>The step and position that the last entry was about, or null.</summary>
    public At? LastAt { get; private set; }

    /// <summary>The step whose last entry the entry in hand takes the place of; null for none.</summary>
    public At? Corrected => _corrected;

    /// <summary>The stale values, by characteristic, then by position.</summary>
    public (int Characteristic, int Position)[] StaleValues()
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

    /// <summary>The record of a step at a position, or null before anything happened there.</summary>
    public StepRecord? Find(At at) => _steps[Slot(at.Step, at.Position)];

    /// <summary>The latest value of a characteristic at a position, or null.</summary>
    public ValueRecord? Value(int characteristic, int position) => _values[Slot(characteristic, position)];

    /// <summary>What the latest of some steps ended with at a position or of the head; null while none did.</summary>
    public string? LastSaid(ReadOnlySpan<int> steps, int position)
    {
        (long Sequence, string? Said) last = (0, null);
        foreach (int step in steps)
        {
            int where = _plan.StepAt(step).OfHead ? At.Head : position;
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

    /// <summary>An entry begins.</summary>
    public void Begin(long sequence) => (_sequence, _corrected) = (sequence, null);

    /// <summary>Takes over an event; false where it says something of the job itself too, or of that alone.</summary>
    public bool Take(RunEvent happened)
    {
        switch (happened)
        {
            case RunEvent.ReadingTaken taken:
                Apply(taken);
                return true;
            case RunEvent.EntryQuestioned questioned:
                Touch(questioned.At).IsAsked(questioned);
                return true;
            case RunEvent.FindingNoted finding:
                Apply(finding);
                return true;
            case RunEvent.ChoiceMade choice:
                Finish(choice.At, choice.Choice);
                return true;
            case RunEvent.StepDone done:
                Finish(done.At, done.Said);
                return true;
            case RunEvent.LeftOut leftOut:
                Finish(leftOut.At, leftOut.Reason).Standing = StepStanding.LeftOut;
                return true;
            case RunEvent.WentStale stale:
                Apply(stale);
                return true;
            case RunEvent.Reopened reopened:
                Apply(reopened);
                return true;
            case RunEvent.SignedOff signed:
                Finish(signed.At, signed.Mark.Name);
                return true;
            case RunEvent.Conceded conceded:
                Apply(conceded);
                return true;
            case RunEvent.PartFitted fitted:
                Finish(fitted.At, $"{fitted.Number}, lot {fitted.Lot}");
                return false;
            case RunEvent.JobReleased released:
                Finish(released.At, released.Mark.Name);
                return false;
            default:
                return TakeOfCut(happened);
        }
    }

    /// <summary>The record of a step that something happens at now.</summary>
    public StepRecord Touch(At at)
    {
        LastAt = at;
        Changes.Add(at);
        return _steps[Slot(at.Step, at.Position)] ??= new StepRecord();
    }

    /// <summary>The entry that follows takes the place of the last one: what that one did to the step is taken back.</summary>
    public void TakeBack(At at)
    {
        _corrected = at;
        Touch(at).TakesBack(isCut: _plan.StepAt(at.Step).Work is StepWork.Cut);
    }

    private bool TakeOfCut(RunEvent happened)
    {
        switch (happened)
        {
            case RunEvent.ZeroSet zero:
                Apply(zero);
                return true;
            case RunEvent.PassCut pass:
                Touch(pass.At).Cuts(pass, _sequence);
                return true;
            case RunEvent.CutterLifted lifted:
                StepRecord raised = Touch(lifted.At);
                raised.Cut = raised.Cut is { } progress ? progress with { Measures = true } : null;
                raised.Question = null;
                return true;
            case RunEvent.CutEnded ended:
                Apply(ended);
                return true;
            case RunEvent.WayTaken way:
                if (Touch(way.At) is var result && way.Kind is WayKind.Again)
                {
                    result.IsTakenAgain(isCut: _plan.StepAt(way.At.Step).Work is StepWork.Cut);
                }

                return true;
            default:
                return false;
        }
    }

    private void Apply(RunEvent.ReadingTaken taken)
    {
        TakenReading reading = taken.Reading;
        StepRecord record = Touch(taken.At);
        record.Readings.Add(reading);
        (record.Question, record.Doubted) = (null, null);
        record.Stale = false;
        record.Sequence = _sequence;
        Keep(taken.At, reading.Characteristic, reading.Value, reading.Places, reading.Judgement);
        foreach (WorkedValue worked in reading.Worked)
        {
            Keep(taken.At, worked.Name, worked.Value, [], worked.Judgement);
        }

        record.Fails = reading.Good ? 0 : record.Fails + 1;
        record.Conceded = false;
        StepWork work = _plan.StepAt(taken.At.Step).Work;
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
        if (_plan.StepAt(conceded.At.Step).Work is StepWork.Zero && record.Readings.Count > 0)
        {
            // The depth at touch-off stands; the readout is still to be set there.
            (record.Standing, record.AtZero, record.Cut) = (StepStanding.InHand, record.Readings[^1], null);
        }
    }

    // Ended within its window: what was short of the aim counts as it is.
    private void Apply(RunEvent.CutEnded ended)
    {
        Finish(ended.At, "");
        foreach (string given in _plan.StepAt(ended.At.Step).Gives)
        {
            bool isKnown = _plan.TryCharacteristic(given, out int characteristic);
            if (isKnown && Value(characteristic, ended.At.Position) is { Judgement.Verdict: Verdict.Short } value)
            {
                value.Judgement = value.Judgement with { Verdict = Verdict.In };
            }
        }
    }

    private void Apply(RunEvent.ZeroSet zero)
    {
        StepRecord record = Finish(zero.At, zero.Typed);
        Quantity none = new(0, zero.Zero.Set.Unit);
        record.Cut = new CutProgress(zero.Zero, zero.Zero.Set, none, none, zero.Zero.Measured, Measures: false);
        if (_plan.CutOfZero(zero.At.Step) is { } cut)
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
                Changes.AddStaleness();
            }
            else if (item.Step >= 0 && Find(new At(item.Step, item.Position)) is { } record)
            {
                (record.Stale, record.Cause) = (true, stale.Cause);
                Changes.Add(new At(item.Step, item.Position));
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
            Changes.Add(at);
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
        if (!_plan.TryCharacteristic(characteristic, out int index))
        {
            return;
        }

        bool ofHead = _plan.CharacteristicAt(index).OfHead;
        int slot = Slot(index, ofHead ? At.Head : at.Position);
        ValueRecord record = _values[slot] ??= new ValueRecord { ByStep = at.Step };
        bool again = record.AsFoundBy == at.Step && !record.Stale;
        if (_plan.IsAsFound(at.Step) && (record.AsFound is null || again))
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
            Changes.AddStaleness();
        }

        (record.Value, record.Places, record.Judgement) = (value, places, judgement);
        (record.ByStep, record.Sequence) = (at.Step, _sequence);
        (record.Stale, record.Cause, record.Mover) = (false, "", -1);
    }

    private StepRecord Finish(At at, string said)
    {
        StepRecord record = Touch(at);
        record.Standing = StepStanding.Done;
        (record.Stale, record.Cause) = (false, "");
        (record.Question, record.Doubted) = (null, null);
        (record.Sequence, record.Said, record.Conceded) = (_sequence, said, false);
        return record;
    }

    private int Slot(int index, int position) => (index * _rows) + position + 1;
}
