namespace ProcRunner.Procedures;

/// <summary>A shop's setting that formulas read as <c>[setting.name]</c>.</summary>
/// <param name="Name">Name.</param>
/// <param name="Value">The figure.</param>
/// <param name="Origin">Who says so.</param>
public sealed record Setting(string Name, Quantities.Quantity Value, Origin Origin);
