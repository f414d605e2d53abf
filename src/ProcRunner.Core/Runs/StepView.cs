namespace ProcRunner.Runs;

/// <summary>How a step at a position stands in the run as a whole.</summary>
public enum StepView
{
    /// <summary>Not asked for.</summary>
    NotHere,

    /// <summary>Something before it isn't done.</summary>
    Waiting,

    /// <summary>Can be done now.</summary>
    Open,

    /// <summary>Done.</summary>
    Done,

    /// <summary>Its value is stale and a later step will take it again.</summary>
    Later,
}
