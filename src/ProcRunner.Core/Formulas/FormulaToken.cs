namespace ProcRunner.Formulas;

/// <summary>The smallest part of a formula, with its place in the text.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Text">A name without brackets, a quoted text without quotes, else as written.</param>
/// <param name="Span">Its place, brackets and quotes included.</param>
internal readonly record struct FormulaToken(FormulaTokenKind Kind, string Text, FormulaSpan Span);
