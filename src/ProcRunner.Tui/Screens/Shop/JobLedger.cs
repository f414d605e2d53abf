using System.Collections.Immutable;
using ProcRunner.Store.Local;
using ProcRunner.Tui.Jobs;

namespace ProcRunner.Tui.Screens.Shop;

/// <summary>The jobs of a store, through its search index; without the index, as the shop book alone knows them.</summary>
internal static class JobLedger
{
    /// <summary>Open jobs first, then those on hold, then the closed ones; in each the latest activity first.</summary>
    public static (IReadOnlyList<JobEntry> Jobs, string Trouble) Read(LocalStore store)
    {
        ImmutableArray<IndexedJob> indexed = store.Index?.All() ?? [];
        if (store.Index is { Trouble: { } trouble })
        {
            return (FromBook(store), $"The search index can't be used ({trouble}): only stamps are known.");
        }

        return ([.. indexed.Select(job => Entry(job)).OrderBy(Rank)], "");
    }

    /// <summary>The shop's day: heads in work, then on hold, then those signed off this week.</summary>
    public static (IReadOnlyList<JobEntry> Jobs, string Trouble) Day(LocalStore store, DateTimeOffset now)
    {
        ImmutableArray<IndexedJob> indexed = store.Index?.All() ?? [];
        if (store.Index is { Trouble: { } trouble })
        {
            return (
                [.. FromBook(store).Where(job => !job.IsClosed)],
                $"The search index can't be used ({trouble}): only stamps are known."
            );
        }

        ShopDay day = ShopDay.Of(indexed, now);
        return ([.. day.InHand.Concat(day.ThisWeek).Select(job => Entry(job))], "");
    }

    /// <summary>The jobs that fit, the best first, and how many there are.</summary>
    public static (IReadOnlyList<JobEntry> Jobs, int Count, string Trouble) Find(LocalStore store, JobQuery query)
    {
        if (store.Index is not { } index)
        {
            return ([], 0, "This store keeps no search index.");
        }

        (ImmutableArray<JobHit> hits, int count) = index.Find(query);
        JobEntry[] found = [.. hits.Select(hit => Entry(hit.Job, HitWords.Of(hit)))];
        return (found, count, index.Trouble is { } trouble ? $"The search index can't be used: {trouble}" : "");
    }

    /// <summary>How many jobs fit.</summary>
    public static int Count(LocalStore store, JobQuery query) => store.Index?.Find(query, most: 0).Count ?? 0;

    /// <summary>A job of the index as a list shows it.</summary>
    public static JobEntry Entry(IndexedJob job, string found = "") =>
        new(job.Id, job.Stamp, job.Customer, job.State, job.WaitingFor, job.LastActivity, job.Person, job.Bench, found);

    private static int Rank(JobEntry job) =>
        job.State switch
        {
            "open" => 0,
            "held" => 1,
            _ => 2,
        };

    private static IReadOnlyList<JobEntry> FromBook(LocalStore store) =>
        [
            .. store
                .Shop.Jobs.Values.Select(job => new JobEntry(
                    job.Id,
                    job.Stamp,
                    "",
                    job.IsClosedOut ? "released" : "open",
                    "",
                    null,
                    ""
                ))
                .OrderBy(job => job.IsClosed)
                .ThenBy(job => job.Stamp, StringComparer.OrdinalIgnoreCase),
        ];
}
