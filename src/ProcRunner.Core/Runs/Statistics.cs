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

/// <summary>The words for statistics in files and formulas.</summary>
public static class StatisticWords
{
    /// <summary>Every word; the deepest of several depths is their largest.</summary>
    public static IReadOnlyList<(string Word, Statistic Statistic)> All { get; } =
    [
        ("largest", Statistic.Largest),
        ("deepest", Statistic.Largest),
        ("smallest", Statistic.Smallest),
        ("shallowest", Statistic.Smallest),
        ("mean", Statistic.Mean),
        ("spread", Statistic.Spread),
    ];

    /// <summary>The statistic of a word, or null.</summary>
    public static Statistic? Find(string word)
    {
        foreach ((string known, Statistic statistic) in All)
        {
            if (known == word)
            {
                return statistic;
            }
        }

        return null;
    }
}
