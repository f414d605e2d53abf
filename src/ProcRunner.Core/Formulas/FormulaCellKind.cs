namespace ProcRunner.Formulas;

/// <summary>What a <see cref="FormulaCell"/> holds.</summary>
internal enum FormulaCellKind
{
    /// <summary>An amount.</summary>
    Amount,

    /// <summary>Yes.</summary>
    Yes,

    /// <summary>No.</summary>
    No,

    /// <summary>A text or a list.</summary>
    Value,

    /// <summary>Nothing yet: a name has no value.</summary>
    Missing,

    /// <summary>Nothing: the numbers have no result.</summary>
    Impossible,
}
