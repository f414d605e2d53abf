using System.Globalization;
using PdfSharp.Drawing;
using PdfSharp.Pdf;
using ProcRunner.Records.Drawings;
using ProcRunner.Records.Papers;

namespace ProcRunner.Records.Print;

/// <summary>Writes a paper as PDF: real text in an embedded font, a title, and marks for its parts.</summary>
internal sealed class PdfPaper
{
    private const double Usual = 9;
    private const double CloseScale = 0.86;

    // From the usual size down to the smallest that is still read with ease: common practice, no source.
    private static readonly double[] Scales = [1, 0.95, 0.9, 0.86, 0.82, 0.78];

    private readonly Sheets _sheets;

    private readonly List<int> _pages = [];
    private IReadOnlyList<int> _contents = [];

    private PdfPaper(Sheets sheets) => _sheets = sheets;

    private double Text => Usual * _sheets.Scale;

    /// <summary>Writes it.</summary>
    /// <param name="paper">The paper.</param>
    /// <param name="shop">Who made it.</param>
    /// <param name="made">When the record ends: what the document gives as its time, so that the same trail gives the same text.</param>
    /// <param name="to">Where to.</param>
    /// <param name="progress">Told piece by piece.</param>
    /// <exception cref="OperationCanceledException">The writing is to stop.</exception>
    public static void Write(Paper paper, string shop, DateTimeOffset made, Stream to, WritingProgress progress)
    {
        PaperFonts.Use();
        using PdfDocument document = new();
        document.Info.Title = $"{paper.Title}: {paper.Subject}";
        document.Info.Author = shop;
        document.Info.Subject = paper.Foot;
        document.Info.CreationDate = made.UtcDateTime;
        document.Language = "en";
        document.ViewerPreferences.DisplayDocTitle = true;
        double scale = ScaleOfFront(paper);
        int blocks = paper.Blocks.Count;
        using (PdfDocument trial = new())
        using (Sheets sheets = new(trial))
        {
            // Set once for the pages of its parts, then again with them: a page's number takes no room that wasn't there.
            PdfPaper first = new(sheets);
            first.AddAll(paper, scale, done => progress.Report(done, 2 * blocks));
            PdfPaper again = Begun(document, first._pages);
            again.AddAll(paper, scale, done => progress.Report(blocks + done, 2 * blocks));
            again._sheets.Dispose();
            Foot(document, paper, again._sheets.Ink);
        }

        document.Save(to, closeStream: false);
    }

    private static PdfPaper Begun(PdfDocument document, IReadOnlyList<int> contents) =>
        new(new Sheets(document)) { _contents = contents };

    private void AddAll(Paper paper, double scale, Action<int> done)
    {
        _sheets.Scale = scale;
        Begin(paper);
        for (int i = 0; i < paper.Blocks.Count; i++)
        {
            Add(paper.Blocks, i);
            done(i + 1);
        }
    }

    // One page that a customer understands: what belongs on it is set smaller when it would run over.
    private static double ScaleOfFront(Paper paper)
    {
        Block[] front = [.. paper.Blocks.TakeWhile(b => b is not Block.NewPage)];
        return Scales.FirstOrDefault(scale => Fits(paper, front, scale), 1);
    }

    private static bool Fits(Paper paper, Block[] front, double scale)
    {
        using PdfDocument trial = new();
        using Sheets sheets = new(trial) { Scale = scale };
        PdfPaper pdf = new(sheets);
        pdf.Begin(paper);
        for (int i = 0; i < front.Length; i++)
        {
            pdf.Add(front, i);
        }

        return trial.PageCount == 1;
    }

    private void Add(IReadOnlyList<Block> blocks, int at)
    {
        _sheets.Need(Together(blocks, at));
        Add(blocks[at]);
    }

    // A heading is worth nothing at the foot of a sheet: it goes over together with what it heads.
    private double Together(IReadOnlyList<Block> blocks, int at)
    {
        const double HeightOfHeading = 36;
        double height = 0;
        while (at < blocks.Count && blocks[at] is Block.Heading)
        {
            height += HeightOfHeading;
            at++;
        }

        return height == 0 || at == blocks.Count
            ? 0
            : height
                + blocks[at] switch
                {
                    Block.Picture picture => HeightOf(picture.Drawing),
                    Block.Table => TablePrinter.LeastHeight,
                    _ => Usual * 4,
                };
    }

    private double HeightOf(Drawing drawing) =>
        (drawing.Height * Math.Min(1, Sheets.Width / drawing.Width) * _sheets.Scale) + 26;

    private void Begin(Paper paper)
    {
        _sheets.Words(paper.Title, 18, Sheets.Left, Sheets.Width, isBold: true);
        _sheets.Words(paper.Subject, 10, Sheets.Left, Sheets.Width, tone: Tone.Quiet);
        _sheets.Y += 3;
        _sheets.On.DrawLine(Ink.Pen(Tone.Ink, 2), Sheets.Left, _sheets.Y, Sheets.Left + Sheets.Width, _sheets.Y);
        _sheets.Y += 8;
    }

    private void Add(Block block)
    {
        switch (block)
        {
            case Block.Heading heading:
                Heading(heading);
                break;
            case Block.Paragraph words:
                _sheets.Words(
                    words.Text,
                    words.IsQuiet ? 8.2 : Usual,
                    Sheets.Left,
                    Sheets.Width,
                    tone: words.IsQuiet ? Tone.Quiet : Tone.Ink
                );
                _sheets.Y += 4;
                break;
            case Block.Facts facts:
                Facts(facts);
                break;
            case Block.Bullets bullets:
                Bullets(bullets.Texts, Sheets.Left, bullets.IsNumbered);
                break;
            case Block.Notice notice:
                Notice(notice);
                break;
            case Block.Table table:
                TablePrinter.Print(_sheets, table);
                break;
            case Block.Picture picture:
                Picture(picture.Drawing);
                break;
            case Block.Code code:
                Code(code);
                break;
            case Block.NewPage:
                _sheets.Scale = 1;
                _sheets.Need(Sheets.Bottom - Sheets.Top);
                break;
            case Block.Contents contents:
                Contents(contents);
                break;
            case Block.Appendix:
                (_sheets.IsClose, _sheets.Scale) = (true, CloseScale);
                break;
            default:
                throw new System.Diagnostics.UnreachableException();
        }
    }

    private void Heading(Block.Heading heading)
    {
        bool isPart = heading.Level == 2;
        _sheets.Y += isPart ? 10 : 6;
        if (isPart)
        {
            _sheets.Mark(heading.Text);
            _pages.Add(_sheets.Number);
        }

        _sheets.Words(heading.Text, isPart ? 13 : 10.5, Sheets.Left, Sheets.Width, isBold: true);
        if (isPart)
        {
            _sheets.On.DrawLine(
                Ink.Pen(Tone.Ink, 0.75),
                Sheets.Left,
                _sheets.Y + 1,
                Sheets.Left + Sheets.Width,
                _sheets.Y + 1
            );
            _sheets.Y += 5;
        }

        _sheets.Y += 2;
    }

    // Two columns, each part with its page at the right.
    private void Contents(Block.Contents contents)
    {
        const double Gap = 24;
        const double Column = (Sheets.Width - Gap) / 2;
        double line = Text * 1.32;
        int rows = (contents.Parts.Count + 1) / 2;
        _sheets.Words("Contents", 10.5, Sheets.Left, Sheets.Width, isBold: true);
        _sheets.Y += 2;
        for (int i = 0; i < contents.Parts.Count; i++)
        {
            double left = Sheets.Left + (i < rows ? 0 : Column + Gap);
            double y = _sheets.Y + (i % rows * line) + Text;
            XFont font = _sheets.Ink.Font(Text);
            string part = _sheets.Ink.Lines(_sheets.Ink.Fit(contents.Parts[i]), font, Column - 30)[0];
            _sheets.On.DrawString(part, font, Ink.Brush(Tone.Ink), left, y);
            if (_pages.Count + i < _contents.Count)
            {
                string page = _contents[_pages.Count + i].ToString(CultureInfo.InvariantCulture);
                double at = left + Column - _sheets.Ink.Width(page, font);
                _sheets.On.DrawString(page, font, Ink.Brush(Tone.Ink), at, y);
            }
        }

        _sheets.Y += (rows * line) + 6;
    }

    // Short ones stand two in a line.
    private void Facts(Block.Facts facts)
    {
        const double Half = Sheets.Width / 2;
        const double LeastLabel = 84;
        double longest = facts
            .Items.Select(i => _sheets.Ink.Width(_sheets.Ink.Fit(i.Label), _sheets.Ink.Font(Text)))
            .DefaultIfEmpty(0)
            .Max();
        double labels = Math.Max(LeastLabel, longest + 8);
        bool isRight = false;
        foreach ((string label, string text) in facts.Items)
        {
            bool isShort = _sheets.Ink.Width(_sheets.Ink.Fit(text), _sheets.Ink.Font(Text)) < Half - labels - 6;
            if (isRight && isShort)
            {
                _sheets.Y -= (Text * 1.32) + 1;
            }

            double left = Sheets.Left + (isRight && isShort ? Half : 0);
            _sheets.Need(Text * 1.32);
            string fitted = _sheets.Ink.Fit(label);
            _sheets.On.DrawString(fitted, _sheets.Ink.Font(Text), Ink.Brush(Tone.Quiet), left, _sheets.Y + Text);
            _sheets.Words(text, Usual, left + labels, Sheets.Width - labels - (left - Sheets.Left));
            _sheets.Y += 1;
            isRight = isShort && !isRight;
        }

        _sheets.Y += 4;
    }

    private void Bullets(IReadOnlyList<string> texts, double left, bool isNumbered)
    {
        for (int i = 0; i < texts.Count; i++)
        {
            Bullet(texts[i], isNumbered ? string.Create(CultureInfo.InvariantCulture, $"{i + 1}.") : "\u2022", left);
        }

        _sheets.Y += 3;
    }

    private void Bullet(string text, string mark, double left)
    {
        _sheets.Need(Text * 1.32);
        _sheets.On.DrawString(mark, _sheets.Ink.Font(Text), Ink.Brush(Tone.Ink), left + 2, _sheets.Y + Text);
        _sheets.Words(text, Usual, left + 16, Sheets.Width - (left - Sheets.Left) - 16);
        _sheets.Y += 1.5;
    }

    private void Notice(Block.Notice notice)
    {
        _sheets.Need(46);
        _sheets.Y += 3;
        _sheets.Bar = notice.NeedsAttention ? Tone.Attention : Tone.Value;
        const double In = 10;
        _sheets.Words(
            notice.Title,
            Usual,
            Sheets.Left + In,
            Sheets.Width - In,
            isBold: true,
            notice.NeedsAttention ? Tone.Attention : Tone.Ink
        );
        foreach (string text in notice.Texts)
        {
            if (notice.Texts.Count == 1)
            {
                _sheets.Words(text, Usual, Sheets.Left + In, Sheets.Width - In);
            }
            else
            {
                Bullet(text, "\u2022", Sheets.Left + In);
            }
        }

        _sheets.Bar = Tone.None;
        _sheets.Y += 7;
    }

    private void Picture(Drawing drawing)
    {
        double scale = Math.Min(1, Sheets.Width / drawing.Width) * _sheets.Scale;
        _sheets.Need(HeightOf(drawing));
        _sheets.Y += 4;
        _sheets.Words(drawing.Title, 9, Sheets.Left, Sheets.Width, isBold: true);
        _sheets.Y += 2;
        DrawingPrinter.Print(_sheets.On, _sheets.Ink, drawing, Sheets.Left, _sheets.Y, scale);
        _sheets.Y += (drawing.Height * scale) + 8;
    }

    private void Code(Block.Code code)
    {
        const double Side = 54;
        _sheets.Need(Side + 14);
        _sheets.Y += 4;
        double top = _sheets.Y;
        _sheets.On.DrawRectangle(Ink.Pen(Tone.Ink, 0.75), Sheets.Left, top, Sheets.Width, Side + 8);
        DrawingPrinter.Print(
            _sheets.On,
            _sheets.Ink,
            code.Drawing,
            Sheets.Left + 4,
            top + 4,
            Side / code.Drawing.Width
        );
        double left = Sheets.Left + Side + 16;
        _sheets.Y = top + 10;
        _sheets.Words(code.Text, 14, left, Sheets.Width - Side - 24, isBold: true);
        _sheets.Y += 2;
        _sheets.Words(code.Words, 8, left, Sheets.Width - Side - 24, tone: Tone.Quiet);
        _sheets.Y = top + Side + 12;
    }

    // Once the number of sheets is known: foot and number, and across each what must not be overlooked.
    private static void Foot(PdfDocument document, Paper paper, Ink ink)
    {
        XFont font = ink.Font(7.5);
        string foot = ink.Lines(ink.Fit(paper.Foot), font, Sheets.Width - 70)[0];
        for (int i = 0; i < document.PageCount; i++)
        {
            using XGraphics on = XGraphics.FromPdfPage(document.Pages[i], XGraphicsPdfPageOptions.Append);
            on.DrawLine(Ink.Pen(Tone.Rule, 0.5), Sheets.Left, 800, Sheets.Left + Sheets.Width, 800);
            on.DrawString(foot, font, Ink.Brush(Tone.Quiet), Sheets.Left, 810);
            string number = string.Create(CultureInfo.InvariantCulture, $"page {i + 1} of {document.PageCount}");
            on.DrawString(
                number,
                font,
                Ink.Brush(Tone.Quiet),
                Sheets.Left + Sheets.Width - ink.Width(number, font),
                810
            );
            if (paper.Across.Length > 0)
            {
                Across(on, ink, paper.Across);
            }
        }
    }

    private static void Across(XGraphics on, Ink ink, string word)
    {
        const double Middle = 297.5;
        const double Half = 421;
        XFont font = ink.Font(90, isBold: true);
        XSolidBrush pale = new(XColor.FromArgb(40, 156, 28, 28));
        XGraphicsState before = on.Save();
        on.RotateAtTransform(-40, new XPoint(Middle, Half));
        on.DrawString(word, font, pale, Middle - (ink.Width(word, font) / 2), Half + 30);
        on.Restore(before);
        XFont small = ink.Font(11, isBold: true);
        on.DrawString(word, small, Ink.Brush(Tone.Attention), Middle - (ink.Width(word, small) / 2), 30);
    }
}
