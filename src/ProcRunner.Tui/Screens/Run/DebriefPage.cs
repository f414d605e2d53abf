using ProcRunner.Tui.Drawing;
using ProcRunner.Tui.Training;

namespace ProcRunner.Tui.Screens.Run;

/// <summary>How a lesson went; it is written down once, when it is first shown.</summary>
internal sealed class DebriefPage(RunWork work, LessonRun lesson) : RunPage(work)
{
    private readonly Debrief _debrief = lesson.Close();

    /// <inheritdoc/>
    public override void Draw(Canvas canvas, Look look)
    {
        Frame.Head(canvas, look, Work);
        canvas.Put(1, Frame.Top, $" LESSON OVER: {lesson.Lesson.Title} ", _debrief.IsClean ? Ink.Good : Ink.Mind);
        int row = Frame.Top + 2;
        int end = canvas.Height - Frame.BottomRows;
        foreach (string line in _debrief.Lines(Work.State))
        {
            row = canvas.PutWrapped(2, row, canvas.Width - 4, Math.Max(0, end - row), line);
        }

        row = canvas.PutWrapped(
            2,
            row + 1,
            canvas.Width - 4,
            Math.Max(0, end - row - 1),
            $"To be learned here: {lesson.Lesson.Learn}.",
            Ink.Strong
        );
        DrawTimes(canvas, row + 1, end);
        Frame.Foot(
            canvas,
            look,
            new Foot
            {
                Said = Work.Said,
                Label = "over",
                Typed = Line.Text,
                Keys = lesson.Following is { } next ? $"Enter: next, {next.Name}" : "Enter: to the lessons",
                MoreKeys = lesson.Following is null ? "/ history" : "0 Enter: lessons   / history",
            }
        );
    }

    // The latest times that fit, below each other, so that progress is seen.
    private void DrawTimes(Canvas canvas, int row, int end)
    {
        IReadOnlyList<DebriefBook.Line> times = lesson.Times();
        int fits = end - row - 1;
        if (fits < 1)
        {
            return;
        }

        foreach (string line in ProgressChart.Rows([.. times.TakeLast(fits)], canvas.Width - 4))
        {
            canvas.Put(2, row++, line, Ink.Quiet);
        }
    }

    /// <inheritdoc/>
    protected override Turn Entered(string typed) =>
        typed.Trim().Length == 0 && lesson.Following?.Open() is { } next ? new Turn.Instead(next) : Turn.Back;

    /// <inheritdoc/>
    protected override Turn Slash() =>
        new Turn.Instead(new TextPage(Work, "the lesson, entry by entry", HistoryText.Of(Work, null)));

    /// <inheritdoc/>
    protected override Turn Escape() => Turn.Back;
}
