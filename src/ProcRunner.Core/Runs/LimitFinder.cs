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
        if (state.Plan.LimitAt(name, position) is not { } limit)
        {
            return (null, null, null);
        }

        return Chosen(state, limit, name, position) is { } chosen
            ? (chosen.Low, chosen.Aim, chosen.High)
            : (limit.Low, limit.Aim, limit.High);
    }

    /// <summary>One end of a limit's figures, exact; its aim is the middle when none is given.</summary>
    public static Exact? EndOf((Quantity? Low, Quantity? Aim, Quantity? High) figures, LimitEnd end) =>
        end switch
        {
            LimitEnd.Low => ExactOf(figures.Low),
            LimitEnd.High => ExactOf(figures.High),
            _ when figures is { Aim: null, Low: { } low, High: { } high } => Statistics.Middle(
                Exact.Of(low),
                Exact.Of(high)
            ),
            _ => ExactOf(figures.Aim),
        };

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
        if (state.Plan.FindLimit(name, position) is not { } found)
        {
            return new LimitResult.Unknown(name, "the head spec has none");
        }

        if (found.Limit.Ask is not { } why)
        {
            return found.Exact;
        }

        return Chosen(state, found.Limit, name, position) is { } chosen
            ? Found(chosen.Low, chosen.Aim, chosen.High, "shop, chosen in this job")
            : new LimitResult.Unknown(name, why);
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
    private static RunEvent.LimitChosen? Chosen(RunState state, Limit limit, string name, int position) =>
        limit.Ask is null
            ? null
            : state.ChosenLimits.LastOrDefault(c =>
                c.Characteristic == name && (c.Position is null || c.Position == position)
            );

    private static string NotTaken(RunState state, string name, int position)
    {
        string subject = ReadNames.Base(name) ?? name;
        bool stale = state.Value(subject, state.Plan.IsOfHead(subject) ? At.Head : position)?.Stale ?? false;
        return stale ? $"{subject} is to be taken again first" : $"{subject} isn't known yet";
    }

    private static Exact? ExactOf(Quantity? quantity) => quantity is { } value ? Exact.Of(value) : null;

    private static Exact? Shifted(Exact? end, Exact by) =>
        end is { } value ? new Exact(value.Value + by.Value, value.Dimension) : null;
}
