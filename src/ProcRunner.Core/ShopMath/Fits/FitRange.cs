using ProcRunner.Quantities;

namespace ProcRunner.ShopMath;

/// <summary>The range of a fit on the diameter; below 0 is clearance.</summary>
/// <param name="Least">Interference at the loosest.</param>
/// <param name="Most">Interference at the tightest.</param>
public sealed record FitRange(Exact Least, Exact Most)
{
    /// <summary>What kind of fit it is.</summary>
    public FitKind Kind =>
        Least.Value.Sign >= 0 ? FitKind.Interference
        : Most.Value.Sign > 0 ? FitKind.Transition
        : FitKind.Clearance;
}
