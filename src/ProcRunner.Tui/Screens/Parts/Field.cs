namespace ProcRunner.Tui.Screens.Parts;

/// <summary>A line of a form.</summary>
/// <param name="label">What it asks for, in a word or two.</param>
/// <param name="kind">What it takes.</param>
internal sealed class Field(string label, FieldKind kind = FieldKind.Words)
{
    /// <summary>What it asks for.</summary>
    public string Label { get; } = label;

    /// <summary>What it takes.</summary>
    public FieldKind Kind { get; } = kind;

    /// <summary>What to know about it.</summary>
    public Func<string> Hint { get; init; } = static () => "";

    /// <summary>What Enter alone takes; empty when something must be entered.</summary>
    public Func<string> Proposed { get; init; } = static () => "";

    /// <summary>The choices or stock answers, as they are now.</summary>
    public Func<IReadOnlyList<string>> Choices { get; init; } = static () => [];

    /// <summary>What is wrong with a value, or null.</summary>
    public Func<string, string?> Fault { get; init; } = static _ => null;

    /// <summary>True when Enter alone may leave it empty.</summary>
    public bool MayBeEmpty { get; init; }

    /// <summary>False when it isn't asked for, given what was entered before.</summary>
    public Func<bool> IsAsked { get; init; } = static () => true;

    /// <summary>What was taken; null before.</summary>
    public string? Value { get; set; }

    /// <summary>What was taken, as text.</summary>
    public string Text => Value ?? "";

    /// <summary>What was typed and not taken yet, when the form was turned back.</summary>
    public string Draft { get; set; } = "";

    /// <summary>Where the choice taken stands among the choices; -1 before.</summary>
    public int Index => Value is null ? -1 : Choices().ToList().IndexOf(Value);
}
