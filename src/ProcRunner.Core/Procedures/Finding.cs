namespace ProcRunner.Procedures;

/// <summary>A finding that can be chosen in an inspection.</summary>
/// <param name="Text">The finding, in words.</param>
/// <param name="Good">True when it passes.</param>
public sealed record Finding(string Text, bool Good);
