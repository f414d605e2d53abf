using ProcRunner.Trail;

namespace ProcRunner.Shop;

/// <summary>An entry of a job's trail that the shop book vouches for.</summary>
/// <param name="Sequence">The entry's number.</param>
/// <param name="Digest">Its digest.</param>
/// <param name="Why">What it was written down for.</param>
public sealed record JobAnchor(long Sequence, Digest Digest, Anchor Why);
