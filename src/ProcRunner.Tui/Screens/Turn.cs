namespace ProcRunner.Tui.Screens;

/// <summary>Where a key leads.</summary>
internal abstract record Turn
{
    private Turn() { }

    /// <summary>Stays, redrawn.</summary>
    public static Turn Stay { get; } = new Here();

    /// <summary>Back to the screen before.</summary>
    public static Turn Back { get; } = new Up();

    /// <summary>This screen, redrawn.</summary>
    public sealed record Here : Turn;

    /// <summary>The screen before this one.</summary>
    public sealed record Up : Turn;

    /// <summary>Another screen on top of this one.</summary>
    public sealed record To(Screen Screen) : Turn;

    /// <summary>Another screen in place of this one, and one more on top of that, if given.</summary>
    public sealed record Instead(Screen Screen, Screen? Above = null) : Turn;

    /// <summary>Out of the program.</summary>
    public sealed record Leave : Turn;
}
