using ProcRunner.Procedures;

namespace ProcRunner.Runs;

/// <summary>
/// The one mechanism behind every "measure it again": when something moves, all that rests on it goes stale, and all
/// that rests on that.
/// </summary>
internal sealed class Staleness
{
    private readonly RunState _state;
    private readonly List<StaleItem> _items = [];
    private readonly HashSet<StaleItem> _seen = [];
    private readonly Queue<MovedName> _moved = [];

    private Staleness(RunState state) => _state = state;

    private Plan Plan => _state.Plan;

    /// <summary>What moves make stale, from what is current now; an empty list when nothing is.</summary>
    /// <param name="state">The run.</param>
    /// <param name="moved">What moved and where.</param>
    public static IReadOnlyList<StaleItem> From(RunState state, IEnumerable<MovedName> moved)
    {
        Staleness of = new(state);
        foreach (MovedName move in moved)
        {
            of._moved.Enqueue(move);
            if (!move.FirstKnown && state.Plan.TryCharacteristic(move.Name, out int characteristic))
            {
                of.AddValue(characteristic, move.Position);
            }
        }

        while (of._moved.TryDequeue(out MovedName move))
        {
            of.Follow(move);
        }

        return of._items;
    }

    /// <summary>The names and positions of a step's declared moves.</summary>
    public static IEnumerable<MovedName> Of(Plan plan, IEnumerable<Move> moves, int from) =>
        moves.SelectMany(move => plan.Reached(move, from).Select(position => new MovedName(move.Of, position)));

    private void Follow(MovedName move)
    {
        if (move.FirstKnown)
        {
            foreach (int step in Plan.StepsReading(move.Name))
            {
                AddSteps(step, Reached(move.Position, Plan.Steps[step].OfHead));
            }

            return;
        }

        foreach (int characteristic in Plan.CharacteristicsRestingOn(move.Name))
        {
            foreach (int position in Reached(move.Position, Plan.Procedure.Characteristics[characteristic].OfHead))
            {
                AddValue(characteristic, position);
            }
        }

        foreach (int step in Plan.StepsRestingOn(move.Name))
        {
            AddSteps(step, Reached(move.Position, Plan.Steps[step].OfHead));
        }

        foreach (int step in Plan.StepsComparing(move.Name))
        {
            AddSteps(step, Enumerable.Range(0, Plan.Positions.Count));
        }
    }

    private void AddSteps(int step, IEnumerable<int> positions)
    {
        foreach (int position in positions)
        {
            AddStep(new At(step, position));
        }
    }

    private void AddStep(At at)
    {
        if (_state.Find(at) is not { } record)
        {
            return;
        }

        Step step = Plan.Steps[at.Step];
        foreach (string given in step.Gives)
        {
            int characteristic = Plan.CharacteristicIndex(given);
            if (_state.Value(characteristic, at.Position)?.ByStep == at.Step)
            {
                AddValue(characteristic, at.Position);
            }
        }

        // What a reading rests on its value tells; the step itself goes stale only for what it declares beyond that.
        bool begun = record.Standing is StepStanding.Done or StepStanding.InHand or StepStanding.Out;
        bool rests = step.Work is not (StepWork.Measure or StepWork.Cut) || step.RestsOn.Count > 0;
        StaleItem item = new(-1, at.Step, at.Position);
        if (begun && rests && !record.Stale && step.Work is not StepWork.Sign && _seen.Add(item))
        {
            _items.Add(item);
            if (step.Work is StepWork.Decide or StepWork.Inspect)
            {
                string kind = step.Work is StepWork.Decide ? "decided." : "found.";
                _moved.Enqueue(new MovedName(kind + step.Subject, at.Position));
            }
        }
    }

    private void AddValue(int characteristic, int position)
    {
        StaleItem item = new(characteristic, -1, position);
        if (_state.Value(characteristic, position) is { Stale: false } && _seen.Add(item))
        {
            _items.Add(item);
            _moved.Enqueue(new MovedName(Plan.Procedure.Characteristics[characteristic].Name, position));
        }
    }

    // What rests on a thing of the head is reached at every position; what the head's rests on, at the head.
    private IEnumerable<int> Reached(int position, bool restsOfHead) =>
        restsOfHead ? [At.Head]
        : position == At.Head ? Enumerable.Range(0, Plan.Positions.Count)
        : [position];
}
