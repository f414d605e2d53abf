namespace ProcRunner.Formulas;

/// <summary>A use of a function with its result; every one is worked out by a test.</summary>
/// <param name="Formula">A formula without names.</param>
/// <param name="Result">A quantity, rounded to the places shown; or <c>yes</c> or <c>no</c>.</param>
public sealed record FormulaExample(string Formula, string Result);
