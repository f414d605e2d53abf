using ProcRunner.ShopMath;
using ProcRunner.Tui.Drawing;
using ProcRunner.Tui.Screens.Parts;

namespace ProcRunner.Tui.Screens.Maths;

/// <summary>A calculation worked out: the steps with their numbers, the results, the source.</summary>
/// <param name="desk">Where it was worked from.</param>
/// <param name="function">The calculation.</param>
/// <param name="answer">What came of it.</param>
internal sealed class WorkedScreen(MathsDesk desk, WorkFunction function, WorkAnswer answer) : TextScreen(desk.Words)
{
    /// <inheritdoc/>
    public override bool IsPractice => desk.IsPractice;

    /// <inheritdoc/>
    protected override string Title => $"Worked out: {function.Name.Replace('-', ' ')}";

    /// <inheritdoc/>
    protected override IReadOnlyList<TextLine> Lines(int width) =>
        [
            .. answer.Results.Select(one => new TextLine($"{one.Name}  {one.Text}", Ink.Strong)),
            new(""),
            .. answer
                .Steps.SelectMany(step => step.Lines)
                .Select(line => new TextLine(line.TrimStart(), Ink.Plain, line.Length - line.TrimStart().Length)),
            new(""),
            new($"Source: {function.Source}", Ink.Quiet),
            new(function.Details, Ink.Quiet),
            new(MathsDesk.Promise, Ink.Quiet),
        ];
}
