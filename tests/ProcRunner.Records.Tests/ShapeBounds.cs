using ProcRunner.Records.Drawings;

namespace ProcRunner.Records.Tests;

/// <summary>The room a shape takes.</summary>
internal static class ShapeBounds
{
    /// <summary>Its edges.</summary>
    /// <param name="shape">The shape.</param>
    /// <param name="width">
    /// How wide a character of a text is, as a part of its size: at most 0.62 in this font's digits and small letters
    /// (measured, no source).
    /// </param>
    public static (double Left, double Top, double Right, double Bottom) Of(Shape shape, double width = 0.62) =>
        shape switch
        {
            Shape.Line s => (Math.Min(s.X1, s.X2), Math.Min(s.Y1, s.Y2), Math.Max(s.X1, s.X2), Math.Max(s.Y1, s.Y2)),
            Shape.Box s => (s.X, s.Y, s.X + s.Width, s.Y + s.Height),
            Shape.Circle s => (s.X - s.Radius, s.Y - s.Radius, s.X + s.Radius, s.Y + s.Radius),
            Shape.Outline s => (
                s.Points.Min(p => p.X),
                s.Points.Min(p => p.Y),
                s.Points.Max(p => p.X),
                s.Points.Max(p => p.Y)
            ),
            Shape.Label s => OfLabel(s, width),
            _ => default,
        };

    /// <summary>Every shape of a drawing lies in it.</summary>
    public static void AssertInside(Drawing drawing) =>
        Assert.All(
            drawing.Shapes,
            shape =>
            {
                (double left, double top, double right, double bottom) = Of(shape);
                Assert.InRange(left, -1, drawing.Width);
                Assert.InRange(right, 0, drawing.Width + 1);
                Assert.InRange(top, -1, drawing.Height);
                Assert.InRange(bottom, 0, drawing.Height + 1);
            }
        );

    private static (double Left, double Top, double Right, double Bottom) OfLabel(Shape.Label label, double ofSize)
    {
        double width = label.Text.Length * label.Size * ofSize;
        double left = label.Anchor switch
        {
            Anchor.Middle => label.X - (width / 2),
            Anchor.End => label.X - width,
            _ => label.X,
        };
        return (left, label.Y - label.Size, left + width, label.Y);
    }
}
