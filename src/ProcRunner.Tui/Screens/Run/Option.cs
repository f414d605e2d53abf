namespace ProcRunner.Tui.Screens.Run;

/// <summary>A numbered answer.</summary>
/// <param name="Text">The answer.</param>
/// <param name="Note">What it means, beside it; empty where it speaks for itself.</param>
/// <param name="Take">Where it leads.</param>
internal sealed record Option(string Text, string Note, Func<AskPage, Turn> Take);
