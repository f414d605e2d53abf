namespace ProcRunner.Procedures;

/// <summary>A name in a head spec, for all positions (kind null) or for one kind.</summary>
/// <param name="Name">The characteristic or figure.</param>
/// <param name="Kind">I, E, ..., or null for every position and for the head itself.</param>
public readonly record struct SpecKey(string Name, string? Kind);
