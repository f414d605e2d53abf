using ProcRunner.Quantities;
using ProcRunner.Runs;
using ProcRunner.Shop;

namespace ProcRunner.Tui.Training;

/// <summary>A reading that was typed otherwise than the gauge's face showed it.</summary>
/// <param name="At">The step and position.</param>
/// <param name="Place">The place's name; empty for a single reading.</param>
/// <param name="Typed">What was typed.</param>
/// <param name="Shown">What the face showed.</param>
/// <param name="Gauge">The gauge it was read from.</param>
internal sealed record Misread(At At, string Place, Quantity Typed, Quantity Shown, Gauge Gauge)
{
    /// <summary>The place of a reading that was taken from the machine's readout.</summary>
    public const string OfReadout = "readout";

    /// <summary>True once a correction has put it right.</summary>
    public bool IsPutRight { get; init; }

    /// <summary>What kind of slip it looks like, after a comma; empty when it looks like none.</summary>
    public string Why
    {
        get
        {
            if (Typed.Unit != Shown.Unit)
            {
                return ", in another unit";
            }

            decimal off = Math.Abs(Typed.Value - Shown.Value);
            if (Gauge.Turn is { Value: > 0 } turn && turn.Unit == Shown.Unit && off % turn.Value == 0)
            {
                return $", {(off == turn.Value ? "a whole turn" : "whole turns")} off: count the turns before the pointer or the thimble";
            }

            return off >= 10 * Gauge.Resolution.Value ? ""
                : HasFewerDigits ? ", without its last digit"
                : ", off in its last digit";
        }
    }

    /// <summary>What was typed and what was shown, after the place if it has one.</summary>
    public string InWords(string typed, string shown) =>
        $"{(Place.Length > 0 ? $"{Place} " : "")}{Typed} {typed}, {Shown} {shown}";

    private bool HasFewerDigits => Typed.Value % (10 * Gauge.Resolution.Value) == 0;
}
