namespace ProcRunner.Procedures;

/// <summary>What is taken of several values: of the places of one reading, or of one reading over positions.</summary>
public enum Statistic
{
    /// <summary>The largest; of a depth, the deepest.</summary>
    Largest,

    /// <summary>The smallest; of a depth, the shallowest.</summary>
    Smallest,

    /// <summary>The arithmetic mean.</summary>
    Mean,

    /// <summary>Largest less smallest.</summary>
    Spread,

    /// <summary>The middle one; of an even number the mean of the middle two. Over positions only.</summary>
    Median,

    /// <summary>How many there are, a pure number. Over positions only.</summary>
    Count,
}
