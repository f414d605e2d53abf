using ProcRunner.Procedures;
using ProcRunner.Quantities;

namespace ProcRunner.Runs;

/// <summary>Statistics of a handful of values, exact.</summary>
public static class Statistics
{
    /// <summary>One of the statistics of at least one value, all of one dimension.</summary>
    /// <exception cref="InvalidOperationException">There are no values.</exception>
    public static Exact Of(Statistic statistic, IReadOnlyList<Exact> values) =>
        statistic switch
        {
            Statistic.Largest => values.Max(),
            Statistic.Smallest => values.Min(),
            Statistic.Spread => new Exact(values.Max().Value - values.Min().Value, values[0].Dimension),
            _ => new Exact(
                values.Aggregate(Rational.Zero, (sum, v) => sum + v.Value) / Rational.FromInteger(values.Count),
                values[0].Dimension
            ),
        };

    /// <summary>The middle value, or the mean of the middle two.</summary>
    public static Exact Median(IReadOnlyList<Exact> values)
    {
        List<Exact> sorted = [.. values.Order()];
        int middle = sorted.Count / 2;
        return sorted.Count % 2 == 1 ? sorted[middle] : Of(Statistic.Mean, [sorted[middle - 1], sorted[middle]]);
    }
}
