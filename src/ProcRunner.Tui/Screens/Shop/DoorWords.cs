using ProcRunner.Tui.Screens.Parts;

namespace ProcRunner.Tui.Screens.Shop;

/// <summary>The frame's words while no store is open.</summary>
internal sealed class DoorWords : IFrameWords
{
    /// <inheritdoc/>
    public string Corner => "";

    /// <inheritdoc/>
    public string TakeWord() => "";

    /// <inheritdoc/>
    public Screen Help() => new PageScreen(this, "Keys", HelpText.Lines);
}
