using PdfSharp.Drawing;
using PdfSharp.Pdf;
using ProcRunner.Records.Drawings;

namespace ProcRunner.Records.Print;

/// <summary>The sheets of a paper: where the next thing goes, and a new sheet when one is full. A4, in points.</summary>
internal sealed class Sheets : IDisposable
{
    private readonly PdfDocument _document;
    private PdfPage _page = null!;
    private XGraphics? _on;

    /// <summary>Begins with one sheet.</summary>
    public Sheets(PdfDocument document)
    {
        _document = document;
        Turn();
    }

    /// <summary>Left edge of what is printed.</summary>
    public const double Left = 45;

    /// <summary>Width of what is printed.</summary>
    public const double Width = 505;

    /// <summary>Upper edge of what is printed.</summary>
    public const double Top = 45;

    /// <summary>Lower edge of what is printed.</summary>
    public const double Bottom = 787;

    /// <summary>Where the next thing goes.</summary>
    public double Y { get; set; }

    /// <summary>The sheet to draw on.</summary>
    public XGraphics On => _on!;

    /// <summary>Fonts and colours.</summary>
    public Ink Ink { get; } = new();

    /// <summary>The bar at the left of what is printed now; none for no bar.</summary>
    public Tone Bar { get; set; }

    /// <summary>How much smaller than usual everything is set; 1 is as usual.</summary>
    public double Scale { get; set; } = 1;

    /// <summary>True where tables are set closer: an appendix.</summary>
    public bool IsClose { get; set; }

    /// <summary>The sheet in hand, from 1.</summary>
    public int Number => _document.PageCount;

    /// <summary>What is left of the sheet.</summary>
    public double Room => Bottom - Y;

    /// <summary>Turns to a new sheet.</summary>
    public void Turn()
    {
        _on?.Dispose();
        _page = _document.AddPage();
        _page.Size = PdfSharp.PageSize.A4;
        _on = XGraphics.FromPdfPage(_page);
        Y = Top;
    }

    /// <summary>Turns to a new sheet unless this much fits.</summary>
    public void Need(double height)
    {
        if (height > Room && Y > Top)
        {
            Turn();
        }
    }

    /// <summary>Prints lines that stand together line by line, on as many sheets as they need.</summary>
    /// <returns>How many lines there were.</returns>
    public int Words(string text, double size, double left, double width, bool isBold = false, Tone tone = Tone.Ink)
    {
        size *= Scale;
        XFont font = Ink.Font(size, isBold);
        List<string> lines = Ink.Lines(Ink.Fit(text, isBold), font, width);
        foreach (string line in lines)
        {
            Need(size * 1.32);
            On.DrawString(line, font, Ink.Brush(tone), left, Y + size);
            if (Bar != Tone.None)
            {
                On.DrawRectangle(Ink.Brush(Bar), Left, Y, 3, (size * 1.32) + 2);
            }

            Y += size * 1.32;
        }

        return lines.Count;
    }

    /// <summary>Marks this place in the table of contents that viewers show.</summary>
    public void Mark(string title) => _document.Outlines.Add(Ink.Fit(title), _page, true);

    /// <inheritdoc/>
    public void Dispose() => _on?.Dispose();
}
