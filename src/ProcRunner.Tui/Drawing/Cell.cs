namespace ProcRunner.Tui.Drawing;

/// <summary>One place on the screen. Every character is one column wide; what isn't never gets here.</summary>
/// <param name="Character">What stands there.</param>
/// <param name="Ink">What it means.</param>
internal readonly record struct Cell(char Character, Ink Ink)
{
    /// <summary>Nothing.</summary>
    public static Cell Blank { get; } = new(' ', Ink.Plain);
}
