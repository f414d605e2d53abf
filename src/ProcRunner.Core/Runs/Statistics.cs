using ProcRunner.Procedures;
using ProcRunner.Quantities;

namespace ProcRunner.Runs;

/// <summary>Statistics of a handful of values, exact.</summary>
public static class Statistics
{
    /// <summary>One of the statistics of values of one dimension: of at least one, unless they are counted.</summary>
    /// <exception cref="InvalidOperationException">There are no values to take it of.</exception>
    public static Exact Of(Statistic statistic, IReadOnlyList<Exact> values) =>
        statistic switch
        {
            Statistic.Largest => values.Max(),
            Statistic.Smallest => values.Min(),
            Statistic.Spread => new Exact(values.Max().Value - values.Min().Value, values[0].Dimension),
            Statistic.Median => Median(values),
            Statistic.Count => new Exact(Rational.FromInteger(values.Count), Dimension.None),
            _ => new Exact(
                values.Aggregate(Rational.Zero, (sum, v) => sum + v.Value) / Rational.FromInteger(values.Count),
                values[0].Dimension
            ),
        };

    private static Exact Median(IReadOnlyList<Exact> values)
    {
        List<Exact> sorted = [.. values.Order()];
        int middle = sorted.Count / 2;
        return sorted.Count % 2 == 1 ? sorted[middle] : Of(Statistic.Mean, [sorted[middle - 1], sorted[middle]]);
    }
}
