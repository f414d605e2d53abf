using System.Globalization;
using ProcRunner.Tui.Drawing;
using ProcRunner.Tui.Training;

namespace ProcRunner.Tui.Screens.Run;

/// <summary>How a lesson went; it is written down once, when it is first shown. What doesn't fit stands on a further page.</summary>
internal sealed class DebriefPage(RunWork work, LessonRun lesson) : RunPage(work)
{
    private readonly Debrief _debrief = lesson.Close();
    private int _page;
    private int _pages = 1;

    private bool IsLast => _page == _pages - 1;

    /// <inheritdoc/>
    protected override bool Scrolls => _pages > 1;

    /// <inheritdoc/>
    public override void Draw(Canvas canvas, Look look)
    {
        Frame.Head(canvas, look, Work);
        canvas.Put(1, Frame.Top, $" LESSON OVER: {lesson.Lesson.Title} ", _debrief.IsClean ? Ink.Good : Ink.Mind);
        int top = Frame.Top + 2;
        int rows = canvas.Height - Frame.BottomRows - top;
        int width = canvas.Width - 4;
        List<(string Text, Ink Ink)> lines = [.. Said(width), ("", Ink.Plain), .. Times(width, rows)];
        _pages = Math.Max(1, (lines.Count + rows - 1) / rows);
        _page = Math.Min(_page, _pages - 1);
        foreach ((string text, Ink ink) in lines.Skip(_page * rows).Take(rows))
        {
            canvas.Put(2, top++, text, ink);
        }

        string onwards = lesson.Following is { } next ? $"Enter: next, {next.Name}" : "Enter: to the lessons";
        Frame.Foot(
            canvas,
            look,
            new Foot
            {
                Said = Work.Said,
                Label =
                    _pages == 1
                        ? "over"
                        : string.Create(CultureInfo.InvariantCulture, $"over, page {_page + 1} of {_pages}"),
                Typed = Line.Text,
                Keys = IsLast ? onwards : "Enter: next page",
                MoreKeys = lesson.Following is null ? "/ history" : "0 Enter: lessons   / history",
            }
        );
    }

    // What it was about comes first: it is what is to be kept in mind.
    private IEnumerable<(string Text, Ink Ink)> Said(int width)
    {
        string[] said = [.. _debrief.Lines(Work.State)];
        string learn = $"To be learned here: {lesson.Lesson.Learn}.";
        return Canvas
            .Wrap(said[0], width)
            .Select(line => (line, Ink.Plain))
            .Concat(Canvas.Wrap(learn, width).Select(line => (line, Ink.Strong)))
            .Concat(said.Skip(1).SelectMany(line => Canvas.Wrap(line, width)).Select(line => (line, Ink.Plain)));
    }

    // The latest times, below each other, so that progress is seen.
    private IEnumerable<(string Text, Ink Ink)> Times(int width, int rows) =>
        ProgressChart.Rows([.. lesson.Times().TakeLast(rows / 3)], width).Select(row => (row, Ink.Quiet));

    /// <inheritdoc/>
    protected override Turn Entered(string typed)
    {
        if (typed.Trim().Length > 0)
        {
            return Turn.Back;
        }

        if (!IsLast)
        {
            _page++;
            return Turn.Stay;
        }

        return lesson.Following?.Open() is { } next ? new Turn.Instead(next) : Turn.Back;
    }

    /// <inheritdoc/>
    protected override Turn Scroll(int by)
    {
        _page = Math.Clamp(_page + by, 0, _pages - 1);
        return Turn.Stay;
    }

    /// <inheritdoc/>
    protected override Turn Slash() =>
        new Turn.Instead(new TextPage(Work, "the lesson, entry by entry", HistoryText.Of(Work, null)));

    /// <inheritdoc/>
    protected override Turn Escape() => Turn.Back;
}
