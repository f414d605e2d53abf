using System.Collections.Immutable;

namespace ProcRunner.Trail;

/// <summary>What a store needs to know of a trail to write to it and to compare it with the shop book.</summary>
/// <param name="Verdict">Whether the trail holds.</param>
/// <param name="Entries">How many entries hold, from the first.</param>
/// <param name="Last">The digest of the last that holds.</param>
/// <param name="Length">The bytes of the entries that hold.</param>
/// <param name="Opening">What the first entry says, null when it says nothing or doesn't hold.</param>
/// <param name="Anchored">The entries whose digests belong into the shop book.</param>
/// <param name="Books">Each state of the shop book that the entries name, once.</param>
public sealed record TrailSummary(
    TrailVerdict Verdict,
    long Entries,
    Digest Last,
    long Length,
    JobOpening? Opening,
    ImmutableArray<AnchoredEntry> Anchored,
    ImmutableArray<BookMark> Books
);
