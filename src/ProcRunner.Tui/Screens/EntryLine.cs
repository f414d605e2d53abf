using System.Text;
using ProcRunner.Text;

namespace ProcRunner.Tui.Screens;

/// <summary>The one line that is typed into. A wrong key loses nothing; pasted lines become one.</summary>
internal sealed class EntryLine
{
    private const int MostCharacters = 2000;
    private readonly StringBuilder _text = new();

    /// <summary>What stands in it.</summary>
    public string Text => _text.ToString();

    /// <summary>True when nothing does.</summary>
    public bool IsEmpty => _text.Length == 0;

    /// <summary>Takes a key; false for one that means nothing to a line.</summary>
    public bool Press(KeyPress key)
    {
        switch (key.Kind)
        {
            case KeyKind.Character or KeyKind.Paste:
                string cleaned = SafeText.Clean(key.Text.Replace('\r', ' ').Replace('\n', ' ').Replace('\t', ' '));
                _text.Append(cleaned.AsSpan(0, Math.Min(cleaned.Length, MostCharacters - _text.Length)));
                return true;
            case KeyKind.Backspace when _text.Length > 0:
                _text.Length--;
                return true;
            default:
                return false;
        }
    }

    /// <summary>Takes what stands in it and leaves it empty.</summary>
    public string Take()
    {
        string text = _text.ToString();
        _text.Clear();
        return text;
    }

    /// <summary>Puts text back, to be mended.</summary>
    public void Restore(string text)
    {
        _text.Clear();
        _text.Append(text);
    }
}
