using System.Collections.Immutable;
using ProcRunner.Store.Local;

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

    /// <summary>The jobs whose stamp, customer, part or lot holds a text.</summary>
    public static (IReadOnlyList<JobEntry> Jobs, string Trouble) Search(LocalStore store, string text)
    {
        if (store.Index is not { } index)
        {
            return ([], "This store keeps no search index.");
        }

        JobEntry[] found = [.. index.Find(new JobQuery { Text = text }).Hits.Select(hit => Entry(hit.Job, hit.Found))];
        return (found, index.Trouble is { } trouble ? $"The search index can't be used: {trouble}" : "");
    }

    private static JobEntry Entry(IndexedJob job, string found = "") =>
        new(job.Id, job.Stamp, job.Customer, job.State, job.WaitingFor, job.LastActivity, job.Person, found);

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
