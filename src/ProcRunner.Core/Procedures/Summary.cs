namespace ProcRunner.Procedures;

/// <summary>What formulas read over several positions.</summary>
public enum Summary
{
    /// <summary>The largest.</summary>
    Largest,

    /// <summary>The smallest.</summary>
    Smallest,

    /// <summary>The arithmetic mean.</summary>
    Mean,

    /// <summary>The middle one; of an even number the mean of the middle two.</summary>
    Median,

    /// <summary>Largest less smallest.</summary>
    Spread,

    /// <summary>How many positions have a value.</summary>
    Count,
}
