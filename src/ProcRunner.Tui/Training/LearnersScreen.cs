using ProcRunner.People;
using ProcRunner.Tui.Screens;
using ProcRunner.Tui.Screens.Parts;
using ProcRunner.Tui.Screens.Shop;

namespace ProcRunner.Tui.Training;

/// <summary>Who learns, of those who have learned here before, or somebody new.</summary>
/// <param name="door">The practice room's door.</param>
/// <param name="learners">Those who have, by name.</param>
internal sealed class LearnersScreen(PracticeDoor door, IReadOnlyList<Person> learners) : ListScreen(new DoorWords())
{
    /// <inheritdoc/>
    public override bool IsPractice => true;

    /// <inheritdoc/>
    public override void Left() => door.Dispose();

    /// <inheritdoc/>
    protected override string Title => "Practice: who learns?";

    /// <inheritdoc/>
    protected override IReadOnlyList<ListColumn> Columns { get; } = [new("name", 30, 40), new("so far", 0, 0)];

    /// <inheritdoc/>
    protected override int Count => learners.Count + 1;

    /// <inheritdoc/>
    protected override IReadOnlyList<string> Cells(int index, Look look) =>
        index == learners.Count
            ? ["somebody new", ""]
            : [learners[index].Name, ProgressChart.Summary(door.Book.Of(learners[index].Id), LessonShelf.All().Count)];

    /// <inheritdoc/>
    protected override Turn Bare() => Chosen(0);

    /// <inheritdoc/>
    protected override Turn Chosen(int index) =>
        new Turn.Instead(index == learners.Count ? new LearnerForm(door) : door.Lessons(learners[index].Id));
}
