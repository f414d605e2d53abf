using ProcRunner.Quantities;

namespace ProcRunner.Formulas;

/// <summary>The values of the names at one moment of a job.</summary>
public interface IFormulaScope
{
    /// <summary>The value of a name, of the type that <see cref="IFormulaNames.TypeOf"/> promised; null if not known yet.</summary>
    FormulaValue? ValueOf(string name);

    /// <summary>The value of a name that is a quantity, as <see cref="ValueOf"/> gives it, without an object made for it; null for any other.</summary>
    Exact? AmountOf(string name) => (ValueOf(name) as FormulaValue.Amount)?.Value;

    /// <summary>The value as it was entered, with its unit, for showing; null if there is no such text.</summary>
    string? TextOf(string name);
}
