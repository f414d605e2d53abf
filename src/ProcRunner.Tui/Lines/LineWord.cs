namespace ProcRunner.Tui.Lines;

/// <summary>A word of line mode: how it is written and what it does. Help, reading and docs come from <see cref="LineWords"/>.</summary>
/// <param name="Word">The words it begins with.</param>
/// <param name="Form">How it is written.</param>
/// <param name="Does">What it does.</param>
internal sealed record LineWord(string Word, string Form, string Does);
