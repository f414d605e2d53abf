namespace ProcRunner.Trail;

/// <summary>What came of reading canonical JSON: a value, or the first fault.</summary>
/// <param name="Value">The value, null when the bytes don't hold one.</param>
/// <param name="Fault">What is wrong, null when nothing is.</param>
public readonly record struct JsonReading(Json? Value, JsonFault? Fault);
