using ProcRunner.Procedures;
using ProcRunner.Shop;

namespace ProcRunner.Runs;

/// <summary>What a decision is made from: the run, the shop, the moment. Nothing in it changes.</summary>
internal sealed class Deciding(RunState state, ShopState shop, Moment moment)
{
    private Outlook? _outlook;

    public RunState State { get; } = state;

    public Plan Plan { get; } = state.Plan;

    public ShopState Shop { get; } = shop;

    public Moment Moment { get; } = moment;

    public Outlook Outlook => _outlook ??= new Outlook(State);

    public Step StepOf(At at) => Plan.Steps[at.Step];

    /// <summary>What goes stale when a step's result comes in: its declared moves and whatever else is named.</summary>
    public RunEvent.WentStale? Stales(At at, IEnumerable<(string Name, int Position)> moved, string cause)
    {
        Step step = StepOf(at);
        int ownZero = step.Work is StepWork.Cut cut ? cut.ZeroStep : at.Step;
        HashSet<int> given = [.. step.Gives.Select(Plan.CharacteristicIndex)];
        StaleItem[] items =
        [
            .. Staleness
                .From(State, moved)
                .Where(i =>
                    !(
                        i.Position == at.Position
                        && (i.Step == at.Step || i.Step == ownZero || given.Contains(i.Characteristic))
                    )
                ),
        ];
        return items.Length == 0 ? null : new RunEvent.WentStale(items, cause, at.Step);
    }

    /// <summary>The values that a reading changes: what was worked out from the old ones no longer stands.</summary>
    public IEnumerable<(string Name, int Position)> Changed(At at, TakenReading reading)
    {
        if (State.Value(reading.Characteristic, at.Position) is { } before && !SamePlaces(before, reading))
        {
            yield return (reading.Characteristic, at.Position);
        }

        foreach (WorkedValue worked in reading.Worked)
        {
            if (State.Value(worked.Name, at.Position) is { } old && !old.Value.SameAs(worked.Value))
            {
                yield return (worked.Name, at.Position);
            }
        }
    }

    private static bool SamePlaces(ValueRecord before, TakenReading now) =>
        before.Value.SameAs(now.Value)
        && before.Places.Count == now.Places.Count
        && before
            .Places.Zip(now.Places)
            .All(p => p.First.Place == p.Second.Place && p.First.Value.SameAs(p.Second.Value));

    /// <summary>The declared moves of a step.</summary>
    public IEnumerable<(string Name, int Position)> MovesOf(At at) => Staleness.Of(Plan, StepOf(at).Moves, at.Position);

    public static Decision.Refused No(string why, params string[] whatToDo) => new(why, whatToDo);

    public static Decision.Accepted Yes(params IEnumerable<RunEvent?> events) =>
        new([.. events.Where(e => e is not null).Select(e => e!)]);
}
