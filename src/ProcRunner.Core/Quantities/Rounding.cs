namespace ProcRunner.Quantities;

/// <summary>Which way a number goes when digits are cut. There is no default: whoever rounds says which way.</summary>
public enum Rounding
{
    /// <summary>To the nearest; a half goes away from zero, as on paper.</summary>
    Nearest,

    /// <summary>Toward negative infinity.</summary>
    Down,

    /// <summary>Toward positive infinity.</summary>
    Up,

    /// <summary>Toward zero: digits are dropped.</summary>
    TowardZero,

    /// <summary>Away from zero.</summary>
    AwayFromZero,
}
