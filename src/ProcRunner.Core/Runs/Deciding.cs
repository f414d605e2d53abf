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
        IReadOnlyList<MovedName> moved,
        string cause,
        IReadOnlyList<StaleItem>? gates = null
    )
    {
        IReadOnlyList<StaleItem> found = Staleness.From(State, moved, gates ?? []);
        if (found.Count == 0)
        {
            return null;
        }

        int ownZero = StepOf(at).Work is StepWork.Cut cut ? cut.ZeroStep : at.Step;
        bool IsOwn(StaleItem i) =>
            i.Position == at.Position
            && (i.Step == at.Step || i.Step == ownZero || Plan.GivenBy(at.Step).Contains(i.Characteristic));
        StaleItem[] items = [.. found.Where(i => !IsOwn(i))];
        return items.Length == 0 ? null : new RunEvent.WentStale(items, cause, at.Step);
    }

    /// <summary>What goes stale when a reading comes in.</summary>
    public RunEvent.WentStale? Stales(At at, TakenReading reading, IReadOnlyList<MovedName> moved, string cause)
    {
        List<MovedName>? changed = null;
        List<StaleItem>? gates = null;

        // A corrected entry that another step's reading has followed gives nothing: the later reading counts.
        ValueRecord? before = State.Value(reading.Characteristic, at.Position);
        if (before is null || !Corrects || before.ByStep == at.Step)
        {
            bool same = before is not null && SamePlaces(before, reading);
            AddChanged(ref changed, at, reading.Characteristic, before, same);
            AddLaterGates(ref gates, at, reading.Characteristic, before, same);
        }

        for (int i = 0; i < reading.Worked.Count; i++)
        {
            WorkedValue worked = reading.Worked[i];
            ValueRecord? old = State.Value(worked.Name, at.Position);
            if (old is null || !Corrects || old.ByStep == at.Step)
            {
                bool same = old is not null && old.Value.SameAs(worked.Value);
                AddChanged(ref changed, at, worked.Name, old, same);
                AddLaterGates(ref gates, at, worked.Name, old, same);
            }
        }

        return Stales(at, changed is null ? moved : [.. moved, .. changed], cause, gates);
    }

    /// <summary>The declared moves of a step.</summary>
    public IReadOnlyList<MovedName> MovesOf(At at) => Plan.MovedBy(at);

    public static Decision.Refused No(string why, params string[] whatToDo) => new(why, whatToDo);

    public static Decision.Accepted Yes(params ReadOnlySpan<RunEvent?> events)
    {
        int count = 0;
        foreach (RunEvent? one in events)
        {
            count += one is null ? 0 : 1;
        }

        RunEvent[] happened = new RunEvent[count];
        count = 0;
        foreach (RunEvent? one in events)
        {
            if (one is not null)
            {
                happened[count++] = one;
            }
        }

        return new(happened);
    }

    // What was worked out from the old value, or without it, no longer stands.
    private static void AddChanged(ref List<MovedName>? moved, At at, string name, ValueRecord? before, bool same)
    {
        if (before is null)
        {
            (moved ??= []).Add(new MovedName(name, at.Position, FirstKnown: true));
        }
        else if (!same)
        {
            (moved ??= []).Add(new MovedName(name, at.Position));
            if (before is { AsFound: not null, Stale: false } && before.AsFoundBy == at.Step)
            {
                moved.Add(new MovedName(ReadNames.AsFound(name), at.Position));
            }
        }
    }

    // A later gate over the same characteristic judged the old value: it is to judge the new one.
    private void AddLaterGates(ref List<StaleItem>? gates, At at, string name, ValueRecord? before, bool same)
    {
        if (same || before is null)
        {
            return;
        }

        foreach (int taker in Plan.TakersFor(Plan.CharacteristicIndex(name)))
        {
            At later = at with { Step = taker };
            if (
                taker > at.Step
                && !Plan.IsAsFound(taker)
                && State.Find(later) is { Standing: StepStanding.Done, Stale: false }
                && Outlook.AskedAt(later) == Asked.Yes
            )
            {
                (gates ??= []).Add(new StaleItem(-1, taker, at.Position));
            }
        }
    }

    private static bool SamePlaces(ValueRecord before, TakenReading now)
    {
        if (!before.Value.SameAs(now.Value) || before.Places.Count != now.Places.Count)
        {
            return false;
        }

        for (int i = 0; i < now.Places.Count; i++)
        {
            if (before.Places[i].Place != now.Places[i].Place || !before.Places[i].Value.SameAs(now.Places[i].Value))
            {
                return false;
            }
        }

        return true;
    }
}
