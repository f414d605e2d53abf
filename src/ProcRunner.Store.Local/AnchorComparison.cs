using System.Globalization;
using ProcRunner.Shop;
using ProcRunner.Trail;

namespace ProcRunner.Store.Local;

/// <summary>Compares a job's trail with what the shop book says of it.</summary>
internal static class AnchorComparison
{
    /// <summary>What doesn't agree, the earliest entry first.</summary>
    public static IEnumerable<StoreFinding> Compare(ShopJob job, TrailSummary trail)
    {
        if (trail.Opening is { } opening && (opening.Stamp != job.Stamp || !opening.Texts.SequenceEqual(job.Texts)))
        {
            yield return new(
                job.Id,
                true,
                1,
                "Entry 1 opens a job with another stamp or other texts than the shop book says: the trail was exchanged."
            );
        }

        foreach (JobAnchor anchor in job.Anchors)
        {
            if (anchor.Sequence > trail.Entries)
            {
                if (trail.Verdict is TrailVerdict.Holds)
                {
                    yield return new(job.Id, true, trail.Entries + 1, CutShort(anchor, trail.Entries));
                }

                yield break;
            }

            AnchoredEntry? entry = trail.Anchored.FirstOrDefault(marked => marked.Sequence == anchor.Sequence);
            if (entry is null || entry.Digest != anchor.Digest)
            {
                yield return new(job.Id, true, anchor.Sequence, Rewritten(anchor));
                yield break;
            }
        }
    }

    /// <summary>The entries that belong into the shop book and aren't there yet.</summary>
    public static IEnumerable<AnchoredEntry> Behind(ShopJob? job, TrailSummary trail)
    {
        long known = job?.LastAnchor?.Sequence ?? 0;
        return trail.Anchored.Where(entry => entry.Sequence > known);
    }

    private static string CutShort(JobAnchor anchor, long entries) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"The trail ends after entry {entries}, but the shop book knows entry {anchor.Sequence} ({AnchorWord.Of(anchor.Why)}): the trail was cut short."
        );

    private static string Rewritten(JobAnchor anchor) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"Entry {anchor.Sequence} ({AnchorWord.Of(anchor.Why)}) isn't the one that the shop book knows: the trail was written anew, up to there or before."
        );
}
