using ProcRunner.Quantities;
using ProcRunner.Runs;

namespace ProcRunner.Records.Story;

/// <summary>A cut from its zero to its end.</summary>
/// <param name="What">The characteristic that was cut to.</param>
/// <param name="Position">The position's name, or "head".</param>
/// <param name="Zero">The zero it worked from.</param>
/// <param name="Passes">What the readout showed after each pass.</param>
/// <param name="Measured">What was measured, in order.</param>
/// <param name="Ended">How it ended.</param>
/// <param name="By">The zero's entry.</param>
/// <param name="Until">The last entry of the cut.</param>
public sealed record CutTold(
    string What,
    string Position,
    ZeroPoint Zero,
    IReadOnlyList<Quantity> Passes,
    IReadOnlyList<Quantity> Measured,
    string Ended,
    Stamped By,
    Stamped Until
);
