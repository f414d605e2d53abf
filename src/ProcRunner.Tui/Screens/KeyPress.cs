namespace ProcRunner.Tui.Screens;

/// <summary>A key as screens see it.</summary>
/// <param name="Kind">What kind.</param>
/// <param name="Text">The character or the pasted text; empty for other kinds.</param>
internal readonly record struct KeyPress(KeyKind Kind, string Text)
{
    /// <summary>Enter.</summary>
    public static KeyPress Enter { get; } = new(KeyKind.Enter, "");

    /// <summary>A character.</summary>
    public static KeyPress Of(char character) => new(KeyKind.Character, character.ToString());
}
