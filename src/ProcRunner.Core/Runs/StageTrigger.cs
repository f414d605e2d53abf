namespace ProcRunner.Runs;

/// <summary>What happens to a stage.</summary>
public enum StageTrigger
{
    /// <summary>A result in it.</summary>
    Result,

    /// <summary>Its sign-off.</summary>
    Sign,

    /// <summary>A value of it goes stale.</summary>
    GoStale,
}
