using ProcRunner.Procedures;

namespace ProcRunner.Runs;

/// <summary>
/// What is done, open and waiting in a run at one moment, worked out from its state. The steps of a position follow
/// each other; a step of the head waits for all positions and all positions wait for it.
/// </summary>
public sealed class Outlook
{
    private readonly RunState _state;
    private readonly Plan _plan;
    private readonly Asked[] _asked;
    private readonly StepView[] _views;
    private readonly Askers _askers;
    private readonly int _rows;
    private readonly List<At> _open = [];

    /// <summary>Looks at a run as it stands now.</summary>
    public Outlook(RunState state)
    {
        _state = state;
        _plan = state.Plan;
        _rows = _plan.Positions.Count + 1;
        _views = new StepView[_plan.Steps.Count * _rows];
        _asked = state.AskedNow ??= AskAll();
        _askers = new Askers(state, AskedAt);
        Walk();
        FindOpen();
    }

    /// <summary>Every step that can be done now, in procedure order.</summary>
    public IEnumerable<At> Open => _open;

    /// <summary>Every step at every position it is for, in procedure order.</summary>
    public IEnumerable<At> All =>
        _plan.Steps.SelectMany(step => _plan.PositionsOf(step).Select(position => new At(step.Index, position)));

    /// <summary>How a step stands.</summary>
    public StepView ViewOf(At at) => _views[Slot(at)];

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

    private void FindOpen()
    {
        for (int step = 0; step < _plan.Steps.Count; step++)
        {
            foreach (int position in _plan.PositionsAt(step))
            {
                if (ViewOf(new At(step, position)) == StepView.Open)
                {
                    _open.Add(new At(step, position));
                }
            }
        }
    }

    private Asked[] AskAll()
    {
        Asked[] asked = new Asked[_plan.Steps.Count * _rows];
        foreach (Step step in _plan.Steps)
        {
            foreach (int position in _plan.PositionsAt(step.Index))
            {
                asked[Slot(new At(step.Index, position))] = AskedAt(step, position);
            }
        }

        return asked;
    }

    private void Walk()
    {
        bool headBlocked = false;
        bool[] blocked = new bool[_rows];
        int stage = -1;
        long lastResult = 0;
        bool laterInStage = false;
        for (int index = 0; index < _plan.Steps.Count; index++)
        {
            Step step = _plan.Steps[index];
            if (step.StageIndex != stage)
            {
                (stage, lastResult, laterInStage) = (step.StageIndex, 0, false);
            }

            foreach (int position in _plan.PositionsAt(step.Index))
            {
                At at = new(step.Index, position);
                StepView view = Look(step, at, lastResult, laterInStage);
                laterInStage |= view == StepView.Later;
                bool waits = headBlocked || (position == At.Head ? blocked.Contains(true) : blocked[position + 1]);
                _views[Slot(at)] = view == StepView.Open && waits ? StepView.Waiting : view;
            }

            foreach (int position in _plan.PositionsAt(step.Index))
            {
                At at = new(step.Index, position);
                lastResult = Math.Max(lastResult, step.Work is StepWork.Sign ? 0 : _state.Find(at)?.Sequence ?? 0);
                if (ViewOf(at) is StepView.Open or StepView.Waiting)
                {
                    headBlocked |= position == At.Head;
                    blocked[position + 1] = true;
                }
            }
        }
    }

    private StepView Look(Step step, At at, long lastResult, bool laterInStage)
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
            bool covers = standing == StepStanding.Done && record!.Sequence >= lastResult;
            return covers ? StepView.Done
                : laterInStage ? StepView.Later
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
            return IsAskedAgain(at) ? StepView.Open : StepView.Done;
        }

        return record!.Stale || IsAskedAgain(at) ? StepView.Open
            : _askers.GivesStale(at) ? StepView.Later
            : StepView.Done;
    }

    private bool IsAskedAgain(At at) => _askers.AsksAgain(at);

    private Asked AskedAt(Step step, int position)
    {
        if (step.OnlyWhere is { } condition && condition.Holds(new RunScope(_state, position, staleToo: true)) == false)
        {
            return Asked.NotHere;
        }

        return step.IsWork is { } work && _plan.Head.Forbidden.ContainsKey(work) ? Asked.Forbidden : Asked.Yes;
    }

    private int Slot(At at) => (at.Step * _rows) + at.Position + 1;
}
