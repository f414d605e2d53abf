namespace ProcRunner.Store.Local;

/// <summary>Something that a check of a store found.</summary>
/// <param name="Of">What it is about: a job id, or <see cref="Trail.JobId.Shop"/>.</param>
/// <param name="IsBroken">True when it tells against the trail; false for what a crash leaves behind and is made good.</param>
/// <param name="Entry">The first entry that doesn't hold, null when it isn't about an entry.</param>
/// <param name="Text">What was found and what it means, in plain words.</param>
public sealed record StoreFinding(string Of, bool IsBroken, long? Entry, string Text);
