using ProcRunner.Quantities;

namespace ProcRunner.Runs;

/// <summary>A value at one of the places of a reading.</summary>
/// <param name="Place">The place's name; empty for a single value.</param>
/// <param name="Value">The value as entered.</param>
public readonly record struct PlaceValue(string Place, Quantity Value);
