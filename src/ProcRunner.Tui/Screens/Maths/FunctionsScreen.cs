using ProcRunner.ShopMath;
using ProcRunner.Tui.Screens.Parts;

namespace ProcRunner.Tui.Screens.Maths;

/// <summary>Calculations to choose from.</summary>
/// <param name="desk">Where they are worked from.</param>
/// <param name="title">What they have in common.</param>
/// <param name="functions">The calculations.</param>
internal sealed class FunctionsScreen(MathsDesk desk, string title, IReadOnlyList<WorkFunction> functions)
    : ListScreen(desk.Words)
{
    /// <inheritdoc/>
    public override bool IsPractice => desk.IsPractice;

    /// <inheritdoc/>
    protected override string Title => $"Shop maths: {title}";

    /// <inheritdoc/>
    protected override IReadOnlyList<ListColumn> Columns { get; } = [new("", 26, 34), new("", 0, 0)];

    /// <inheritdoc/>
    protected override int Count => functions.Count;

    /// <inheritdoc/>
    protected override IReadOnlyList<string> Cells(int index, Look look) =>
        [functions[index].Name.Replace('-', ' '), functions[index].Summary];

    /// <inheritdoc/>
    protected override Turn Chosen(int index) => new Turn.To(new WorkForm(desk, functions[index]));
}
