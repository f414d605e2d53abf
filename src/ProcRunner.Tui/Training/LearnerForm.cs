using ProcRunner.Tui.Screens;
using ProcRunner.Tui.Screens.Parts;
using ProcRunner.Tui.Screens.Shop;

namespace ProcRunner.Tui.Training;

/// <summary>Who learns: a name, or nothing to learn under an invented one.</summary>
internal sealed class LearnerForm : FormScreen
{
    private readonly PracticeDoor _door;
    private readonly Field _name;
    private string _person = "";

    /// <summary>The form.</summary>
    public LearnerForm(PracticeDoor door)
        : base(new DoorWords())
    {
        _door = door;
        _name = new("your name")
        {
            Proposed = () => PracticeDoor.Invented.Name,
            Hint = () => "So that your progress is kept apart from others'. Enter alone: under an invented name.",
        };
        Fields = [_name];
    }

    /// <inheritdoc/>
    public override bool IsPractice => true;

    /// <inheritdoc/>
    public override void Left() => _door.Dispose();

    /// <inheritdoc/>
    protected override string Title => "Practice";

    /// <inheritdoc/>
    protected override string Intro =>
        "A cylinder head that exists nowhere, on the screens of the real work: gauges are drawn and you read them. A seat cut too "
        + "deep costs nothing here. Lessons take five to twenty minutes; the first one is reading gauges.";

    /// <inheritdoc/>
    protected override IReadOnlyList<Field> Fields { get; }

    /// <inheritdoc/>
    protected override string? Write()
    {
        (_person, string? fault) = _door.Learner(_name.Text);
        return fault;
    }

    /// <inheritdoc/>
    protected override Turn Done()
    {
        LessonsScreen lessons = _door.Lessons(_person);
        return new Turn.Instead(lessons, lessons.BeginNext());
    }
}
