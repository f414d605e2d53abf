using System.Collections.Immutable;
using ProcRunner.Runs;
using ProcRunner.Shop;
using ProcRunner.Store.Local;
using ProcRunner.Trail;

namespace ProcRunner.Tui.Jobs;

/// <summary>Decides every entry of a job again, with its own pinned texts and the shop as it was then.</summary>
internal static class Recompute
{
    /// <summary>The entries that today's program would decide otherwise; how many were looked at.</summary>
    public static (IReadOnlyList<RedecidedEntry> Otherwise, long Entries) Of(ITrailReader reader, string jobId)
    {
        ImmutableArray<(TrailEntry Entry, Digest Digest)> book = reader.ReadTrail(JobId.Shop).Entries;
        ShopState shop = ShopState.Empty;
        int read = 0;
        List<RedecidedEntry> otherwise = [];
        long entries = 0;
        JobReading.Fold(
            reader,
            jobId,
            reader.ReadTrail(jobId).Entries.Select(line => line.Entry),
            (before, entry, events) =>
            {
                for (; read < book.Length && book[read].Entry.Sequence <= entry.Book.Sequence; read++)
                {
                    shop = shop.After(book[read].Entry, book[read].Digest);
                }

                entries++;
                if (RedecidedEntry.Of(before, shop, entry, events) is { } other)
                {
                    otherwise.Add(other);
                }
            }
        );
        return (otherwise, entries);
    }
}
