namespace ProcRunner.Procedures;

/// <summary>What of several places of one reading is the value that later steps read.</summary>
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
}
