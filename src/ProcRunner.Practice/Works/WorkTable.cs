using System.Collections.Frozen;

namespace ProcRunner.Practice.Works;

/// <summary>Every kind of work that a practice file can bind.</summary>
internal static class WorkTable
{
    /// <summary>A reading that the operator chooses instead of taking it from a gauge, as a planned skim.</summary>
    public static readonly Work Choose = new("choose", true, null);

    private static readonly FrozenDictionary<string, Work> ByName = new[]
    {
        GuideWork.All,
        SeatWork.All,
        DeckWork.All,
        [Choose],
    }
        .SelectMany(all => all)
        .ToFrozenDictionary(work => work.Name, StringComparer.Ordinal);

    public static IEnumerable<string> Names => ByName.Keys.Order(StringComparer.Ordinal);

    public static Work? Find(string name) => ByName.GetValueOrDefault(name);
}
