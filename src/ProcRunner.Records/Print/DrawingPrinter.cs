using PdfSharp.Drawing;
using ProcRunner.Records.Drawings;

namespace ProcRunner.Records.Print;

/// <summary>Prints a drawing.</summary>
internal static class DrawingPrinter
{
    /// <summary>Prints it with its upper left corner here.</summary>
    public static void Print(XGraphics on, Ink ink, Drawing drawing, double left, double top, double scale = 1)
    {
        XGraphicsState before = on.Save();
        on.TranslateTransform(left, top);
        on.ScaleTransform(scale);
        foreach (Shape shape in drawing.Shapes)
        {
            Print(on, ink, shape);
        }

        on.Restore(before);
    }

    private static void Print(XGraphics on, Ink ink, Shape shape)
    {
        switch (shape)
        {
            case Shape.Line line:
                XPen pen = Ink.Pen(line.Tone, line.Width);
                pen.DashStyle = line.IsDashed ? XDashStyle.Dash : XDashStyle.Solid;
                on.DrawLine(pen, line.X1, line.Y1, line.X2, line.Y2);
                break;
            case Shape.Box box:
                on.DrawRectangle(Edge(box.Edge, 0.75), Fill(box.Fill), box.X, box.Y, box.Width, box.Height);
                break;
            case Shape.Circle c:
                on.DrawEllipse(
                    Edge(c.Edge, c.Width),
                    Fill(c.Fill),
                    c.X - c.Radius,
                    c.Y - c.Radius,
                    2 * c.Radius,
                    2 * c.Radius
                );
                break;
            case Shape.Outline outline:
                XPoint[] points = [.. outline.Points.Select(p => new XPoint(p.X, p.Y))];
                on.DrawPolygon(Edge(outline.Edge, 0.75), Fill(outline.Fill), points, XFillMode.Winding);
                break;
            case Shape.Label label:
                Write(on, ink, label);
                break;
            default:
                throw new System.Diagnostics.UnreachableException();
        }
    }

    private static void Write(XGraphics on, Ink ink, Shape.Label label)
    {
        XFont font = ink.Font(label.Size, label.IsStrong);
        string text = ink.Fit(label.Text, label.IsStrong);
        double width = ink.Width(text, font);
        double x = label.Anchor switch
        {
            Anchor.Middle => label.X - (width / 2),
            Anchor.End => label.X - width,
            _ => label.X,
        };
        on.DrawString(text, font, Ink.Brush(label.Tone), x, label.Y);
    }

    private static XPen? Edge(Tone tone, double width) => tone == Tone.None ? null : Ink.Pen(tone, width);

    private static XSolidBrush? Fill(Tone tone) => tone == Tone.None ? null : Ink.Brush(tone);
}
