namespace ProcRunner.Practice.Operators;

/// <summary>How often a reading was judged by its limits, and how often its gauge's error turned the verdict.</summary>
/// <param name="Judged">How often it was judged.</param>
/// <param name="Refused">Read out of its limits.</param>
/// <param name="RefusedInLimits">Of those, in limits in truth: rework for nothing.</param>
/// <param name="PassedOut">Read in its limits and out of them in truth.</param>
public readonly record struct ReadingCount(long Judged, long Refused, long RefusedInLimits, long PassedOut)
{
    /// <summary>Verdicts that the truth would have turned.</summary>
    public long Wrong => RefusedInLimits + PassedOut;

    /// <summary>Both together.</summary>
    public static ReadingCount operator +(ReadingCount a, ReadingCount b) =>
        new(
            a.Judged + b.Judged,
            a.Refused + b.Refused,
            a.RefusedInLimits + b.RefusedInLimits,
            a.PassedOut + b.PassedOut
        );

    /// <summary>Both together.</summary>
    public static ReadingCount Add(ReadingCount a, ReadingCount b) => a + b;
}
