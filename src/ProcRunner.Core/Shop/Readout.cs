using ProcRunner.Quantities;

namespace ProcRunner.Shop;

/// <summary>How a machine's depth readout is set and read.</summary>
/// <param name="Unit">The unit it shows.</param>
/// <param name="Step">Its smallest step, in that unit, above 0.</param>
/// <param name="GrowsDeeper">True when the number grows as the tool goes deeper.</param>
/// <param name="ShowsDiameter">True when it shows twice the travel.</param>
/// <param name="StepMode">True when it counts from the last zero (incremental), false when from one fixed zero.</param>
/// <param name="Preset">True when it is preset to the measured value at touch-off, false when it is zeroed there.</param>
public sealed record Readout(Unit Unit, decimal Step, bool GrowsDeeper, bool ShowsDiameter, bool StepMode, bool Preset);
