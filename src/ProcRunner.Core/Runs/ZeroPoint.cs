using ProcRunner.Quantities;

namespace ProcRunner.Runs;

/// <summary>A zero point as it was set.</summary>
/// <param name="Set">The number the readout was set to, in its unit.</param>
/// <param name="Measured">What the characteristic measured there; a zero length when the surface touched counts as zero.</param>
public sealed record ZeroPoint(Quantity Set, Quantity Measured);
