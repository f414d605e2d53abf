namespace ProcRunner.Formulas;

/// <summary>What came of working a formula out. It is always one of these; nothing is thrown.</summary>
public abstract record FormulaOutcome
{
    private FormulaOutcome() { }

    /// <summary>The result.</summary>
    /// <param name="Value">Of the formula's <see cref="Formula.Type"/>.</param>
    public sealed record Known(FormulaValue Value) : FormulaOutcome;

    /// <summary>A name that the formula needs has no value yet.</summary>
    /// <param name="Name">The first such name met, without brackets.</param>
    public sealed record Missing(string Name) : FormulaOutcome;

    /// <summary>The numbers given have no result: division by zero, root of a negative, a tangent at 90 deg, too large.</summary>
    /// <param name="Why">A clause for a person, without a full stop.</param>
    public sealed record Impossible(string Why) : FormulaOutcome;
}
