using System.Globalization;
using ProcRunner.Quantities;

namespace ProcRunner.Tui.Drawing;

/// <summary>Leaves tried one after the other: one that goes in is seen beyond the edge, the next one stops at it.</summary>
internal static class LeafFace
{
    private const int Room = 8;
    private const int Outside = 6;

    /// <summary>The face.</summary>
    /// <param name="kind">What it is called.</param>
    /// <param name="resolution">How much thicker each leaf is than the one before.</param>
    /// <param name="shown">The thickest that goes in; 0 where not even the thinnest does.</param>
    public static IReadOnlyList<string> Of(string kind, Quantity resolution, Quantity shown)
    {
        int goes = (int)Math.Round(shown.Value / resolution.Value);
        string edge = new(' ', Room + Outside);
        return
        [
            $"{kind}: leaves, {resolution.Unit}",
            $"{edge}v the edge",
            .. Enumerable
                .Range(Math.Max(1, goes - 1), 4)
                .Select(leaf => Leaf(leaf * resolution.Value, isIn: leaf <= goes)),
        ];
    }

    private static string Leaf(decimal thickness, bool isIn) =>
        thickness.ToString(".000#", CultureInfo.InvariantCulture).PadRight(Room)
        + new string('=', Outside)
        + (isIn ? "======" : "|");
}
