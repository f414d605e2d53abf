using ProcRunner.Tui.Drawing;
using ProcRunner.Tui.Screens.Parts;
using ProcRunner.Tui.Screens.Shop;

namespace ProcRunner.Tui.Training;

/// <summary>A learner's progress over time.</summary>
/// <param name="name">The learner's name.</param>
/// <param name="lines">The lessons taken.</param>
/// <param name="lessons">How many lessons there are.</param>
internal sealed class ProgressScreen(string name, IReadOnlyList<DebriefBook.Line> lines, int lessons)
    : TextScreen(new DoorWords())
{
    /// <inheritdoc/>
    public override bool IsPractice => true;

    /// <inheritdoc/>
    protected override string Title => $"Progress: {name}";

    /// <inheritdoc/>
    protected override IReadOnlyList<TextLine> Lines(int width) =>
        [
            new(ProgressChart.Summary(lines, lessons)),
            new(""),
            .. lines.Count == 0 ? [] : ProgressChart.Rows(lines, width).Select((row, i) => new TextLine(row, InkOf(i))),
            new(""),
            new("# one thing to mend: missed, misread, or cut too deep; = two minutes", Ink.Quiet),
        ];

    private Ink InkOf(int row) =>
        row == 0 ? Ink.Quiet
        : lines[row - 1].ToMend == 0 ? Ink.Good
        : Ink.Plain;
}
