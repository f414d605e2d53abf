using ProcRunner.Lessons;
using ProcRunner.Store.Local;
using ProcRunner.Tui.Screens;
using ProcRunner.Tui.Screens.Parts;
using ProcRunner.Tui.Screens.Run;
using ProcRunner.Tui.Screens.Shop;

namespace ProcRunner.Tui.Training;

/// <summary>The lessons, with how each went so far; a number begins one or takes it up again.</summary>
internal sealed class LessonsScreen(LocalStore store, DebriefBook book, string person, bool coaches)
    : ListScreen(new DoorWords())
{
    private readonly IReadOnlyList<Lesson> _lessons = LessonShelf.All();

    /// <inheritdoc/>
    public override bool IsPractice => true;

    /// <inheritdoc/>
    protected override string Title => "Lessons on a practice head";

    /// <inheritdoc/>
    protected override string Intro =>
        "The head is invented and nothing here is worth anything. Read the gauge that is drawn, type what it shows, decide as you "
        + "would at the bench. Signing off: a trainee's PIN is 1357, the lead's beside it (moss) 135790. Enter begins the first.";

    /// <inheritdoc/>
    protected override IReadOnlyList<ListColumn> Columns { get; } =
    [new("lesson", 20, 26), new("what comes in", 34, 60), new("so far", 0, 0)];

    /// <inheritdoc/>
    protected override int Count => _lessons.Count;

    /// <inheritdoc/>
    protected override IReadOnlyList<string> Cells(int index, Look look)
    {
        string chart = book.Chart(_lessons[index].Name, person);
        return [_lessons[index].Name, _lessons[index].Title, chart.Length > 0 ? chart : "not yet"];
    }

    /// <inheritdoc/>
    protected override Turn Bare() => Chosen(0);

    /// <inheritdoc/>
    protected override Turn Chosen(int index)
    {
        (LessonRun? run, string fault) = LessonRun.Open(store, book, _lessons[index], person, coaches);
        return run is null ? Refuse(fault) : new Turn.To(RunScreen.Open(run));
    }
}
