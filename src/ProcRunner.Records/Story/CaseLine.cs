namespace ProcRunner.Records.Story;

/// <summary>One thing in the course of a case.</summary>
/// <param name="Text">What happened.</param>
/// <param name="By">Who, when, which entry.</param>
public sealed record CaseLine(string Text, Stamped By);
