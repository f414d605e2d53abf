namespace ProcRunner.Quantities;

/// <summary>Placeholder.</summary>
public readonly record struct Rational(int Value);
