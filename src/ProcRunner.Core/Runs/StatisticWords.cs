using ProcRunner.Procedures;

namespace ProcRunner.Runs;

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
