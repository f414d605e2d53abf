using ProcRunner.Quantities;

namespace ProcRunner.Runs.Prompts;

/// <summary>A number worked out for the operator, or why it can't be.</summary>
/// <param name="Name">What it is.</param>
/// <param name="Value">The number, or null.</param>
/// <param name="Working">The formula with its numbers filled in, or why there is no number.</param>
public sealed record NumberShown(string Name, Quantity? Value, string Working);
