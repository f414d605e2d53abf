namespace ProcRunner.Records.Drawings;

/// <summary>One shape of a drawing. Lengths are in points, from the drawing's upper left corner, down and to the right.</summary>
internal abstract record Shape
{
    private Shape() { }

    /// <summary>A straight line.</summary>
    public sealed record Line(
        double X1,
        double Y1,
        double X2,
        double Y2,
        Tone Tone,
        double Width = 0.75,
        bool IsDashed = false
    ) : Shape;

    /// <summary>A rectangle.</summary>
    public sealed record Box(double X, double Y, double Width, double Height, Tone Fill, Tone Edge = Tone.None) : Shape;

    /// <summary>A circle.</summary>
    public sealed record Circle(
        double X,
        double Y,
        double Radius,
        Tone Fill,
        Tone Edge = Tone.None,
        double Width = 0.75
    ) : Shape;

    /// <summary>A closed outline.</summary>
    public sealed record Outline(IReadOnlyList<(double X, double Y)> Points, Tone Fill, Tone Edge = Tone.None) : Shape;

    /// <summary>A line of text; Y is its base line.</summary>
    public sealed record Label(
        double X,
        double Y,
        string Text,
        double Size = 8,
        Anchor Anchor = Anchor.Start,
        bool IsStrong = false,
        Tone Tone = Tone.Ink
    ) : Shape;
}
