namespace ProcRunner.Tui.Screens.Parts;

/// <summary>A column of a list; the last one takes what is left.</summary>
/// <param name="Head">What stands above it.</param>
/// <param name="Width">Its width below 120 columns; 0 leaves it out there, unless it is the last.</param>
/// <param name="Wide">Its width from 120 columns on.</param>
internal sealed record ListColumn(string Head, int Width, int Wide);
