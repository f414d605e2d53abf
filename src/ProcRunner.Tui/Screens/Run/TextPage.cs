using System.Globalization;
using ProcRunner.Tui.Drawing;

namespace ProcRunner.Tui.Screens.Run;

/// <summary>Text to read, a page at a time; Enter goes on and, after the last page, back.</summary>
internal sealed class TextPage(RunWork work, string title, IReadOnlyList<string> lines) : RunPage(work)
{
    private int _page;
    private int _pages = 1;

    /// <summary>What 1 and Enter lead to, in words, and where; null: nothing.</summary>
    public (string Words, Func<Turn> Do)? Further { get; init; }

    /// <inheritdoc/>
    public override void Draw(Canvas canvas, Look look)
    {
        Frame.Head(canvas, look, Work);
        canvas.Put(1, Frame.Top, $" {title} ", Ink.Act);
        int top = Frame.Top + 2;
        int rows = canvas.Height - Frame.BottomRows - top;
        List<string> wrapped = [.. lines.SelectMany(l => Canvas.Wrap(l, canvas.Width - 4))];
        _pages = Math.Max(1, (wrapped.Count + rows - 1) / rows);
        _page = Math.Min(_page, _pages - 1);
        for (int i = 0; i < rows && (_page * rows) + i < wrapped.Count; i++)
        {
            canvas.Put(2, top + i, wrapped[(_page * rows) + i]);
        }

        if (Trouble is { } trouble)
        {
            Frame.Trouble(canvas, canvas.Height - Frame.BottomRows - 2, 2, trouble);
        }

        bool last = _page == _pages - 1;
        Frame.Foot(
            canvas,
            look,
            new Foot
            {
                Said = Work.Said,
                Label = string.Create(CultureInfo.InvariantCulture, $"page {_page + 1} of {_pages}"),
                Typed = Line.Text,
                Keys = last ? "Enter: back to the run" : "Enter: next page",
                MoreKeys = Further is { } further ? $"{further.Words}   / back" : "/ back",
            }
        );
    }

    /// <inheritdoc/>
    protected override Turn Entered(string typed)
    {
        if (typed == "1" && Further is { } further)
        {
            return further.Do();
        }

        // A gauge that types here isn't heard: what it read would be missing among the places.
        if (typed.Trim().Length > 0)
        {
            return Refuse("Nothing is entered on this page.", ["/ goes back to the run; enter it there."], "");
        }

        if (_page < _pages - 1)
        {
            _page++;
            return Turn.Stay;
        }

        return ToRun();
    }

    /// <inheritdoc/>
    protected override Turn Slash() => ToRun();

    /// <inheritdoc/>
    protected override Turn Scroll(int by)
    {
        _page = Math.Clamp(_page + by, 0, _pages - 1);
        return Turn.Stay;
    }
}
