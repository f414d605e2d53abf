namespace ProcRunner.Procedures;

/// <summary>A caution with its signal word (ISO 3864 and ANSI Z535 grade them).</summary>
/// <param name="Word">DANGER, WARNING, CAUTION or NOTICE.</param>
/// <param name="Text">What to mind.</param>
public sealed record Caution(string Word, string Text);
