using ProcRunner.Quantities;
using ProcRunner.Shop;

namespace ProcRunner.Tui.Training;

/// <summary>How a kind of gauge is read, in a sentence; what it shows now isn't known here.</summary>
internal static class GaugeLesson
{
    private static readonly Quantity InchTurn = new(0.025m, Units.Inch);

    /// <summary>The sentence.</summary>
    public static string Of(Gauge gauge) =>
        gauge.Turn is not { } turn ? $"the figures as they stand, to the last one; a step is {gauge.Resolution}."
        : turn.CompareTo(InchTurn) == 0
            ? "whole inches (above the sleeve), plus the last number on the sleeve in tenths, plus 0.025 for each line after it, "
                + "plus the thimble's line just below the long line in thousandths, plus the vernier line that meets in ten-thousandths."
        : $"whole turns of the small hand times {turn}, plus the number at the last long mark before the hand, plus "
            + $"{gauge.Resolution} for every mark from there to the hand. Back of zero is minus.";
}
