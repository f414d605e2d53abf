using ProcRunner.Lessons;
using ProcRunner.Quantities;

namespace ProcRunner.Tui.Drawing;

/// <summary>
/// The face of a gauge as lines of text, to be read as at the bench; only an instrument that shows figures shows figures.
/// </summary>
internal static class GaugeFace
{
    /// <summary>No line is longer.</summary>
    public const int Width = 27;

    /// <summary>No face has more lines.</summary>
    public const int Rows = 12;

    /// <summary>The face while it shows a quantity.</summary>
    /// <param name="gauge">The gauge.</param>
    /// <param name="shown">What it shows, a whole number of its steps.</param>
    public static IReadOnlyList<string> Of(GaugeCharacter gauge, Quantity shown)
    {
        (string kind, Quantity step) = (gauge.Gauge.Kind, gauge.Gauge.Resolution);
        return KindOf(gauge, shown) switch
        {
            FaceKind.Micrometer => MicrometerFace.Of(gauge.Gauge.Turn!.Value, step, shown),
            FaceKind.Dial => DialFace.Round(kind, gauge.Gauge.Turn!.Value, step, shown),
            FaceKind.Ring => DialFace.Ring(kind, gauge.Gauge.Turn!.Value, step, shown),
            FaceKind.Scale => DialFace.Scale(kind, step, shown),
            FaceKind.Leaves => LeafFace.Of(kind, step, shown),
            _ => Digits(kind, shown),
        };
    }

    /// <summary>How a gauge is read: as it is said to be where that can be drawn, otherwise in figures.</summary>
    /// <param name="gauge">The gauge.</param>
    /// <param name="shown">What it shows; null where that isn't known.</param>
    public static FaceKind KindOf(GaugeCharacter gauge, Quantity? shown)
    {
        Quantity step = gauge.Gauge.Resolution;
        Quantity? turn =
            gauge.Gauge.Turn is { } one && one.Unit == step.Unit && one.Value % (10 * step.Value) == 0 ? one : null;
        bool isThimble =
            gauge.Gauge.Turn is { } thimble && MicrometerFace.Fits(thimble, step) && !(shown is { Value: < 0 });
        return gauge.Face switch
        {
            FaceKind.Micrometer when isThimble => FaceKind.Micrometer,
            FaceKind.Ring when turn is not null && !(shown is { Value: < 0 }) => FaceKind.Ring,
            FaceKind.Dial when turn is not null => FaceKind.Dial,
            FaceKind.Scale => FaceKind.Scale,
            FaceKind.Leaves when !(shown is { Value: < 0 }) => FaceKind.Leaves,
            null when isThimble => FaceKind.Micrometer,
            null when turn is not null => FaceKind.Dial,
            _ => FaceKind.Digits,
        };
    }

    private static string[] Digits(string kind, Quantity shown)
    {
        string figures = shown.ToString();
        string edge = new('-', figures.Length + 2);
        return [kind, $" .{edge}.", $" | {figures} |", $" '{edge}'"];
    }
}
