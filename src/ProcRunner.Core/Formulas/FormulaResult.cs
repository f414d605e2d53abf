namespace ProcRunner.Formulas;

/// <summary>A formula ready to work out, or everything that is wrong with its text.</summary>
public abstract record FormulaResult
{
    private FormulaResult() { }

    /// <summary>The text holds: every name is known and the units balance.</summary>
    /// <param name="Formula">The formula.</param>
    public sealed record Compiled(Formula Formula) : FormulaResult;

    /// <summary>The text does not hold.</summary>
    /// <param name="Problems">All that was found, in the order of the text; at least one.</param>
    public sealed record Refused(IReadOnlyList<FormulaProblem> Problems) : FormulaResult;
}
