namespace ProcRunner.Runs;

/// <summary>That a value is worked out or judged from a name.</summary>
/// <param name="Name">What is read.</param>
/// <param name="Value">The characteristic that is worked out or judged from it.</param>
/// <param name="AcrossPositions">True when it is read at other positions too.</param>
internal readonly record struct ReadName(string Name, string Value, bool AcrossPositions);
