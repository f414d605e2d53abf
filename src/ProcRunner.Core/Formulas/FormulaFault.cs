namespace ProcRunner.Formulas;

/// <summary>What kind of mistake a formula holds.</summary>
public enum FormulaFault
{
    /// <summary>Longer or deeper than a formula may be.</summary>
    TooLarge,

    /// <summary>Not a formula: something is missing, left over or out of place.</summary>
    Unreadable,

    /// <summary>A sign or word that other languages have and this one leaves out on purpose.</summary>
    LeftOut,

    /// <summary>A name that isn't known where the formula stands.</summary>
    UnknownName,

    /// <summary>A function that isn't in the table.</summary>
    UnknownFunction,

    /// <summary>A function with too few or too many values, or one it can't take.</summary>
    Arguments,

    /// <summary>Units that don't go together, or a number without its unit.</summary>
    Units,

    /// <summary>A quantity, a yes or no, or a text where another of the three is needed.</summary>
    Kind,
}
