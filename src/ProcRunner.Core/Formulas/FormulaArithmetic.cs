namespace ProcRunner.Formulas;

internal enum FormulaArithmetic
{
    Plus,
    Minus,
    Times,
    Over,
}
