using ProcRunner.Procedures;

namespace ProcRunner.Runs;

/// <summary>
/// The one mechanism behind every "measure it again": when something moves, all that rests on it goes stale, and all
/// that rests on that.
/// </summary>
internal static class Staleness
{
    /// <summary>What a move makes stale, from what is current now; an empty list when nothing is.</summary>
    /// <param name="state">The run.</param>
    /// <param name="moved">What moved and where: names with positions.</param>
    public static IReadOnlyList<StaleItem> From(RunState state, IEnumerable<(string Name, int Position)> moved)
    {
        Plan plan = state.Plan;
        List<StaleItem> items = [];
        HashSet<StaleItem> seen = [];
        Queue<(string Name, int Position)> queue = new(moved);
        foreach ((string name, int position) in queue.ToArray())
        {
            if (plan.TryCharacteristic(name, out int moves))
            {
                AddValue(state, moves, position, items, seen, queue);
            }
        }

        while (queue.TryDequeue(out (string Name, int Position) move))
        {
            foreach (int characteristic in plan.CharacteristicsRestingOn(move.Name))
            {
                bool ofHead = plan.Procedure.Characteristics[characteristic].OfHead;
                foreach (int position in Reached(plan, move.Position, ofHead))
                {
                    AddValue(state, characteristic, position, items, seen, queue);
                }
            }

            foreach (int step in plan.StepsRestingOn(move.Name))
            {
                foreach (int position in Reached(plan, move.Position, plan.Steps[step].OfHead))
                {
                    AddStep(state, new At(step, position), items, seen, queue);
                }
            }
        }

        return items;
    }

    /// <summary>The names and positions of a step's declared moves.</summary>
    public static IEnumerable<(string Name, int Position)> Of(Plan plan, IEnumerable<Move> moves, int from) =>
        moves.SelectMany(move => plan.Reached(move, from).Select(position => (move.Of, position)));

    private static void AddStep(
        RunState state,
        At at,
        List<StaleItem> items,
        HashSet<StaleItem> seen,
        Queue<(string, int)> queue
    )
    {
        if (state.Find(at) is not { } record)
        {
            return;
        }

        Step step = state.Plan.Steps[at.Step];
        foreach (string given in step.Gives)
        {
            int characteristic = state.Plan.CharacteristicIndex(given);
            if (state.Value(characteristic, at.Position)?.ByStep == at.Step)
            {
                AddValue(state, characteristic, at.Position, items, seen, queue);
            }
        }

        bool begun = record.Standing is StepStanding.Done or StepStanding.InHand;
        bool rests = step.Work is StepWork.Measure or StepWork.Cut ? step.RestsOn.Count > 0 : true;
        if (
            begun
            && rests
            && !record.Stale
            && step.Work is not StepWork.Sign
            && seen.Add(new StaleItem(-1, at.Step, at.Position))
        )
        {
            items.Add(new StaleItem(-1, at.Step, at.Position));
            if (step.Work is StepWork.Decide or StepWork.Inspect)
            {
                string kind = step.Work is StepWork.Decide ? "decided." : "found.";
                queue.Enqueue((kind + step.Subject, at.Position));
            }
        }
    }

    private static void AddValue(
        RunState state,
        int characteristic,
        int position,
        List<StaleItem> items,
        HashSet<StaleItem> seen,
        Queue<(string, int)> queue
    )
    {
        StaleItem item = new(characteristic, -1, position);
        if (state.Value(characteristic, position) is { Stale: false } && seen.Add(item))
        {
            items.Add(item);
            queue.Enqueue((state.Plan.Procedure.Characteristics[characteristic].Name, position));
        }
    }

    // What rests on a thing of the head is reached at every position; what the head's rests on, at the head.
    private static IEnumerable<int> Reached(Plan plan, int position, bool restsOfHead) =>
        restsOfHead ? [At.Head]
        : position == At.Head ? Enumerable.Range(0, plan.Positions.Count)
        : [position];
}
