using System.Globalization;
using ProcRunner.Tui.Drawing;

namespace ProcRunner.Tui.Screens.Parts;

/// <summary>Text to be read, page by page.</summary>
/// <param name="words">What the frame says besides.</param>
internal abstract class TextScreen(IFrameWords words) : FramedScreen(words)
{
    private const int LabelWidth = 14;
    private int _page;
    private int _pages = 1;

    /// <inheritdoc/>
    protected override string Asks => _page + 1 < _pages ? "Enter turns the page" : "Enter goes back";

    /// <inheritdoc/>
    protected override IReadOnlyList<string> Keys => [PageKeys, HasMenu ? "/ menu" : "", "0 Enter back", "* keys"];

    /// <summary>The keys that turn pages, where there is more than one.</summary>
    protected string PageKeys => _pages > 1 ? "+ - pages" : "";

    /// <summary>True when / opens a menu.</summary>
    protected virtual bool HasMenu => false;

    /// <summary>The text for a width.</summary>
    protected abstract IReadOnlyList<TextLine> Lines(int width);

    /// <summary>The menu.</summary>
    protected virtual Turn Menu() => Turn.Stay;

    /// <summary>Enter in an empty line on the last page.</summary>
    protected virtual Turn Bare() => Turn.Back;

    /// <summary>Something else than 0 was entered.</summary>
    protected virtual Turn Other(string text) => Refuse("Only 0 means something here.");

    /// <inheritdoc/>
    protected override void DrawBody(Canvas canvas, Look look, Area area)
    {
        List<TextLine> rows = [];
        foreach (TextLine line in Lines(area.Width))
        {
            int width = area.Width - line.Indent - (line.Label.Length > 0 ? LabelWidth : 0);
            IEnumerable<string> wrapped =
                line.Text.Length <= width ? [line.Text] : Canvas.Wrap(Fitting.Words(line.Text), width);
            rows.AddRange(wrapped.Select((text, i) => Row(line, text, i == 0)));
        }

        int height = area.Height - 1;
        List<List<TextLine>> pages = Divide(rows, height);
        _pages = pages.Count;
        _page = Math.Min(_page, _pages - 1);
        int row = area.Row;
        foreach (TextLine line in pages[_page])
        {
            string fitted = Fitting.Line(line.Text, area.Width - line.Indent);
            canvas.Put(area.Column + line.Indent, row++, fitted, line.Ink);
        }

        if (_pages > 1)
        {
            string page = string.Create(CultureInfo.InvariantCulture, $"page {_page + 1} of {_pages}");
            canvas.PutRight(area.Column + area.Width, area.Row + height, page, Ink.Quiet);
        }
    }

    // A page that begins in a table begins with the table's headings.
    private static List<List<TextLine>> Divide(List<TextLine> rows, int height)
    {
        List<List<TextLine>> pages =
        [
            [],
        ];
        foreach (TextLine row in rows)
        {
            if (pages[^1].Count >= height)
            {
                pages.Add(row.Heading.Length > 0 ? [new(row.Heading, Ink.Quiet)] : []);
            }

            pages[^1].Add(row);
        }

        return pages;
    }

    private static TextLine Row(TextLine line, string text, bool first) =>
        line.Label.Length == 0
            ? line with
            {
                Text = text,
            }
            : line with
            {
                Text = (first ? line.Label : "").PadRight(LabelWidth) + text,
            };

    /// <inheritdoc/>
    protected override Turn Entered(string text)
    {
        switch (text)
        {
            case "" when _page + 1 < _pages:
                Page(1);
                return Turn.Stay;
            case "":
                return Bare();
            case "0":
                return Turn.Back;
            default:
                return Other(text);
        }
    }

    /// <inheritdoc/>
    protected override Turn? First(string character) => character == "/" && HasMenu ? Menu() : base.First(character);

    /// <inheritdoc/>
    protected override void Page(int by) => _page = Math.Clamp(_page + by, 0, _pages - 1);
}
