using ProcRunner.Formulas;
using ProcRunner.Procedures;
using ProcRunner.Quantities;

namespace ProcRunner.Runs;

/// <summary>Finds limits: the head spec's, those chosen in the run, and those worked out.</summary>
internal static class LimitFinder
{
    /// <summary>Low, aim and high of a spec limit with those chosen in the run put in.</summary>
    public static (Quantity? Low, Quantity? Aim, Quantity? High) Figures(RunState state, string name, int position)
    {
        if (Chosen(state, name, position) is { } chosen)
        {
            return (chosen.Low, chosen.Aim, chosen.High);
        }

        return state.Plan.Head.LimitOf(name, state.Plan.PositionOf(position)) is { } limit
            ? (limit.Low, limit.Aim, limit.High)
            : (null, null, null);
    }

    /// <summary>The limits of a window, shifted.</summary>
    public static LimitResult Find(
        RunState state,
        Window window,
        Formula? shift,
        int position,
        IFormulaScope? seen = null
    )
    {
        LimitResult found = window switch
        {
            Window.FromSpec fromSpec => OfSpec(state, fromSpec.LimitName, position),
            Window.Worked worked => OfFormulas(state, worked, position, seen),
            _ => new LimitResult.Found(Limits.None),
        };
        if (found is not LimitResult.Found { Limits: { Origin.Length: > 0 } limits } || shift is null)
        {
            return found;
        }

        return Work(state, shift, position) switch
        {
            (Exact by, _) when by.Value.IsZero => found,
            (Exact by, _) => new LimitResult.Found(
                new Limits(
                    Shifted(limits.Low, by),
                    Shifted(limits.Aim, by),
                    Shifted(limits.High, by),
                    $"{limits.Origin}, shifted by {Show.Plain(by, state.Plan.Head.LengthUnit)}"
                )
            ),
            (_, string why) => new LimitResult.NotYet(why),
        };
    }

    /// <summary>A formula's amount, or why there is none.</summary>
    public static (Exact? Amount, string Why) Work(
        RunState state,
        Formula formula,
        int position,
        IFormulaScope? seen = null
    )
    {
        seen ??= new RunScope(state, position, staleToo: false);
        return formula.TryAmount(seen, out Exact amount)
            ? (amount, "")
            : formula.Evaluate(seen) switch
            {
                FormulaOutcome.Missing missing => (null, NotTaken(state, missing.Name, position)),
                FormulaOutcome.Impossible impossible => (null, impossible.Why),
                _ => (null, "it gives no amount"),
            };
    }

    private static LimitResult OfSpec(RunState state, string name, int position)
    {
        Plan plan = state.Plan;
        if (Chosen(state, name, position) is { } chosen)
        {
            return Found(chosen.Low, chosen.Aim, chosen.High, "shop, chosen in this job");
        }

        return plan.Head.LimitOf(name, plan.PositionOf(position)) switch
        {
            null => new LimitResult.Unknown(name, "the head spec has none"),
            { Ask: { } why } => new LimitResult.Unknown(name, why),
            { } limit => plan.Exactly(limit),
        };
    }

    /// <summary>Low, aim and high as exact amounts; with no aim, the middle.</summary>
    public static LimitResult.Found Found(Quantity? low, Quantity? aim, Quantity? high, string origin)
    {
        Exact? from = low is { } l ? Exact.Of(l) : null;
        Exact? to = high is { } h ? Exact.Of(h) : null;
        Exact? middle = from is { } f && to is { } t ? Statistics.Middle(f, t) : null;
        return new LimitResult.Found(new Limits(from, aim is { } a ? Exact.Of(a) : middle, to, origin));
    }

    private static LimitResult OfFormulas(RunState state, Window.Worked worked, int position, IFormulaScope? seen)
    {
        Exact?[] ends = new Exact?[3];
        Formula?[] formulas = [worked.Low, worked.Aim, worked.High];
        for (int i = 0; i < formulas.Length; i++)
        {
            if (formulas[i] is not { } formula)
            {
                continue;
            }

            (ends[i], string why) = Work(state, formula, position, seen);
            if (ends[i] is null)
            {
                return new LimitResult.NotYet(why);
            }
        }

        Exact? aim = ends[1] ?? (ends is [{ } low, _, { } high] ? Statistics.Middle(low, high) : null);
        return new LimitResult.Found(new Limits(ends[0], aim, ends[2], OriginWords.Of(worked.Origin)));
    }

    // What was chosen counts only where the head spec leaves it open: it never overrides a maker's figures.
    private static RunEvent.LimitChosen? Chosen(RunState state, string name, int position) =>
        state.Plan.Head.LimitOf(name, state.Plan.PositionOf(position)) is { Ask: not null }
            ? state.ChosenLimits.LastOrDefault(c =>
                c.Characteristic == name && (c.Position is null || c.Position == position)
            )
            : null;

    private static string NotTaken(RunState state, string name, int position)
    {
        string subject = ReadNames.Base(name) ?? name;
        bool stale = state.Value(subject, state.Plan.IsOfHead(subject) ? At.Head : position)?.Stale ?? false;
        return stale ? $"{subject} is to be taken again first" : $"{subject} isn't known yet";
    }

    private static Exact? Shifted(Exact? end, Exact by) =>
        end is { } value ? new Exact(value.Value + by.Value, value.Dimension) : null;
}
