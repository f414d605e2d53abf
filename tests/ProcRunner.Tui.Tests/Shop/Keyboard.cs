using ProcRunner.Tui.Drawing;
using ProcRunner.Tui.Screens;

namespace ProcRunner.Tui.Tests.Shop;

/// <summary>Presses keys: a line feed is Enter, an escape character Esc.</summary>
internal static class Keyboard
{
    /// <summary>How many keys the number pad has that mean something here.</summary>
    public const string Pad = "0123456789.+-*/\n";

    public static Desk Type(this Desk desk, string keys)
    {
        foreach (char key in keys)
        {
            // A screen turns pages by what it drew last.
            desk.Draw(80, 24, new Look(Glyphs.Utf8, DateTimeOffset.UnixEpoch));
            desk.Press(
                key switch
                {
                    '\n' => KeyPress.Enter,
                    '\u001b' => new KeyPress(KeyKind.Escape, ""),
                    '\b' => new KeyPress(KeyKind.Backspace, ""),
                    _ => KeyPress.Of(key),
                }
            );
        }

        return desk;
    }

    public static Desk Paste(this Desk desk, string text)
    {
        desk.Press(new KeyPress(KeyKind.Paste, text));
        return desk;
    }

    public static string Picture(this Desk desk, Look look, int width = 80, int height = 24) =>
        desk.Draw(width, height, look).ToString();
}
