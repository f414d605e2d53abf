using ProcRunner.Quantities;

namespace ProcRunner.Runs;

/// <summary>A zero point as it was set.</summary>
/// <param name="Set">The number the readout was set to, in its unit.</param>
/// <param name="Measured">What the characteristic measured there; a zero length when the surface touched counts as zero.</param>
public sealed record ZeroPoint(Quantity Set, Quantity Measured);

/// <summary>The number to work to, in the terms of the readout.</summary>
/// <param name="Show">What the readout shows when it is reached.</param>
/// <param name="StopsShort">True when it is an approach, short of the aim.</param>
/// <param name="Left">How far the tool still travels to it, in the readout's unit; never negative.</param>
/// <param name="Working">How it was worked out, with the numbers.</param>
public sealed record CutTarget(Quantity Show, bool StopsShort, Quantity Left, string Working);

/// <summary>Where a cut stands between its zero and its end.</summary>
/// <param name="Zero">The zero it works from.</param>
/// <param name="Readout">What the readout showed last.</param>
/// <param name="Travel">How far the tool has gone since the zero, in the readout's unit, whatever the readout shows.</param>
/// <param name="TravelAtReading">The travel at which the last reading was taken.</param>
/// <param name="Reading">The last reading: at the zero, or after a pass.</param>
/// <param name="Measures">True when a reading is due before more is cut.</param>
public sealed record CutProgress(
    ZeroPoint Zero,
    Quantity Readout,
    Quantity Travel,
    Quantity TravelAtReading,
    Quantity Reading,
    bool Measures
);
