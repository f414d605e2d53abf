namespace ProcRunner.ShopMath;

/// <summary>A combined uncertainty of uncorrelated contributions (JCGM 100:2008), in one unit.</summary>
/// <param name="Combined">Combined standard uncertainty u_c.</param>
/// <param name="DegreesOfFreedom">Effective, not cut to a whole number; infinite where no contribution has any.</param>
public sealed record UncertaintyBudget(double Combined, double DegreesOfFreedom)
{
    /// <summary>
    /// u_c = root of the sum of squares (5.1.2); nu = u_c^4 / sum(u_i^4 / nu_i) (Welch-Satterthwaite, G.4.1).
    /// </summary>
    /// <param name="contributions">Each already times its sensitivity, 0 or more; at least one above 0.</param>
    /// <param name="degreesOfFreedom">One for each, at least 1, infinite where it is not known to be less; none for all infinite.</param>
    public static ShopResult<UncertaintyBudget> Of(
        IReadOnlyList<double> contributions,
        IReadOnlyList<double> degreesOfFreedom
    )
    {
        if (degreesOfFreedom.Count > 0 && degreesOfFreedom.Count != contributions.Count)
        {
            return new ShopFault(
                "degrees of freedom",
                FormattableString.Invariant($"{degreesOfFreedom.Count} values"),
                FormattableString.Invariant($"give one for each of the {contributions.Count} contributions")
            );
        }

        if (!contributions.All(one => double.IsFinite(one) && one >= 0) || contributions.All(one => one == 0))
        {
            return new ShopFault(
                "contributions",
                string.Join(' ', contributions.Select(one => Allowed.Show(one, ""))),
                "they must not be below 0, and at least one is above 0"
            );
        }

        if (degreesOfFreedom.Any(one => !(one >= 1)))
        {
            double few = degreesOfFreedom.First(one => !(one >= 1));
            return new ShopFault("degrees of freedom", Allowed.Show(few, ""), "they must be at least 1");
        }

        // About the largest, so that no square runs out of a double's range.
        double largest = contributions.Max();
        double combined = largest * Math.Sqrt(contributions.Sum(one => one / largest * (one / largest)));
        double sum = contributions.Zip(degreesOfFreedom, (one, nu) => Math.Pow(one / combined, 4) / nu).Sum();
        return new UncertaintyBudget(combined, sum > 0 ? 1 / sum : double.PositiveInfinity);
    }

    /// <summary>
    /// The coverage factor for the effective degrees of freedom, cut to a whole number as JCGM 100 G.4.1 says.
    /// </summary>
    /// <param name="coverage">Between 0 and 1, neither end; else a fault.</param>
    public ShopResult<double> CoverageFactor(double coverage) =>
        Distributions.CoverageFactor(coverage, Math.Floor(DegreesOfFreedom));
}
