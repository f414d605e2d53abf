namespace ProcRunner.Tui.Screens.Parts;

/// <summary>A rectangle of a canvas.</summary>
/// <param name="Column">Its first column.</param>
/// <param name="Row">Its first row.</param>
/// <param name="Width">Columns.</param>
/// <param name="Height">Rows.</param>
internal readonly record struct Area(int Column, int Row, int Width, int Height);
