using ProcRunner.Tui.Drawing;
using ProcRunner.Tui.Training;

namespace ProcRunner.Tui.Screens.Run;

/// <summary>A lesson's first page: what is before the learner and how it is worked. What is to be learned isn't told yet.</summary>
internal sealed class LessonPage(RunWork work, LessonRun lesson) : RunPage(work)
{
    /// <inheritdoc/>
    public override void Draw(Canvas canvas, Look look)
    {
        Frame.Head(canvas, look, Work);
        canvas.Put(1, Frame.Top, $" Lesson: {lesson.Lesson.Name} ", Ink.Act);
        int row = Frame.Top + 2;
        int end = canvas.Height - Frame.BottomRows;
        foreach (string line in Lines())
        {
            row = canvas.PutWrapped(2, row, canvas.Width - 4, Math.Max(0, end - row), line) + 1;
        }

        Frame.Foot(
            canvas,
            look,
            new Foot
            {
                Said = Work.Said,
                Label = "ready",
                Typed = Line.Text,
                Keys = "Enter: begin",
                MoreKeys = RunMenu.KeysOf(lesson),
            }
        );
    }

    private IEnumerable<string> Lines()
    {
        yield return $"Before you: {lesson.Lesson.Title}. It ends with: {lesson.Lesson.Until}.";
        yield return lesson.Lesson.From is null
            ? "You work it from its first step."
            : "What comes before was done by somebody else; menu, history, shows it at each position.";
        yield return "The gauge is drawn at the right: read it to its last digit, type what it shows, Enter. Where there is something to "
            + "decide, decide as you would at the bench: nothing says beforehand what is wrong, or whether anything is.";
        yield return "At a cut you feed the tool: Down runs fast, + a little at a time. Stop, then type what the readout shows.";
        yield return lesson.Coach switch
        {
            CoachMode.EachStep => "The coach speaks after each step, and before one when you ask.",
            CoachMode.Asked => "The coach speaks when you ask.",
            _ => "The coach is off; what there was to say is said at the end.",
        } + $" Its place is number {RunMenu.CoachNumber} of the menu: there it is asked, and turned on or off.";
    }

    /// <inheritdoc/>
    protected override Turn Entered(string typed)
    {
        if (typed.Trim().Length > 0)
        {
            return Refuse("Nothing is asked here.", ["Enter alone begins."], "");
        }

        Work.Begin();
        return ToRun();
    }

    /// <inheritdoc/>
    protected override Turn Escape() => Turn.Back;
}
