namespace ProcRunner.Formulas;

internal enum FormulaComparison
{
    Equal,
    NotEqual,
    Below,
    NotAbove,
    Above,
    NotBelow,
}
