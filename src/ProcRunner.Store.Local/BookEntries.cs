using ProcRunner.Shop;
using ProcRunner.Trail;

namespace ProcRunner.Store.Local;

/// <summary>What the shop book says of a job's entry.</summary>
internal static class BookEntries
{
    public static IEnumerable<ShopEvent> Of(string job, JobOpening? opening, AnchoredEntry entry)
    {
        if (entry.Why == Anchor.Opened && opening is not null)
        {
            yield return new ShopEvent.JobOpened(job, opening.Stamp, opening.Texts);
        }

        yield return entry.Why == Anchor.ClosedOut
            ? new ShopEvent.JobClosedOut(job, entry.Sequence, entry.Digest)
            : new ShopEvent.JobAnchored(job, entry.Sequence, entry.Digest, entry.Why);
    }
}
