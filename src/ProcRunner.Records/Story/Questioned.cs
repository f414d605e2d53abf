namespace ProcRunner.Records.Story;

/// <summary>An entry that was questioned rather than taken.</summary>
/// <param name="Step">The step and position.</param>
/// <param name="Typed">What was typed.</param>
/// <param name="Why">Why it was questioned.</param>
/// <param name="Then">What was taken after that; empty when nothing was.</param>
/// <param name="By">Who, when, which entry.</param>
public sealed record Questioned(string Step, string Typed, string Why, string Then, Stamped By);
