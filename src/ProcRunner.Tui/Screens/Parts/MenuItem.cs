namespace ProcRunner.Tui.Screens.Parts;

/// <summary>One thing that a menu offers.</summary>
/// <param name="Text">What it is, as it stands now.</param>
/// <param name="Choose">What choosing it leads to.</param>
internal sealed record MenuItem(Func<string> Text, Func<Turn> Choose)
{
    /// <summary>An item that leads to a screen.</summary>
    public static MenuItem To(string text, Func<Screen> screen) => new(() => text, () => new Turn.To(screen()));

    /// <summary>An item that takes the menu's place.</summary>
    public static MenuItem Instead(string text, Func<Screen> screen) =>
        new(() => text, () => new Turn.Instead(screen()));
}
