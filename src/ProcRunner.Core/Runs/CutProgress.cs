using ProcRunner.Quantities;

namespace ProcRunner.Runs;

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
