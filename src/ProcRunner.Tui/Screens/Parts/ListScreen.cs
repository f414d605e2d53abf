using System.Globalization;
using ProcRunner.Tui.Drawing;

namespace ProcRunner.Tui.Screens.Parts;

/// <summary>
/// A numbered list: a number and Enter chooses, + and - turn its pages, 0 leaves it. A number means the same on every
/// page.
/// </summary>
/// <param name="words">What the frame says besides.</param>
internal abstract class ListScreen(IFrameWords words) : FramedScreen(words)
{
    private const int WideFrom = 120;
    private const int NumberWidth = 5;
    private List<int> _pages = [0];
    private int _page;

    /// <inheritdoc/>
    protected override string Asks => "Number";

    /// <inheritdoc/>
    protected override IReadOnlyList<string> Keys =>
        [Count > 0 ? "number Enter chooses" : "", PageKeys, HasMenu ? "/ menu" : "", "0 Enter back", "* keys"];

    /// <summary>The keys that turn pages, where there is more than one.</summary>
    protected string PageKeys => _pages.Count > 1 ? "+ - pages" : "";

    /// <summary>True when there is room for all columns beside each other.</summary>
    protected bool IsWide { get; private set; }

    /// <summary>The columns.</summary>
    protected abstract IReadOnlyList<ListColumn> Columns { get; }

    /// <summary>How many rows there are.</summary>
    protected abstract int Count { get; }

    /// <summary>What stands above the list; empty for nothing.</summary>
    protected virtual string Intro => "";

    /// <summary>What stands in place of a list without rows.</summary>
    protected virtual string Nothing => "Nothing here yet.";

    /// <summary>True when / opens a menu.</summary>
    protected virtual bool HasMenu => false;

    /// <summary>A row's cells, one for each column.</summary>
    protected abstract IReadOnlyList<string> Cells(int index, Look look);

    /// <summary>What stands below a row; null when rows are of one line.</summary>
    protected virtual string? BelowOf(int index) => null;

    /// <summary>A row's ink.</summary>
    protected virtual Ink InkOf(int index) => Ink.Plain;

    /// <summary>The heading that a row stands under; empty for none.</summary>
    protected virtual string SectionOf(int index) => "";

    /// <summary>A row was chosen.</summary>
    protected abstract Turn Chosen(int index);

    /// <summary>Something was entered that is no row's number.</summary>
    protected virtual Turn Other(string text) => Refuse("There is no such number here.");

    /// <summary>Enter in an empty line.</summary>
    protected virtual Turn Bare() => Turn.Stay;

    /// <summary>0 was entered.</summary>
    protected virtual Turn Zero() => Turn.Back;

    /// <summary>The menu.</summary>
    protected virtual Turn Menu() => Turn.Stay;

    /// <summary>Begins at the first page again.</summary>
    protected void Rewind() => _page = 0;

    /// <inheritdoc/>
    protected override void DrawBody(Canvas canvas, Look look, Area area)
    {
        IsWide = canvas.Width >= WideFrom;
        int row = area.Row;
        if (Intro.Length > 0)
        {
            row = canvas.PutWrapped(area.Column, row, area.Width, 6, Intro) + 1;
        }

        if (Count == 0)
        {
            canvas.PutWrapped(area.Column, row, area.Width, 4, Nothing, Ink.Quiet);
            return;
        }

        bool headed = Columns.Any(c => c.Head.Length > 0);
        Area rows = new(area.Column, row + (headed ? 1 : 0), area.Width, area.Height - (row - area.Row) - 1);
        Divide(rows.Height);
        if (headed)
        {
            DrawCells(canvas, row, area, [.. Columns.Select(c => c.Head)], Ink.Quiet);
        }

        if (_pages.Count > 1)
        {
            string page = string.Create(CultureInfo.InvariantCulture, $"{_page + 1} of {_pages.Count}");
            page =
                headed && Columns[^1].Head.Length > 0 && !HasRoomFor("page " + page, area.Width)
                    ? page
                    : "page " + page;
            canvas.PutRight(area.Column + area.Width, row + (headed ? 0 : rows.Height), page, Ink.Quiet);
        }

        DrawRows(canvas, look, rows);
    }

    /// <inheritdoc/>
    protected override Turn Entered(string text)
    {
        if (text.Length == 0)
        {
            return Bare();
        }

        bool isNumber = int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out int number);
        return isNumber && number == 0 ? Zero()
            : isNumber && number <= Count ? Chosen(number - 1)
            : Other(text);
    }

    /// <inheritdoc/>
    protected override Turn? First(string character) => character == "/" ? Slash() : base.First(character);

    /// <summary>A slash in an empty line: the menu, or back from a list that has none.</summary>
    protected virtual Turn Slash() => HasMenu ? Menu() : Turn.Back;

    /// <inheritdoc/>
    protected override void Page(int by) => _page = Math.Clamp(_page + by, 0, _pages.Count - 1);

    // Beside the last column's heading.
    private bool HasRoomFor(string page, int width)
    {
        int before = Columns.SkipLast(1).Select(c => IsWide ? c.Wide : c.Width).Where(w => w > 0).Sum(w => w + 2);
        return NumberWidth + before + Columns[^1].Head.Length + 2 + page.Length <= width;
    }

    private void DrawRows(Canvas canvas, Look look, Area rows)
    {
        int row = rows.Row;
        int last = _page + 1 < _pages.Count ? _pages[_page + 1] : Count;
        for (int index = _pages[_page]; index < last; index++)
        {
            string section = SectionOf(index);
            if (section.Length > 0 && (index == _pages[_page] || section != SectionOf(index - 1)))
            {
                canvas.Put(rows.Column, row++, section, Ink.Strong);
            }

            string number = (index + 1).ToString(CultureInfo.InvariantCulture);
            canvas.PutRight(rows.Column + NumberWidth - 2, row, number, Ink.Strong);
            DrawCells(canvas, row++, rows, Cells(index, look), InkOf(index));
            if (BelowOf(index) is { } below)
            {
                int column = rows.Column + NumberWidth + Columns[0].Width + 2;
                canvas.Put(column, row++, Fitting.Line(below, rows.Column + rows.Width - column), Ink.Quiet);
            }
        }
    }

    private void DrawCells(Canvas canvas, int row, Area area, IReadOnlyList<string> cells, Ink ink)
    {
        int column = area.Column + NumberWidth;
        int end = area.Column + area.Width;
        for (int i = 0; i < Columns.Count; i++)
        {
            int width = IsWide ? Columns[i].Wide : Columns[i].Width;
            bool last = i == Columns.Count - 1;
            if (width > 0 || last)
            {
                width = last ? end - column : Math.Min(width, end - column);
                canvas.Put(column, row, Fitting.Line(cells[i], width), ink);
                column += width + 2;
            }
        }
    }

    // Where pages begin, headings counted.
    private void Divide(int height)
    {
        _pages = [0];
        int used = 0;
        for (int index = 0; index < Count; index++)
        {
            bool first = index == _pages[^1];
            bool heading = SectionOf(index).Length > 0 && (first || SectionOf(index) != SectionOf(index - 1));
            int one = BelowOf(index) is null ? 1 : 2;
            int rows = heading ? one + 1 : one;
            if (used + rows > height && !first)
            {
                _pages.Add(index);
                used = 0;
                rows = SectionOf(index).Length > 0 ? one + 1 : one;
            }

            used += rows;
        }

        _page = Math.Min(_page, _pages.Count - 1);
    }
}
