using ProcRunner.Quantities;

namespace ProcRunner.Procedures;

/// <summary>A figure of the head that is no limit: a valve lift, an insert's height.</summary>
/// <param name="Value">The figure.</param>
/// <param name="Origin">Who says so.</param>
public sealed record Figure(Quantity Value, Origin Origin);
