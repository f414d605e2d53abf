namespace ProcRunner.Runs;

/// <summary>Where a stage stands.</summary>
public enum StagePhase
{
    /// <summary>Nothing of it has happened.</summary>
    Waiting,

    /// <summary>Begun and not signed.</summary>
    UnderWay,

    /// <summary>Signed over all its results.</summary>
    Signed,

    /// <summary>Signed, and there are results or moves since.</summary>
    Recheck,
}
