using System.Globalization;
using ProcRunner.Lessons;
using ProcRunner.Tui.Screens;
using ProcRunner.Tui.Screens.Parts;
using ProcRunner.Tui.Screens.Run;
using ProcRunner.Tui.Screens.Shop;

namespace ProcRunner.Tui.Training;

/// <summary>The lessons, with how each went so far; a number begins one or takes it up again.</summary>
/// <param name="door">The practice room's door.</param>
/// <param name="person">Id of the learner.</param>
internal sealed class LessonsScreen(PracticeDoor door, string person) : ListScreen(new DoorWords())
{
    private readonly IReadOnlyList<Lesson> _lessons = LessonShelf.All();
    private IReadOnlyList<DebriefBook.Line> _taken = door.Book.Of(person);

    /// <inheritdoc/>
    public override bool IsPractice => true;

    /// <inheritdoc/>
    protected override string Title => $"Lessons: {Name}";

    /// <inheritdoc/>
    protected override string Intro =>
        "The head is invented and nothing here is worth anything. Read the gauge that is drawn, type what it shows, decide as you "
        + "would at the bench. Your PIN here is 1357, the lead's (moss) 135790. "
        + string.Create(CultureInfo.InvariantCulture, $"Enter begins {Next + 1}. {door.Book.UnreadableInWords}");

    /// <inheritdoc/>
    protected override IReadOnlyList<string> Keys =>
        ["Enter goes on", "number Enter chooses", PageKeys, "/ progress", "0 Enter back"];

    /// <inheritdoc/>
    protected override bool HasMenu => true;

    /// <inheritdoc/>
    protected override IReadOnlyList<ListColumn> Columns { get; } =
    [new("lesson", 16, 26), new("what comes in", 36, 70), new("so far", 0, 0)];

    /// <inheritdoc/>
    protected override int Count => _lessons.Count;

    private string Name => door.Store.Shop.People[person].Name;

    /// <summary>The page of the lesson that is next; null when it can't be taken.</summary>
    public Screen? BeginNext() => Begin(Next).Page;

    private (Screen? Page, string Fault) Begin(int index)
    {
        (LessonRun? run, string fault) = LessonRun.Open(
            door.Store,
            door.Book,
            _lessons[index],
            person,
            door.CoachOf(person)
        );
        if (run is null)
        {
            return (null, fault);
        }

        if (index + 1 < _lessons.Count)
        {
            run.Following = (_lessons[index + 1].Name, () => Begin(index + 1).Page);
        }

        return (RunScreen.Open(run), "");
    }

    // The first that was never taken clean; the first of all when every one was.
    private int Next =>
        Math.Max(
            0,
            _lessons.ToList().FindIndex(lesson => !_taken.Any(line => line.Lesson == lesson.Name && line.ToMend == 0))
        );

    /// <inheritdoc/>
    public override void Left() => door.Dispose();

    /// <inheritdoc/>
    public override void Return()
    {
        _taken = door.Book.Of(person);
        base.Return();
    }

    /// <inheritdoc/>
    protected override IReadOnlyList<string> Cells(int index, Look look)
    {
        string signs = ProgressChart.Signs(_taken.Where(line => line.Lesson == _lessons[index].Name));
        return [_lessons[index].Name, _lessons[index].Title, signs.Length > 0 ? signs : "not yet"];
    }

    /// <inheritdoc/>
    protected override Turn Bare() => Chosen(Next);

    /// <inheritdoc/>
    protected override Turn Menu() => new Turn.To(new ProgressScreen(Name, _taken, _lessons.Count));

    /// <inheritdoc/>
    protected override Turn Chosen(int index)
    {
        (Screen? page, string fault) = Begin(index);
        return page is null ? Refuse(fault) : new Turn.To(page);
    }
}
