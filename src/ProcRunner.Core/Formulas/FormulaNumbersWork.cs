using ProcRunner.Quantities;

namespace ProcRunner.Formulas;

/// <summary>Works a function's result out from its numbers in base units.</summary>
internal delegate FormulaNumber FormulaNumbersWork(ReadOnlySpan<Rational> all);
