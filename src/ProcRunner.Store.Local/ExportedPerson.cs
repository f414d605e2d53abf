using ProcRunner.Trail;

namespace ProcRunner.Store.Local;

/// <summary>What one entry of the shop book says of a person, without the wrapped private key.</summary>
/// <param name="Sequence">The book entry's number.</param>
/// <param name="Digest">Its digest. The entry itself stays in the shop, so that this is said, not proven.</param>
/// <param name="Previous">The digest of the book's entry before, over which a change to a person is signed.</param>
/// <param name="At">When, UTC.</param>
/// <param name="Event">The event: id, name, role, public key and certificate, or that somebody left.</param>
public sealed record ExportedPerson(long Sequence, Digest Digest, Digest Previous, DateTimeOffset At, Json.Map Event);
