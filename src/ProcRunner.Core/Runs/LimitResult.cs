namespace ProcRunner.Runs;

/// <summary>What came of looking for limits: the limits, or why there are none yet and what to do.</summary>
internal abstract record LimitResult
{
    private LimitResult() { }

    public sealed record Found(Limits Limits) : LimitResult;

    /// <summary>The figures aren't known: rule of the limit that somebody must choose.</summary>
    public sealed record Unknown(string Name, string Why) : LimitResult;

    /// <summary>A formula needs what hasn't been taken, or has gone stale.</summary>
    public sealed record NotYet(string Why) : LimitResult;
}
