using System.Collections.Immutable;
using ProcRunner.Trail;

namespace ProcRunner.Store.Local;

/// <summary>A trail as it was read.</summary>
/// <param name="Entries">The entries that hold, from the first, with their digests.</param>
/// <param name="Verdict">Whether all of it holds.</param>
public sealed record TrailReading(ImmutableArray<(TrailEntry Entry, Digest Digest)> Entries, TrailVerdict Verdict);
