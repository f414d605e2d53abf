namespace ProcRunner.Tui.Screens;

/// <summary>Kinds of key, whatever the terminal calls them.</summary>
internal enum KeyKind
{
    /// <summary>A character: typed, sent by a gauge, or from the number pad.</summary>
    Character,

    /// <summary>Enter, of the pad too.</summary>
    Enter,

    /// <summary>Backspace.</summary>
    Backspace,

    /// <summary>Escape: one screen back; never loses what was typed.</summary>
    Escape,

    /// <summary>Cursor up.</summary>
    Up,

    /// <summary>Cursor down.</summary>
    Down,

    /// <summary>A page up.</summary>
    PageUp,

    /// <summary>A page down.</summary>
    PageDown,

    /// <summary>Somebody else comes to the machine: F2, from anywhere.</summary>
    Who,

    /// <summary>Pasted text: one entry, however many lines.</summary>
    Paste,
}
