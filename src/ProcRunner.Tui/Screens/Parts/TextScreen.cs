using System.Globalization;
using ProcRunner.Tui.Drawing;

namespace ProcRunner.Tui.Screens.Parts;

/// <summary>Text to be read, page by page.</summary>
/// <param name="words">What the frame says besides.</param>
internal abstract class TextScreen(IFrameWords words) : FramedScreen(words)
{
    private int _page;
    private int _pages = 1;

    /// <inheritdoc/>
    protected override string Asks => _page + 1 < _pages ? "Enter turns the page" : "Enter goes back";

    /// <inheritdoc/>
    protected override IReadOnlyList<string> Keys =>
        [_pages > 1 ? "+ - pages" : "", HasMenu ? "/ menu" : "", "0 Enter back", "* keys"];

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
            IEnumerable<string> wrapped =
                line.Text.Length + line.Indent <= area.Width
                    ? [line.Text]
                    : Canvas.Wrap(Fitting.Words(line.Text), area.Width - line.Indent);
            rows.AddRange(wrapped.Select(text => line with { Text = text }));
        }

        int height = area.Height - 1;
        _pages = Math.Max(1, (rows.Count + height - 1) / height);
        _page = Math.Min(_page, _pages - 1);
        int row = area.Row;
        foreach (TextLine line in rows.Skip(_page * height).Take(height))
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
