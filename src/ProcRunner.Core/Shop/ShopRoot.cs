using ProcRunner.People;

namespace ProcRunner.Shop;

/// <summary>A first lead, on whose key the keys after it hang.</summary>
/// <param name="Lead">The lead as they were then, with the key that their fingerprint is of.</param>
/// <param name="Entry">The shop book's entry that began with them.</param>
/// <param name="At">When, by the clock then.</param>
/// <param name="Reason">
/// Why the shop began anew; empty for the first of all, whom nobody had to replace. Any later one isn't vouched for by the
/// ones before: whoever held the store's folder named them.
/// </param>
public sealed record ShopRoot(Person Lead, long Entry, DateTimeOffset At, string Reason);
