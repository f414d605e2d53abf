namespace ProcRunner.Formulas;

/// <summary>How a function's result is worked out.</summary>
internal abstract record FormulaWork
{
    private FormulaWork() { }

    /// <summary>From its numbers in base units, all of them known.</summary>
    internal sealed record Numbers(FormulaNumbersWork Of) : FormulaWork;

    /// <summary>From its values, each looked at only when asked for.</summary>
    internal sealed record Lazy(Func<IReadOnlyList<FormulaClosure>, IFormulaScope, FormulaCell> Of) : FormulaWork;
}
