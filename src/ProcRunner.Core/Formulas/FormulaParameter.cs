namespace ProcRunner.Formulas;

/// <summary>A value that a function takes.</summary>
/// <param name="Name">What it is, in words; also how the shop's calculator asks for it.</param>
/// <param name="Takes">What may stand there.</param>
public sealed record FormulaParameter(string Name, FormulaTakes Takes);
