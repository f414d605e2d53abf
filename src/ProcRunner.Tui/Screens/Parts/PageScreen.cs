namespace ProcRunner.Tui.Screens.Parts;

/// <summary>A page of fixed text.</summary>
/// <param name="words">What the frame says besides.</param>
/// <param name="title">What it is about.</param>
/// <param name="lines">The text.</param>
internal sealed class PageScreen(IFrameWords words, string title, IReadOnlyList<TextLine> lines) : TextScreen(words)
{
    /// <inheritdoc/>
    protected override string Title => title;

    /// <inheritdoc/>
    protected override IReadOnlyList<TextLine> Lines(int width) => lines;
}
