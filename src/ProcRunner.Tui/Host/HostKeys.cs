using System.Text;
using ProcRunner.Tui.Screens;
using Terminal.Gui.Drivers;
using Terminal.Gui.Input;

namespace ProcRunner.Tui.Host;

/// <summary>Terminal.Gui's keys as screens see them.</summary>
internal static class HostKeys
{
    /// <summary>True for Ctrl+Q, which leaves from anywhere.</summary>
    public static bool Leaves(Key key) => key == Key.Q.WithCtrl;

    /// <summary>The key; null for one that means nothing here.</summary>
    public static KeyPress? Of(Key key)
    {
        switch (key.KeyCode & ~(KeyCode.CtrlMask | KeyCode.ShiftMask))
        {
            case KeyCode.Enter:
                return KeyPress.Enter;
            case KeyCode.Backspace:
                return new(KeyKind.Backspace, "");
            case KeyCode.Esc:
                return new(KeyKind.Escape, "");
            case KeyCode.CursorUp:
                return new(KeyKind.Up, "");
            case KeyCode.CursorDown:
                return new(KeyKind.Down, "");
            case KeyCode.F2:
                return new(KeyKind.Who, "");
            case KeyCode.PageUp:
                return new(KeyKind.PageUp, "");
            case KeyCode.PageDown:
                return new(KeyKind.PageDown, "");
            default:
                break;
        }

        Rune rune = key.AsRune;
        return key.IsCtrl || key.IsAlt || rune.Value < ' ' || Rune.IsControl(rune)
            ? null
            : new KeyPress(KeyKind.Character, rune.ToString());
    }
}
