namespace ProcRunner.Tui.Screens.Parts;

/// <summary>What a line of a form takes.</summary>
internal enum FieldKind
{
    /// <summary>Words; where there are stock answers, a number chooses one of them.</summary>
    Words,

    /// <summary>One of the choices, by its number.</summary>
    Choice,

    /// <summary>A PIN: shown as asterisks, and forgotten when the form is left.</summary>
    Pin,
}
