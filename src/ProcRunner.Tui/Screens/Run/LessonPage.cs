using ProcRunner.Procedures;
using ProcRunner.Runs;
using ProcRunner.Tui.Drawing;
using ProcRunner.Tui.Training;

namespace ProcRunner.Tui.Screens.Run;

/// <summary>A lesson's first page: what is before the learner and how it is worked. What is to be learned isn't told yet.</summary>
internal sealed class LessonPage(RunWork work, LessonRun lesson) : ReadFirstPage(work)
{
    /// <inheritdoc/>
    protected override string Title => $"Lesson: {lesson.Lesson.Name}";

    /// <inheritdoc/>
    protected override string Label => "ready";

    /// <inheritdoc/>
    protected override string EnterSays => "begin";

    /// <inheritdoc/>
    protected override string MoreKeys => RunMenu.KeysOf(lesson);

    /// <inheritdoc/>
    protected override void DrawText(Canvas canvas, int top, int end)
    {
        int row = top;
        foreach (string line in Lines())
        {
            row = canvas.PutWrapped(2, row, canvas.Width - 4, Math.Max(0, end - row), line) + 1;
        }
    }

    /// <inheritdoc/>
    protected override void Read() => Work.Begin();

    private int First => lesson.Lesson.From is { } from && Work.Plan.TryStep(from, out int first) ? first : 0;

    private int Last => Work.Plan.TryStep(lesson.Lesson.Until, out int last) ? last : First;

    private IEnumerable<string> Lines()
    {
        // Where the end lies before the beginning, to find the way there is what is to be learned.
        string end = Last >= First ? $" It ends with: {lesson.Lesson.Until}." : "";
        yield return $"Before you: {lesson.Lesson.Title}.{end}";
        yield return lesson.Lesson.From is null
            ? "You work it from its first step."
            : $"What comes before was done by somebody else; menu, history, shows it at each position.{Elsewhere()}";
        yield return "The gauge is drawn at the right: read it to its last digit, type what it shows, Enter. Where there is something to "
            + "decide, decide as you would at the bench: nothing says beforehand what is wrong, or whether anything is.";
        if (Work.Plan.Steps.Any(step => step.Work is StepWork.Cut && step.Index >= First && step.Index <= Last))
        {
            yield return "At a cut you feed the tool: Down runs fast, + a little at a time. Stop, then type what the readout shows.";
        }

        yield return lesson.Coach switch
        {
            CoachMode.EachStep => "The coach speaks after each step, and before one when you ask.",
            CoachMode.Asked => "The coach speaks when you ask.",
            _ => "The coach is off; what there was to say is said at the end.",
        } + $" Its place is number {RunMenu.CoachNumber} of the menu: there it is asked, and turned on or off.";
    }

    private string Elsewhere() =>
        lesson.Lesson.At is { } at && Last > First && !Work.Plan.PositionsOf(Work.Plan.Steps[First]).Contains(At.Head)
            ? $" You work at {at}; what other positions need is somebody else's."
            : "";
}
