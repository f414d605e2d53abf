namespace ProcRunner.Lessons;

/// <summary>A part of what work aims at.</summary>
/// <param name="Name">A reading's current value, or else the aim of the head spec's limit of that name.</param>
/// <param name="IsSubtracted">True when it is taken away.</param>
public readonly record struct AimTerm(string Name, bool IsSubtracted);
