using ProcRunner.Shop;
using ProcRunner.Trail;

namespace ProcRunner.Store.Local;

/// <summary>Takes one job out of a store, to be proven elsewhere.</summary>
public static class JobExport
{
    /// <summary>Takes it; null with the reason when its trail doesn't hold or a text is missing.</summary>
    /// <param name="reader">The store.</param>
    /// <param name="jobId">The job.</param>
    /// <param name="people">Ids of the people whose marks or names stand in the job.</param>
    public static (ExportedJob? Job, string Fault) Take(StoreReader reader, string jobId, IEnumerable<string> people)
    {
        ArgumentNullException.ThrowIfNull(reader);

        // The book is read after the trail, so that it knows all that the trail knows of it.
        TrailReading trail = reader.ReadTrail(jobId);
        TrailReading book = reader.ReadTrail(JobId.Shop);
        ShopState shop = book.Entries.Aggregate(ShopState.Empty, (state, line) => state.After(line.Entry, line.Digest));
        if (trail.Verdict is not TrailVerdict.Holds || trail.Entries[0].Entry.Opening is not { } opening)
        {
            return (null, "The job's trail doesn't hold. " + trail.Verdict.InWords());
        }

        if (book.Verdict is not TrailVerdict.Holds || shop.Roots.IsEmpty)
        {
            return (null, "The shop book doesn't hold, or nobody is in it yet. " + book.Verdict.InWords());
        }

        if (opening.Texts.Any(digest => reader.ReadText(digest) is null))
        {
            return (null, "A text that the job was opened with is missing or was changed.");
        }

        return (
            new()
            {
                JobId = jobId,
                Stamp = opening.Stamp,
                Shop = shop.Name,
                Roots = [.. shop.Roots.Select(root => ExportedJobCheck.FingerprintOf(root.Lead))],
                Texts = [.. opening.Texts.Select(digest => reader.ReadText(digest)!)],
                People = [.. ShopExcerpt.People(book.Entries, people.Concat(shop.Roots.Select(root => root.Lead.Id)))],
                Book = [.. ShopExcerpt.Job(book.Entries, jobId)],
                Trail = trail.Entries.SelectMany(line => TrailLine.Encode(line.Entry)).ToArray(),
            },
            ""
        );
    }
}
