using ProcRunner.Procedures;
using ProcRunner.Quantities;

namespace ProcRunner.Runs.Doubts;

/// <summary>
/// A position far from the median of its kind, before more metal goes there. Like is held against like: positions of the
/// same kind about which everything was decided alike, of whose values nothing has moved since.
/// </summary>
/// <remarks>
/// Far is the width of the characteristic's own limits, unless the procedure says otherwise: further apart than the maker
/// lets two of them be. Common practice, no source.
/// </remarks>
internal static class OddDoubt
{
    // The value itself and two others: of two nobody can say which is the odd one.
    private const int Fewest = 3;

    public static Doubt? Of(Seen seen)
    {
        if (
            seen.Of.OfHead
            || seen.Reading.Judgement.Verdict == Verdict.Out
            || !IsBeforeCutting(seen)
            || FarOf(seen) is not { } far
        )
        {
            return null;
        }

        int characteristic = seen.On.Plan.CharacteristicIndex(seen.Of.Name);
        List<(int Position, ValueRecord Value)> others = [];
        for (int other = 0; other < seen.On.Plan.Positions.Count; other++)
        {
            if (
                other != seen.At.Position
                && seen.State.Value(characteristic, other) is { Stale: false } value
                && IsLike(seen, other)
            )
            {
                others.Add((other, value));
            }
        }

        if (others.Count + 1 < Fewest)
        {
            return null;
        }

        Exact[] all = [.. others.Select(o => Exact.Of(o.Value.Value)), Exact.Of(seen.Reading.Value)];
        Rational median = Statistics.Of(Statistic.Median, all).Value;
        Rational off = Seen.Apart(seen.Value, median);
        if (off <= far)
        {
            return null;
        }

        Rational quarter = far / Rational.FromInteger(4);
        string names = Seen.Names([.. others.Select(o => seen.On.Plan.PositionName(o.Position))]);
        return new Doubt(
            $"Read {seen.Reading.Value}; {seen.Text(off)} {(seen.Value > median ? "more" : "less")} than {seen.Text(median)}, the median with {names}; over {seen.Text(far)} is odd. Before more metal goes:",
            quarter > seen.Noise ? quarter : seen.Noise
        );
    }

    private static Rational? FarOf(Seen seen)
    {
        if (seen.Of.Doubts.OddOneOut.By is { } by)
        {
            return Seen.Base(by);
        }

        (Quantity? low, _, Quantity? high) = LimitFinder.Figures(seen.State, seen.Of.Name, seen.At.Position);
        return low is { } from && high is { } to && from.Dimension == seen.Of.Dimension && from.CompareTo(to) < 0
            ? Seen.Base(to) - Seen.Base(from)
            : null;
    }

    // A step that measures or zeroes before the last one that cuts to it; a cut in hand is watched by its prediction.
    private static bool IsBeforeCutting(Seen seen) =>
        seen.Step.Work is not StepWork.Cut
        && seen.On.Plan.Takers(seen.On.Plan.CharacteristicIndex(seen.Of.Name))
            .Any(taker => taker > seen.At.Step && seen.On.Plan.StepAt(taker).Work is StepWork.Cut);

    private static bool IsLike(Seen seen, int other)
    {
        if (seen.On.Plan.KindOf(other) != seen.On.Plan.KindOf(seen.At.Position))
        {
            return false;
        }

        foreach (string subject in seen.On.Plan.DecidedByPosition)
        {
            if (seen.State.ChoiceOf(subject, seen.At.Position) != seen.State.ChoiceOf(subject, other))
            {
                return false;
            }
        }

        return true;
    }
}
