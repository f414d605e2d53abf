using ProcRunner.Procedures;

namespace ProcRunner.Runs;

/// <summary>
/// What is done, open and waiting in a run at one moment, worked out from its state. The steps of a position follow
/// each other; a step of the head waits for all positions and all positions wait for it.
/// </summary>
/// <remarks>
/// A place is a step at a position it is for. Each has a view by itself, what comes before it left aside; of those that
/// are to be done, the first of its position is open unless one of the head comes before it, and all others wait. So an
/// entry changes the views of what it touched and of little else. One made by its constructor stays as it was made; the
/// run's own follows the run.
/// </remarks>
public sealed class Outlook
{
    private readonly RunState _state;
    private readonly Plan _plan;
    private readonly int _rows;
    private readonly Asked[] _asked;
    private readonly StepView[] _own;
    private readonly int[] _first;
    private readonly long[] _lastResult;
    private readonly int[] _laters;
    private readonly List<At> _again = [];
    private readonly bool[] _watched;
    private (int Characteristic, int Position)[] _stale = [];
    private Askers _askers;

    /// <summary>Looks at a run as it stands now.</summary>
    public Outlook(RunState state)
    {
        _state = state;
        _plan = state.Plan;
        _rows = _plan.Positions.Count + 1;
        _asked = new Asked[_plan.Steps.Count * _rows];
        _own = new StepView[_plan.Steps.Count * _rows];
        _first = new int[_rows];
        _lastResult = new long[_plan.Steps.Count];
        _laters = new int[_plan.Steps.Count];
        _watched = new bool[_plan.Steps.Count];
        _askers = new Askers(state, _stale, AskedAt);
        LookAtAll();
    }

    /// <summary>Every step that can be done now, in procedure order.</summary>
    public IReadOnlyList<At> Open
    {
        get
        {
            List<At> open = new(_rows);
            for (int position = At.Head; position < _plan.Positions.Count; position++)
            {
                At at = new(_first[position + 1], position);
                if (at.Step < _plan.Steps.Count && IsOpen(at))
                {
                    open.Add(at);
                }
            }

            open.Sort(static (a, b) => a.Step != b.Step ? a.Step - b.Step : a.Position - b.Position);
            return open;
        }
    }

    /// <summary>Every step at every position it is for, in procedure order.</summary>
    public IEnumerable<At> All =>
        _plan.Steps.SelectMany(step => _plan.PositionsOf(step).Select(position => new At(step.Index, position)));

    /// <summary>How a step stands.</summary>
    public StepView ViewOf(At at)
    {
        StepView own = _own[Slot(at)];
        return own == StepView.Open && !IsOpen(at) ? StepView.Waiting : own;
    }

    /// <summary>Whether a step is asked for.</summary>
    public Asked AskedAt(At at) => _asked[Slot(at)];

    /// <summary>True when the step was done and something it rests on moved since.</summary>
    public bool IsRecheck(At at) =>
        _state.Find(at) is { Standing: StepStanding.Done } record
        && ViewOf(at) is not StepView.Done
        && (record.Stale || _askers.GivesStale(at));

    /// <summary>
    /// The step that takes a stale value again. Null when the value isn't stale, or when nothing takes it again: it tells how
    /// the head came and stays as it is.
    /// </summary>
    /// <param name="characteristic">The characteristic's index.</param>
    /// <param name="position">The position, or <see cref="At.Head"/>.</param>
    public At? WhoTakesAgain(int characteristic, int position) =>
        _askers.Of(characteristic, position) is { } step ? new At(step, position) : null;

    /// <summary>Why a step waits, in words: what comes before it.</summary>
    public string WaitsFor(At at)
    {
        foreach (At earlier in All)
        {
            bool before =
                earlier.Step < at.Step
                && (earlier.Position == At.Head || at.Position == At.Head || earlier.Position == at.Position);
            if (before && ViewOf(earlier) is StepView.Open or StepView.Waiting && before)
            {
                return _plan.NameOf(earlier);
            }
        }

        return "";
    }

    /// <summary>Takes over what has changed since it last looked.</summary>
    internal void Follow(Changes changes)
    {
        if (changes.IsEverything)
        {
            LookAtAll();
            return;
        }

        foreach ((int condition, int position) in changes.Conditions)
        {
            Ask(condition, position);
        }

        if (changes.OfStaleness || (_stale.Length > 0 && (_again.Count > 0 || changes.Places.Any(IsWatched))))
        {
            FindAskers();
        }

        foreach (At at in changes.Places)
        {
            Look(at);
            if (_plan.StepAt(at.Step).Work is StepWork.Cut cut)
            {
                Look(at with { Step = cut.ZeroStep });
            }
        }

        LookAgain();
    }

    private void LookAtAll()
    {
        Array.Clear(_own);
        Array.Fill(_first, _plan.Steps.Count);
        Array.Clear(_laters);
        for (int step = 0; step < _plan.Steps.Count; step++)
        {
            Asked asked = _plan.IsForbidden(step) ? Asked.Forbidden : Asked.Yes;
            foreach (int position in _plan.PositionsAt(step))
            {
                _asked[Slot(new At(step, position))] = asked;
            }
        }

        for (int condition = 0; condition < _plan.Conditions.Count; condition++)
        {
            for (int position = At.Head; position < _plan.Positions.Count; position++)
            {
                Ask(condition, position);
            }
        }

        FindAskers();
        _again.Clear();
        for (int step = 0; step < _plan.Steps.Count; step++)
        {
            foreach (int position in _plan.PositionsAt(step))
            {
                Look(new At(step, position));
            }
        }
    }

    private void Ask(int condition, int position)
    {
        bool? holds = null;
        foreach (int step in _plan.Conditions.StepsOn(condition))
        {
            if (!_plan.PositionsAt(step).Contains(position))
            {
                continue;
            }

            holds ??= _plan.Conditions[condition].Holds(new RunScope(_state, position, staleToo: true)) != false;
            Asked asked =
                holds == false ? Asked.NotHere
                : _plan.IsForbidden(step) ? Asked.Forbidden
                : Asked.Yes;
            At at = new(step, position);
            if (asked != AskedAt(at))
            {
                _asked[Slot(at)] = asked;
                _again.Add(at);
            }
        }
    }

    // Which step asks for a stale value again touches the views of all that give it.
    private void FindAskers()
    {
        Askers before = _askers;
        (int Characteristic, int Position)[] staleBefore = _stale;
        _stale = _state.StaleValues();
        _askers = new Askers(_state, _stale, AskedAt);
        Watch();
        AddGivers(staleBefore, before, _askers);
        AddGivers(_stale, _askers, before);
    }

    // Who takes a stale value again hangs on the steps that can take it and on those that want it.
    private bool IsWatched(At at) => _watched[at.Step];

    private void Watch()
    {
        Array.Clear(_watched);
        foreach ((int characteristic, _) in _stale)
        {
            foreach (int step in _plan.TakersFor(characteristic))
            {
                _watched[step] = true;
            }

            foreach (int step in _plan.ReadersOf(characteristic))
            {
                _watched[step] = true;
            }
        }
    }

    private void AddGivers((int Characteristic, int Position)[] stale, Askers one, Askers other)
    {
        foreach ((int characteristic, int position) in stale)
        {
            if (one.SaysTheSame(other, characteristic, position))
            {
                continue;
            }

            foreach (int step in _plan.GiversOf(characteristic))
            {
                _again.Add(new At(step, position));
            }
        }
    }

    private void LookAgain()
    {
        foreach (At at in _again)
        {
            Look(at);
        }

        _again.Clear();
    }

    private void Look(At at)
    {
        if (!_plan.PositionsAt(at.Step).Contains(at.Position))
        {
            return;
        }

        Step step = _plan.StepAt(at.Step);
        StepView before = _own[Slot(at)];
        StepView now = OwnView(step, at);
        Set(at, now);
        if (step.Work is StepWork.Sign)
        {
            return;
        }

        int laters = (now == StepView.Later ? 1 : 0) - (before == StepView.Later ? 1 : 0);
        long sequence = _state.Find(at)?.Sequence ?? 0;
        foreach (int sign in _plan.SignsOf(step.StageIndex))
        {
            if (sign > at.Step && (laters != 0 || sequence > _lastResult[sign]))
            {
                _laters[sign] += laters;
                _lastResult[sign] = Math.Max(_lastResult[sign], sequence);
                foreach (int position in _plan.PositionsAt(sign))
                {
                    Look(new At(sign, position));
                }
            }
        }
    }

    private void Set(At at, StepView view)
    {
        ref int first = ref _first[at.Position + 1];
        _own[Slot(at)] = view;
        if (view == StepView.Open)
        {
            first = Math.Min(first, at.Step);
            return;
        }

        while (first < _plan.Steps.Count && _own[Slot(new At(first, at.Position))] != StepView.Open)
        {
            first++;
        }
    }

    private bool IsOpen(At at)
    {
        if (_first[at.Position + 1] != at.Step)
        {
            return false;
        }

        if (at.Position != At.Head)
        {
            return _first[0] > at.Step;
        }

        for (int row = 1; row < _rows; row++)
        {
            if (_first[row] < at.Step)
            {
                return false;
            }
        }

        return true;
    }

    private StepView OwnView(Step step, At at)
    {
        if (AskedAt(at) != Asked.Yes)
        {
            return StepView.NotHere;
        }

        StepRecord? record = _state.Find(at);
        StepStanding standing = record?.Standing ?? StepStanding.Waiting;
        if (standing == StepStanding.LeftOut)
        {
            return StepView.Done;
        }

        if (step.Work is StepWork.Sign)
        {
            bool covers = standing == StepStanding.Done && record!.Sequence >= _lastResult[step.Index];
            return covers ? StepView.Done
                : _laters[step.Index] > 0 ? StepView.Later
                : StepView.Open;
        }

        // A zero is wanted while there is something to cut; a reading that is due needs none.
        if (step.Work is StepWork.Zero)
        {
            bool served =
                _plan.CutOfZero(step.Index) is { } cut
                && _state.Find(new At(cut, at.Position))
                    is { Standing: StepStanding.Done or StepStanding.Out }
                        or { Standing: StepStanding.InHand, Cut.Measures: true };
            return served || (standing == StepStanding.Done && !record!.Stale) ? StepView.Done : StepView.Open;
        }

        if (standing != StepStanding.Done)
        {
            return StepView.Open;
        }

        if (_plan.IsAsFound(step.Index))
        {
            return _askers.AsksAgain(at) ? StepView.Open : StepView.Done;
        }

        return record!.Stale || _askers.AsksAgain(at) ? StepView.Open
            : _askers.GivesStale(at) ? StepView.Later
            : StepView.Done;
    }

    private int Slot(At at) => (at.Step * _rows) + at.Position + 1;
}
