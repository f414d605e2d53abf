namespace ProcRunner.Procedures;

/// <summary>What can be chosen about one subject.</summary>
/// <param name="OfHead">True when it is chosen once for the head, false when once a position.</param>
/// <param name="Words">The choices or findings, in the order they were met.</param>
public sealed record NamedChoices(bool OfHead, IReadOnlyList<string> Words);
