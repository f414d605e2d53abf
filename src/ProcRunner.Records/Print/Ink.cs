using PdfSharp.Drawing;
using ProcRunner.Records.Drawings;
using ProcRunner.Text;

namespace ProcRunner.Records.Print;

/// <summary>Fonts, colours and widths of texts on paper.</summary>
internal sealed class Ink
{
    private static readonly XPdfFontOptions Embedded = new(PdfSharp.Pdf.PdfFontEncoding.Unicode);
    private readonly Dictionary<(double Size, bool Bold), XFont> _fonts = [];
    private readonly Dictionary<(XFont Font, string Word), double> _widths = [];
    private readonly FontCoverage _regular = new(PaperFonts.Read(isBold: false));
    private readonly FontCoverage _bold = new(PaperFonts.Read(isBold: true));
    private readonly XGraphics _measure = XGraphics.CreateMeasureContext(
        new XSize(1000, 1000),
        XGraphicsUnit.Point,
        XPageDirection.Downwards
    );

    /// <summary>A font of a size in points.</summary>
    public XFont Font(double size, bool isBold = false)
    {
        if (!_fonts.TryGetValue((size, isBold), out XFont? font))
        {
            XFontStyleEx style = isBold ? XFontStyleEx.Bold : XFontStyleEx.Regular;
            _fonts[(size, isBold)] = font = new XFont(PaperFonts.Family, size, style, Embedded);
        }

        return font;
    }

    /// <summary>A text as it can be printed: nothing unseen, nothing that the font hasn't.</summary>
    public string Fit(string text, bool isBold = false) => (isBold ? _bold : _regular).Fit(SafeText.Show(text));

    /// <summary>How wide a text is, in points.</summary>
    public double Width(string text, XFont font)
    {
        if (!_widths.TryGetValue((font, text), out double width))
        {
            _widths[(font, text)] = width = _measure.MeasureString(text, font).Width;
        }

        return width;
    }

    /// <summary>A colour to fill with.</summary>
    public static XSolidBrush Brush(Tone tone) => new(Colour(tone));

    /// <summary>A colour to draw lines with.</summary>
    public static XPen Pen(Tone tone, double width) => new(Colour(tone), width);

    /// <summary>The lines that a text breaks into; a word longer than a line is broken where the line ends.</summary>
    public List<string> Lines(string text, XFont font, double width)
    {
        List<string> lines = [];
        string line = "";
        foreach (string word in text.Split(' '))
        {
            string rest = word;
            string joined = line.Length == 0 ? rest : $"{line} {rest}";
            if (WidthOfWords(joined, font) <= width)
            {
                line = joined;
                continue;
            }

            if (line.Length > 0)
            {
                lines.Add(line);
            }

            while (Width(rest, font) > width && rest.Length > 1)
            {
                int fits = Fitting(rest, font, width);
                lines.Add(rest[..fits]);
                rest = rest[fits..];
            }

            line = rest;
        }

        lines.Add(line);
        return lines;
    }

    private double WidthOfWords(string text, XFont font) =>
        text.Split(' ').Sum(word => Width(word, font)) + (text.Count(c => c == ' ') * Width(" ", font));

    private int Fitting(string word, XFont font, double width)
    {
        int fits = 1;
        double taken = Width(word[..1], font);
        while (fits < word.Length && taken + Width(word.Substring(fits, 1), font) <= width)
        {
            taken += Width(word.Substring(fits++, 1), font);
        }

        bool halves = char.IsHighSurrogate(word[fits - 1]) && fits > 1;
        return halves ? fits - 1 : fits;
    }

    private static XColor Colour(Tone tone) =>
        Palette.Of(tone) is { } colour ? XColor.FromArgb(colour.Red, colour.Green, colour.Blue) : XColors.Transparent;
}
