using ProcRunner.Quantities;

namespace ProcRunner.Runs;

/// <summary>A value worked out from a reading.</summary>
/// <param name="Name">The characteristic.</param>
/// <param name="Value">The value.</param>
/// <param name="Working">The formula with its numbers.</param>
/// <param name="Judgement">How it came out.</param>
public sealed record WorkedValue(string Name, Quantity Value, string Working, Judgement Judgement);
