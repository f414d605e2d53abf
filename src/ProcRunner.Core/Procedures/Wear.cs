namespace ProcRunner.Procedures;

/// <summary>Which way a part's size goes as it wears.</summary>
public enum Wear
{
    /// <summary>Not said.</summary>
    NotSaid,

    /// <summary>A stem, a margin: it gets smaller.</summary>
    Smaller,

    /// <summary>A bore, a recession: it gets larger.</summary>
    Larger,
}
