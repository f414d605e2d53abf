using ProcRunner.Procedures;
using ProcRunner.Shop;

namespace ProcRunner.Runs;

/// <summary>What a decision is made from: the run, the shop, the moment. Nothing in it changes.</summary>
internal sealed class Deciding(RunState state, ShopState shop, Moment moment)
{
    public RunState State { get; } = state;

    public Plan Plan { get; } = state.Plan;

    public ShopState Shop { get; } = shop;

    public Moment Moment { get; } = moment;

    /// <summary>True when the entry takes the place of the last one at its step rather than being a new one.</summary>
    public bool Corrects { get; init; }

    /// <summary>On a practice job alone: the word that stands for a signature; null: signatures.</summary>
    public string? PracticeMark { get; init; }

    public Outlook Outlook => State.Outlook;

    public Step StepOf(At at) => Plan.StepAt(at.Step);

    /// <summary>What goes stale when a step's result comes in: its declared moves and whatever else is named.</summary>
    /// <param name="at">The step.</param>
    /// <param name="moved">What moved.</param>
    /// <param name="cause">Why, in words.</param>
    /// <param name="gates">Steps that are to be done again besides.</param>
    public RunEvent.WentStale? Stales(
        At at,
        IEnumerable<MovedName> moved,
        string cause,
        IEnumerable<StaleItem>? gates = null
    )
    {
        Step step = StepOf(at);
        int ownZero = step.Work is StepWork.Cut cut ? cut.ZeroStep : at.Step;
        bool IsOwn(StaleItem i) =>
            i.Position == at.Position
            && (i.Step == at.Step || i.Step == ownZero || Plan.GivenBy(at.Step).Contains(i.Characteristic));
        StaleItem[] items = [.. Staleness.From(State, moved, gates ?? []).Where(i => !IsOwn(i))];
        return items.Length == 0 ? null : new RunEvent.WentStale(items, cause, at.Step);
    }

    /// <summary>What goes stale when a reading comes in.</summary>
    public RunEvent.WentStale? Stales(At at, TakenReading reading, IEnumerable<MovedName> moved, string cause) =>
        Stales(at, moved.Concat(Changed(at, reading)), cause, LaterGates(at, reading));

    /// <summary>The declared moves of a step.</summary>
    public IEnumerable<MovedName> MovesOf(At at) => Staleness.Of(Plan, StepOf(at).Moves, at.Position);

    public static Decision.Refused No(string why, params string[] whatToDo) => new(why, whatToDo);

    public static Decision.Accepted Yes(params IEnumerable<RunEvent?> events) =>
        new([.. events.Where(e => e is not null).Select(e => e!)]);

    // What was worked out from the old values, or without them, no longer stands.
    private IEnumerable<MovedName> Changed(At at, TakenReading reading)
    {
        foreach ((string name, bool same) in Given(at, reading))
        {
            ValueRecord? before = State.Value(name, at.Position);
            if (before is null)
            {
                yield return new MovedName(name, at.Position, FirstKnown: true);
            }
            else if (!same)
            {
                yield return new MovedName(name, at.Position);
            }

            if (!same && before is { AsFound: not null, Stale: false } && before.AsFoundBy == at.Step)
            {
                yield return new MovedName(ReadNames.AsFound(name), at.Position);
            }
        }
    }

    // A later gate over the same characteristic judged the old value: it is to judge the new one.
    private IEnumerable<StaleItem> LaterGates(At at, TakenReading reading) =>
        Given(at, reading)
            .Where(g => !g.Same && State.Value(g.Name, at.Position) is not null)
            .SelectMany(g => Plan.Takers(Plan.CharacteristicIndex(g.Name)))
            .Where(taker => taker > at.Step && !Plan.IsAsFound(taker))
            .Select(taker => new At(taker, at.Position))
            .Where(later => State.Find(later) is { Standing: StepStanding.Done, Stale: false })
            .Where(later => Outlook.AskedAt(later) == Asked.Yes)
            .Select(later => new StaleItem(-1, later.Step, later.Position));

    // What the reading gives, and whether it says what stood before. A corrected entry that another step's reading has
    // followed gives nothing: the later reading counts.
    private IEnumerable<(string Name, bool Same)> Given(At at, TakenReading reading)
    {
        if (State.Value(reading.Characteristic, at.Position) is not { } before)
        {
            yield return (reading.Characteristic, false);
        }
        else if (!Corrects || before.ByStep == at.Step)
        {
            yield return (reading.Characteristic, SamePlaces(before, reading));
        }

        foreach (WorkedValue worked in reading.Worked)
        {
            ValueRecord? old = State.Value(worked.Name, at.Position);
            if (old is null || !Corrects || old.ByStep == at.Step)
            {
                yield return (worked.Name, old is not null && old.Value.SameAs(worked.Value));
            }
        }
    }

    private static bool SamePlaces(ValueRecord before, TakenReading now) =>
        before.Value.SameAs(now.Value)
        && before.Places.Count == now.Places.Count
        && before
            .Places.Zip(now.Places)
            .All(p => p.First.Place == p.Second.Place && p.First.Value.SameAs(p.Second.Value));
}
