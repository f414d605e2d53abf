using ProcRunner.Quantities;

namespace ProcRunner.Runs;

/// <summary>The limits a reading is judged by, worked out for one position at one moment.</summary>
/// <param name="Low">Least value that passes, exact, or null.</param>
/// <param name="Aim">Value worked to, or null.</param>
/// <param name="High">Greatest value that passes, or null.</param>
/// <param name="Origin">Who says so, in words; empty when there is no limit.</param>
internal sealed record Limits(Exact? Low, Exact? Aim, Exact? High, string Origin)
{
    public static Limits None { get; } = new(null, null, null, "");
}
