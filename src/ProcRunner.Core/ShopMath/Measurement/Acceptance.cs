using ProcRunner.Quantities;

namespace ProcRunner.ShopMath;

/// <summary>Decisions on measured values, exact.</summary>
public static class Acceptance
{
    /// <summary>
    /// ISO 14253-1: conformity is proved from low + U to high - U, non-conformity outside low - U and high + U; between, neither.
    /// </summary>
    /// <param name="value">Measured.</param>
    /// <param name="tolerance">The zone.</param>
    /// <param name="uncertainty">Expanded uncertainty U, 0 or more.</param>
    public static ShopResult<Conformity> Prove(Exact value, Tolerance tolerance, Exact uncertainty)
    {
        if (Allowed.NotBelow0("uncertainty", uncertainty) is { } fault)
        {
            return fault;
        }

        bool isBelow = tolerance.Low is { } low && value.CompareTo(low - uncertainty) < 0;
        bool isAbove = tolerance.High is { } high && value.CompareTo(high + uncertainty) > 0;
        return isBelow || isAbove ? Conformity.Disproved
            : tolerance.Guarded(uncertainty)?.Holds(value) == true ? Conformity.Proved
            : Conformity.NotDecided;
    }

    /// <summary>
    /// How often the uncertainty interval fits the zone: (high - low) / (2 U) (ASME B89.7.3.1, N:1 rule).
    /// </summary>
    /// <param name="low">Least allowed.</param>
    /// <param name="high">Most allowed, above low.</param>
    /// <param name="uncertainty">Expanded uncertainty U, above 0.</param>
    public static ShopResult<Rational> Ratio(Exact low, Exact high, Exact uncertainty) =>
        (Allowed.Below("low", low, "high limit", high) ?? Allowed.Above0("uncertainty", uncertainty)) is { } fault
            ? fault
            : (high - low).Value / (Rational.FromInteger(2) * uncertainty.Value);

    /// <summary>The largest expanded uncertainty that an N:1 rule allows: (high - low) / (2 N) (ASME B89.7.3.1).</summary>
    /// <param name="low">Least allowed, of the kind of <paramref name="high"/>.</param>
    /// <param name="high">Most allowed, above low.</param>
    /// <param name="atLeast">N, above 0.</param>
    public static ShopResult<Exact> MostUncertainty(Exact low, Exact high, Rational atLeast) =>
        (Allowed.Below("low", low, "high limit", high) ?? Allowed.Above0("ratio", new Exact(atLeast, Dimension.None)))
            is { } fault
            ? fault
            : Heights.Scaled(high - low, Rational.One / (Rational.FromInteger(2) * atLeast));
}
