using System.Text;

namespace ProcRunner.Tui.Host;

/// <summary>
/// Puts right what terminals send for the number pad and for two keys of the Linux console, before Terminal.Gui reads it: a
/// pad in application mode sends <c>ESC O q</c> for 1 (read as End) and <c>ESC O M</c> for Enter (dropped); the console sends LF
/// for the pad's Enter and BS for Backspace.
/// </summary>
/// <remarks>The pad's sequences: VT220 Programmer Reference Manual (EK-VT220-RM), table 3-7.</remarks>
internal sealed class PadKeys
{
    private const char Escape = '\u001b';
    private readonly StringBuilder _held = new(2);

    /// <summary>True when the start of a sequence is held back.</summary>
    public bool Holds => _held.Length > 0;

    /// <summary>Takes what came, and gives what it means.</summary>
    public string Read(ReadOnlySpan<char> came)
    {
        StringBuilder meant = new(came.Length);
        foreach (char character in came)
        {
            Take(character, meant);
        }

        // An Escape at the end is most likely the key itself: it isn't held, so that it costs no time.
        if (_held.Length == 1)
        {
            meant.Append(Release());
        }

        return meant.ToString();
    }

    /// <summary>Gives what is held, when nothing more came after it.</summary>
    public string Release()
    {
        string held = _held.ToString();
        _held.Clear();
        return held;
    }

    private void Take(char character, StringBuilder meant)
    {
        switch (_held.Length)
        {
            case 1 when character == 'O':
                _held.Append(character);
                return;
            case 2 when OfPad(character) is { } key:
                _held.Clear();
                meant.Append(key);
                return;
            default:
                break;
        }

        if (_held.Length > 0)
        {
            meant.Append(Release());
        }

        switch (character)
        {
            case Escape:
                _held.Append(character);
                break;
            case '\n':
                meant.Append('\r');
                break;
            case '\b':
                meant.Append('\u007f');
                break;
            default:
                meant.Append(character);
                break;
        }
    }

    // 'j' to 'y' are the pad's keys 64 lower in ASCII: * + , - . / 0 to 9; 'X' is =, 'o' is /.
    private static char? OfPad(char final) =>
        final switch
        {
            'M' => '\r',
            'X' => '=',
            >= 'j' and <= 'y' => (char)(final - 64),
            _ => null,
        };
}
