namespace ProcRunner.Formulas;

/// <summary>A compiled part of a formula.</summary>
internal delegate FormulaOutcome FormulaClosure(IFormulaScope scope);
