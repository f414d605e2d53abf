using System.Globalization;
using ProcRunner.People;
using ProcRunner.Shop;
using ProcRunner.Text;
using ProcRunner.Trail;

namespace ProcRunner.Store.Local;

/// <summary>
/// Checks an exported job by itself: the trail's chain, the pinned texts, the shop book's entries about it, the
/// certificates up to the root key. Signatures need the procedure and are checked where it is read.
/// </summary>
/// <remarks>
/// What can't be seen: that the root key is the shop's (its fingerprint must come another way), that somebody had left the
/// shop, and, in a job that isn't closed out, entries cut off the end after the last one that the book's entries name.
/// </remarks>
public static class ExportedJobCheck
{
    /// <summary>Checks it.</summary>
    /// <returns>What was found; nothing broken among it means that it holds.</returns>
    public static IReadOnlyList<StoreFinding> Of(ExportedJob job)
    {
        ArgumentNullException.ThrowIfNull(job);
        using var trail = new MemoryStream(job.Trail.ToArray());
        TrailSummary summary = TrailCheck.Summarise(trail, job.JobId);
        ShopState shop = job.ReadShop();
        List<StoreFinding> findings = [];
        if (summary.Verdict is TrailVerdict.Broken broken)
        {
            findings.Add(new(job.JobId, true, broken.Entry, broken.InWords()));
        }

        if (summary.Opening is null || summary.Opening.Stamp != job.Stamp)
        {
            findings.Add(Broken(job, 1, "Entry 1 doesn't open a job with the stamp that the file's first line says."));
        }

        findings.AddRange(Book(job, shop, summary));
        findings.AddRange(Marks(job, summary));
        findings.AddRange(Texts(job, summary));
        findings.AddRange(People(job, shop));
        return findings;
    }

    private static IEnumerable<StoreFinding> Book(ExportedJob job, ShopState shop, TrailSummary summary)
    {
        long last = 0;
        foreach (byte[] line in job.Book)
        {
            (TrailEntry? entry, TrailFault? _) = TrailLine.Decode(line);
            bool fits =
                entry is not null
                && entry.Of == JobId.Shop
                && entry.Sequence > last
                && entry.Events.All(said => said.TextAt("job") == job.JobId);
            if (!fits)
            {
                string after = last.ToString(CultureInfo.InvariantCulture);
                yield return Broken(
                    job,
                    null,
                    $"A line of the shop book, the next after its entry {after}, was changed, moved, or is about something else."
                );
                yield break;
            }

            last = entry!.Sequence;
        }

        if (shop.Jobs.GetValueOrDefault(job.JobId) is not { } known)
        {
            if (job.Book.Length > 0)
            {
                yield return Broken(job, null, "The shop book's lines in the file don't say that the job was opened.");
            }

            yield break;
        }

        foreach (StoreFinding finding in AnchorComparison.Compare(known, summary))
        {
            yield return finding;
        }
    }

    // Each entry of the trail names the book's last entry then: where the file has that one, they must agree.
    private static IEnumerable<StoreFinding> Marks(ExportedJob job, TrailSummary summary)
    {
        Dictionary<long, Digest> book = [];
        foreach ((TrailEntry entry, Digest digest) in job.ReadTrail(JobId.Shop).Entries)
        {
            if (!book.TryAdd(entry.Sequence, digest) && book[entry.Sequence] != digest)
            {
                yield return Broken(job, null, Numbered(entry.Sequence, "stands in the file in two ways"));
                yield break;
            }
        }

        foreach (BookMark mark in summary.Books)
        {
            if (book.TryGetValue(mark.Sequence, out Digest digest) && digest != mark.Digest)
            {
                yield return Broken(job, null, Numbered(mark.Sequence, "isn't the one that the trail knows"));
                yield break;
            }
        }
    }

    private static IEnumerable<StoreFinding> Texts(ExportedJob job, TrailSummary summary) =>
        (summary.Opening?.Texts ?? [])
            .Where(digest => job.ReadText(digest) is null)
            .Select(digest => Broken(job, 1, $"The pinned text {digest} is missing or was changed."));

    private static IEnumerable<StoreFinding> People(ExportedJob job, ShopState shop)
    {
        Digest[] roots = [.. shop.Roots.Select(root => FingerprintOf(root.Lead))];
        if (roots.Length == 0 || !roots.SequenceEqual(job.Roots))
        {
            yield return Broken(
                job,
                null,
                "The keys that the certificates lead up to aren't those in the file's first line."
            );
        }

        foreach (PeopleFinding found in PeopleCheck.Of(job.ReadTrail(JobId.Shop).Entries, isExcerpt: true))
        {
            yield return new(job.JobId, found.IsBroken, null, SafeText.Show(found.Text));
        }
    }

    /// <summary>SHA-256 of a person's public key.</summary>
    internal static Digest FingerprintOf(Person person) =>
        Digest.Parse(PersonKeys.Fingerprint(person).Replace(" ", "", StringComparison.Ordinal)) ?? Digest.Zero;

    private static string Numbered(long sequence, string what) =>
        string.Create(CultureInfo.InvariantCulture, $"Entry {sequence} of the shop book {what}.");

    private static StoreFinding Broken(ExportedJob job, long? entry, string text) => new(job.JobId, true, entry, text);
}
