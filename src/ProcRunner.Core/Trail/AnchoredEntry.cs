namespace ProcRunner.Trail;

/// <summary>An entry of a trail whose digest belongs into the shop book.</summary>
/// <param name="Sequence">The entry's number.</param>
/// <param name="Digest">Its digest.</param>
/// <param name="Why">What for.</param>
/// <param name="Operator">Who was at work.</param>
public sealed record AnchoredEntry(long Sequence, Digest Digest, Anchor Why, string Operator);
