namespace ProcRunner.Formulas;

/// <summary>A compiled part of a formula.</summary>
internal delegate FormulaCell FormulaClosure(IFormulaScope scope);
