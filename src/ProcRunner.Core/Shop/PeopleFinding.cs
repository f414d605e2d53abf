namespace ProcRunner.Shop;

/// <summary>Something that a check of the shop's people found.</summary>
/// <param name="Entry">The shop book's entry.</param>
/// <param name="IsBroken">False for what stands by itself but is to be known for ever: a shop that began anew.</param>
/// <param name="Text">What it is and what it means, in plain words.</param>
public sealed record PeopleFinding(long Entry, bool IsBroken, string Text);
