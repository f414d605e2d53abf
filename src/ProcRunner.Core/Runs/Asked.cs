namespace ProcRunner.Runs;

/// <summary>Whether a step is asked for at a position.</summary>
public enum Asked
{
    /// <summary>It is.</summary>
    Yes,

    /// <summary>Its condition doesn't hold here.</summary>
    NotHere,

    /// <summary>The head spec forbids this work.</summary>
    Forbidden,
}
