using ProcRunner.Quantities;

namespace ProcRunner.ShopMath;

/// <summary>Limits of a size as deviations from its nominal.</summary>
/// <param name="Nominal">The nominal size.</param>
/// <param name="Lower">Smallest size - nominal.</param>
/// <param name="Upper">Largest size - nominal.</param>
public sealed record SizeLimits(Exact Nominal, Exact Lower, Exact Upper)
{
    /// <summary>The smallest size allowed.</summary>
    public Exact Smallest => Nominal + Lower;

    /// <summary>The largest size allowed.</summary>
    public Exact Largest => Nominal + Upper;
}
