using ProcRunner.Procedures;
using ProcRunner.Quantities;
using ProcRunner.Shop;
using ProcRunner.ShopMath;

namespace ProcRunner.Runs;

/// <summary>Works out the number to cut to, in the readout's own terms, from the zero and the last reading.</summary>
internal static class Targets
{
    /// <summary>
    /// The target of a cut: the aim less the allowance while more than the allowance is left, else the aim itself, and the
    /// aim once the cut has been measured at its approach; or why there is none. The allowance is the largest of the shop's, the combined uncertainty and one step of the readout.
    /// </summary>
    public static (CutOutlook? Outlook, string Why) For(RunState state, ShopState shop, At at, CutProgress progress) =>
        For(state, shop, at, progress, state.Find(at)?.Approached ?? false);

    /// <summary>The same, with it said whether the cut has been measured at its approach.</summary>
    public static (CutOutlook? Outlook, string Why) For(
        RunState state,
        ShopState shop,
        At at,
        CutProgress progress,
        bool approached
    )
    {
        Plan plan = state.Plan;
        if (shop.Readout is not { } readout)
        {
            return (null, "the machine's readout hasn't been set up");
        }

        StepWork.Cut cut = (StepWork.Cut)plan.StepAt(at.Step).Work;
        LimitResult found = LimitFinder.Find(state, cut.Taking.Window, cut.Taking.Shift, at.Position);
        if (found is not LimitResult.Found { Limits: { Aim: { } aim } limits })
        {
            return (null, found is LimitResult.NotYet notYet ? notYet.Why : "no aim is known for it");
        }

        (Exact? stopShort, string why) = LimitFinder.Work(state, cut.StopShort, at.Position);
        if (stopShort is null)
        {
            return (null, why);
        }

        ReadoutMaths maths = new(readout, plan.PositionOf(at.Position)?.GuideAngle ?? 0);
        Exact allowance = Largest(
            stopShort.Value,
            Uncertainty(state, shop, cut, maths),
            new Exact(readout.Unit.ToBase(maths.StepOfTravel), aim.Dimension)
        );
        CutTarget? target = Target(progress, maths, aim, approached ? null : allowance, plan.Head.LengthUnit);
        return (new CutOutlook(maths, limits, target, allowance), "");
    }

    /// <summary>
    /// True when the reading that a cut works from has gone stale: it is measured again before more is cut, from the same
    /// zero, since that counts the tool's travel and not the depth.
    /// </summary>
    public static bool IsBaseStale(RunState state, At at)
    {
        StepWork.Cut cut = (StepWork.Cut)state.Plan.StepAt(at.Step).Work;
        return state.Value(cut.Taking.Characteristic, at.Position) is { Stale: true } value
            && state.Find(at with { Step = cut.ZeroStep }) is { } zero
            && (value.ByStep == cut.ZeroStep || (value.ByStep == at.Step && value.Sequence > zero.Sequence));
    }

    /// <summary>
    /// What a reading after a cut and its prediction may differ by: the root of the sum of squares (JCGM 100, 5.1.2, for
    /// uncorrelated inputs) of the gauge's uncertainty, twice, and the readout's step.
    /// </summary>
    public static Exact Uncertainty(RunState state, ShopState shop, StepWork.Cut cut, ReadoutMaths maths)
    {
        double step = (double)Rational.FromDecimal(maths.Readout.Step).ToDouble();
        double gauge = 0;
        if (
            cut.Taking.GaugeKind is { } kind
            && state.Gauges.GetValueOrDefault(kind) is { } id
            && shop.Gauges.TryGetValue(id, out Gauge? chosen)
            && chosen.Uncertainty.Dimension == maths.Readout.Unit.Dimension
        )
        {
            gauge = Exact.Of(chosen.Uncertainty).In(maths.Readout.Unit).ToDouble();
        }

        double combined = Math.Sqrt((2 * gauge * gauge) + (step * step));
        _ = DoubleRounding.TryToDecimal(combined, 6, Rounding.Up, out decimal rounded);
        return Exact.Of(new Quantity(rounded, maths.Readout.Unit));
    }

    private static CutTarget? Target(
        CutProgress progress,
        ReadoutMaths maths,
        Exact aim,
        Exact? allowance,
        Unit shownIn
    )
    {
        Exact reading = Exact.Of(progress.Reading);
        Rational toAim = maths.TravelFor(reading, aim);
        Rational behind = Rational.FromDecimal(progress.TravelAtReading.Value);
        Rational travelled = Rational.FromDecimal(progress.Travel.Value);
        Rational? allowed = allowance?.In(maths.Readout.Unit);
        Rational left = behind + toAim - travelled;
        if (left < maths.StepOfTravel)
        {
            return null;
        }

        // Measured less than a step of the readout before its approach: that is the approach, and the next cut goes to the aim.
        bool isMeasured = travelled == behind;
        bool stopsShort =
            allowed is { } before
            && toAim > before
            && left > before
            && (!isMeasured || left - before >= maths.StepOfTravel);
        Rational travel = behind + toAim - (stopsShort ? allowed!.Value : Rational.Zero);
        Quantity show = maths.NumberAt(Base(progress, maths), ToGo(progress, maths, travel));
        string working =
            $"{Show.Plain(aim, shownIn)} aim - {Show.In(reading, shownIn)} = "
            + Show.Plain(new Exact(aim.Value - reading.Value, aim.Dimension), shownIn)
            + (stopsShort ? $"; stop short by {Show.Plain(allowance!.Value, shownIn)}" : "");
        Rational toShow = maths.TravelAt(Base(progress, maths), show);
        Rational toGo = maths.Readout.StepMode ? toShow : toShow - travelled;
        return toGo.Sign <= 0 ? null : new CutTarget(show, stopsShort, Travelled(toGo, maths), working);
    }

    /// <summary>The number from which travel counts: what the readout was set to, or in step mode its last reset to 0.</summary>
    public static Quantity Base(CutProgress progress, ReadoutMaths maths) =>
        maths.Readout.StepMode ? new Quantity(0, maths.Readout.Unit) : progress.Zero.Set;

    /// <summary>The travel as the readout counts it: from its zero, or in step mode from the last pass.</summary>
    public static Rational ToGo(CutProgress progress, ReadoutMaths maths, Rational travel) =>
        maths.Readout.StepMode ? travel - Rational.FromDecimal(progress.Travel.Value) : travel;

    /// <summary>A travel as a quantity in the readout's unit.</summary>
    public static Quantity Travelled(Rational travel, ReadoutMaths maths) =>
        new(
            travel.TryRound(maths.Readout.Step.Scale + 2, Rounding.TowardZero, out decimal value) ? value : 0m,
            maths.Readout.Unit
        );

    private static Exact Largest(params ReadOnlySpan<Exact> amounts)
    {
        Exact largest = amounts[0];
        foreach (Exact amount in amounts)
        {
            largest = amount.CompareTo(largest) > 0 ? amount : largest;
        }

        return largest;
    }
}
