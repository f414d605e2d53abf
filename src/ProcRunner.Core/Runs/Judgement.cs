using ProcRunner.Quantities;

namespace ProcRunner.Runs;

/// <summary>What a value was judged against, and how it came out. Kept as it was on the day.</summary>
/// <param name="Verdict">How it came out.</param>
/// <param name="Low">Low limit, shift included, or null.</param>
/// <param name="Aim">Aim, shift included, or null.</param>
/// <param name="High">High limit, shift included, or null.</param>
/// <param name="Origin">Who the limit comes from, in words.</param>
/// <param name="Detail">What is wrong, in words; empty when nothing is.</param>
public sealed record Judgement(
    Verdict Verdict,
    Quantity? Low,
    Quantity? Aim,
    Quantity? High,
    string Origin,
    string Detail
)
{
    /// <summary>Nothing to judge by.</summary>
    public static Judgement None { get; } = new(Verdict.Unjudged, null, null, null, "", "");
}
