namespace ProcRunner.Formulas;

internal enum FormulaTokenKind
{
    /// <summary>A number without a unit.</summary>
    Number,

    /// <summary>A text in quotes.</summary>
    Quoted,

    /// <summary>A name in brackets.</summary>
    Name,

    /// <summary><c>yes</c> or <c>no</c>.</summary>
    Truth,

    /// <summary>A function's name, an opening parenthesis behind it.</summary>
    Function,

    /// <summary>The name of a value of a calculation of the shop, with its colon.</summary>
    Label,

    /// <summary>An operator that stands between two values.</summary>
    Between,

    /// <summary>An operator that stands before a value; a sign that may be either is told apart by <see cref="FormulaShape"/>.</summary>
    Before,

    /// <summary>Opening parenthesis.</summary>
    Open,

    /// <summary>Closing parenthesis.</summary>
    Close,

    /// <summary>Comma.</summary>
    Comma,
}
