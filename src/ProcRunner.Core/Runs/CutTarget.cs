using ProcRunner.Quantities;

namespace ProcRunner.Runs;

/// <summary>The number to work to, in the terms of the readout.</summary>
/// <param name="Show">What the readout shows when it is reached.</param>
/// <param name="StopsShort">True when it is an approach, short of the aim.</param>
/// <param name="Left">How far the tool still travels to it, in the readout's unit; never negative.</param>
/// <param name="Working">How it was worked out, with the numbers.</param>
public sealed record CutTarget(Quantity Show, bool StopsShort, Quantity Left, string Working);
