namespace ProcRunner.Tui.Host;

/// <summary>What the screen is run with.</summary>
/// <param name="Terminal">What the terminal can do.</param>
/// <param name="Time">The clock.</param>
/// <param name="RingsBell">False while the bell is switched off.</param>
/// <param name="UsesColours">False while colours are switched off.</param>
internal sealed record HostOptions(
    TerminalKind Terminal,
    TimeProvider Time,
    Func<bool> RingsBell,
    Func<bool> UsesColours
)
{
    /// <summary>The colours to use now.</summary>
    public ColourDepth Depth => UsesColours() ? Terminal.Depth : ColourDepth.None;
}
