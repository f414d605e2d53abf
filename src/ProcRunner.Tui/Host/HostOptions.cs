namespace ProcRunner.Tui.Host;

/// <summary>What the screen is run with.</summary>
/// <param name="Terminal">What the terminal can do.</param>
/// <param name="Time">The clock.</param>
/// <param name="RingsBell">False when the bell is switched off.</param>
internal sealed record HostOptions(TerminalKind Terminal, TimeProvider Time, bool RingsBell = true);
