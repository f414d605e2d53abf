using System.Globalization;
using ProcRunner.Records.Drawings;

namespace ProcRunner.Records.Web;

/// <summary>Writes a drawing as SVG inside a page.</summary>
internal static class SvgWriter
{
    /// <summary>Writes it, with its title and its words for who doesn't see it.</summary>
    /// <param name="to">Where to.</param>
    /// <param name="drawing">The drawing.</param>
    /// <param name="id">Unique in the page.</param>
    public static void Write(Markup to, Drawing drawing, string id)
    {
        string size = $"{N(drawing.Width)} {N(drawing.Height)}";
        to.Raw(
            $"<svg viewBox=\"0 0 {size}\" role=\"img\" aria-labelledby=\"{id}t {id}d\" class=\"drawing\" style=\"--w:{N(drawing.Width)}px\">"
        );
        to.Element("title", drawing.Title, $"id=\"{id}t\"").Element("desc", drawing.Alternative, $"id=\"{id}d\"");
        foreach (Shape shape in drawing.Shapes)
        {
            Write(to, shape);
        }

        to.Raw("</svg>");
    }

    private static void Write(Markup to, Shape shape)
    {
        switch (shape)
        {
            case Shape.Line line:
                string dashes = line.IsDashed ? " stroke-dasharray=\"2 1.6\"" : "";
                to.Raw(
                    $"<line x1=\"{N(line.X1)}\" y1=\"{N(line.Y1)}\" x2=\"{N(line.X2)}\" y2=\"{N(line.Y2)}\" stroke=\"{Palette.Hex(line.Tone)}\" stroke-width=\"{N(line.Width)}\"{dashes}/>"
                );
                break;
            case Shape.Box box:
                to.Raw(
                    $"<rect x=\"{N(box.X)}\" y=\"{N(box.Y)}\" width=\"{N(box.Width)}\" height=\"{N(box.Height)}\"{Painted(box.Fill, box.Edge, 0.75)}/>"
                );
                break;
            case Shape.Circle circle:
                to.Raw(
                    $"<circle cx=\"{N(circle.X)}\" cy=\"{N(circle.Y)}\" r=\"{N(circle.Radius)}\"{Painted(circle.Fill, circle.Edge, circle.Width)}/>"
                );
                break;
            case Shape.Outline outline:
                string points = string.Join(' ', outline.Points.Select(p => $"{N(p.X)},{N(p.Y)}"));
                to.Raw($"<polygon points=\"{points}\"{Painted(outline.Fill, outline.Edge, 0.75)}/>");
                break;
            case Shape.Label label:
                string weight = label.IsStrong ? " font-weight=\"bold\"" : "";
                to.Element(
                    "text",
                    label.Text,
                    $"x=\"{N(label.X)}\" y=\"{N(label.Y)}\" font-size=\"{N(label.Size)}\" text-anchor=\"{AnchorOf(label)}\" fill=\"{Palette.Hex(label.Tone)}\"{weight}"
                );
                break;
            default:
                throw new System.Diagnostics.UnreachableException();
        }
    }

    private static string Painted(Tone fill, Tone edge, double width) =>
        $" fill=\"{Palette.Hex(fill)}\""
        + (edge == Tone.None ? "" : $" stroke=\"{Palette.Hex(edge)}\" stroke-width=\"{N(width)}\"");

    private static string AnchorOf(Shape.Label label) =>
        label.Anchor switch
        {
            Anchor.Middle => "middle",
            Anchor.End => "end",
            _ => "start",
        };

    private static string N(double number) => Math.Round(number, 2).ToString(CultureInfo.InvariantCulture);
}
