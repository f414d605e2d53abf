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
    private readonly Queue<MovedName> _moved = [];

    // Most entries make nothing stale.
    private HashSet<StaleItem>? _seen;

    private Staleness(RunState state) => _state = state;

    private Plan Plan => _state.Plan;

    /// <summary>What moves make stale, from what is current now; an empty list when nothing is.</summary>
    /// <param name="state">The run.</param>
    /// <param name="moved">What moved and where.</param>
    /// <param name="besides">What is to go stale besides, following them.</param>
    public static IReadOnlyList<StaleItem> From(
        RunState state,
        IReadOnlyList<MovedName> moved,
        params IReadOnlyList<StaleItem> besides
    )
    {
        if (moved.Count == 0 && besides.Count == 0)
        {
            return [];
        }

        Staleness of = new(state);
        for (int i = 0; i < moved.Count; i++)
        {
            MovedName move = moved[i];
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

        for (int i = 0; i < besides.Count; i++)
        {
            of.Add(besides[i]);
        }

        return of._items;
    }

    /// <summary>The names and positions of declared moves.</summary>
    public static MovedName[] Of(Plan plan, IEnumerable<Move> moves, int from) =>
        [.. moves.SelectMany(move => plan.Reached(move, from).Select(position => new MovedName(move.Of, position)))];

    private void Follow(MovedName move)
    {
        foreach ((int step, int value) in Plan.ValuesReading(move.Name))
        {
            AddTaken(step, value, Reached(move.Position, Plan.StepAt(step).OfHead));
        }

        if (move.FirstKnown)
        {
            foreach (int step in Plan.StepsReading(move.Name))
            {
                if (Plan.StepAt(step).Work is StepWork.Zero)
                {
                    AddSteps(step, move.Position);
                }
            }

            return;
        }

        foreach ((int step, int value) in Plan.ValuesComparing(move.Name))
        {
            AddTaken(step, value, (0, Plan.Positions.Count));
        }

        foreach (int characteristic in Plan.CharacteristicsRestingOn(move.Name))
        {
            (int from, int to) = Reached(move.Position, Plan.CharacteristicAt(characteristic).OfHead);
            for (int position = from; position < to; position++)
            {
                AddValue(characteristic, position);
            }
        }

        foreach (int step in Plan.StepsRestingOn(move.Name))
        {
            AddSteps(step, move.Position);
        }
    }

    private void AddTaken(int step, int value, (int From, int To) positions)
    {
        for (int position = positions.From; position < positions.To; position++)
        {
            if (_state.Value(value, position)?.ByStep == step)
            {
                AddValue(value, position);
            }
        }
    }

    private void AddSteps(int step, int position)
    {
        (int from, int to) = Reached(position, Plan.StepAt(step).OfHead);
        for (int reached = from; reached < to; reached++)
        {
            AddStep(new At(step, reached));
        }
    }

    private void AddStep(At at)
    {
        if (_state.Find(at) is not { } record)
        {
            return;
        }

        Step step = Plan.StepAt(at.Step);
        foreach (string given in step.Gives)
        {
            int characteristic = Plan.CharacteristicIndex(given);
            if (_state.Value(characteristic, at.Position)?.ByStep == at.Step)
            {
                AddValue(characteristic, at.Position);
            }
        }

        bool begun = record.Standing is StepStanding.Done or StepStanding.InHand or StepStanding.Out;
        StaleItem item = new(-1, at.Step, at.Position);
        if (begun && !record.Stale && step.Work is not StepWork.Sign && Add(item))
        {
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
        if (_state.Value(characteristic, position) is { Stale: false } && Add(item))
        {
            _moved.Enqueue(new MovedName(Plan.CharacteristicAt(characteristic).Name, position));
        }
    }

    private bool Add(StaleItem item)
    {
        bool isNew = (_seen ??= []).Add(item);
        if (isNew)
        {
            _items.Add(item);
        }

        return isNew;
    }

    // What rests on a thing of the head is reached at every position; what the head's rests on, at the head.
    private (int From, int To) Reached(int position, bool restsOfHead) =>
        restsOfHead ? (At.Head, At.Head + 1)
        : position == At.Head ? (0, Plan.Positions.Count)
        : (position, position + 1);
}
