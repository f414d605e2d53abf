namespace ProcRunner.Runs;

/// <summary>How a value stands against its limits.</summary>
public enum Verdict
{
    /// <summary>There is nothing to judge it by.</summary>
    Unjudged,

    /// <summary>Within limits; exactly on one counts.</summary>
    In,

    /// <summary>Out of limits.</summary>
    Out,

    /// <summary>A cut that hasn't come to its aim yet: more metal is to go, nothing is wrong.</summary>
    Short,
}
