namespace ProcRunner.ShopMath;

/// <summary>The normal and Student's distribution.</summary>
public static class Distributions
{
    private const int MostHalvings = 200;

    /// <summary>Probability that a standard normal value is at most z.</summary>
    public static double Normal(double z) => SpecialFunctions.ErrorComplement(-z / Math.Sqrt(2)) / 2;

    /// <summary>Density of the standard normal distribution.</summary>
    public static double NormalDensity(double z) => Math.Exp(-z * z / 2) / Math.Sqrt(2 * Math.PI);

    /// <summary>The z that a standard normal value stays at or below with a probability: the inverse of <see cref="Normal"/>.</summary>
    /// <param name="probability">Between 0 and 1, neither end; else a fault.</param>
    public static ShopResult<double> NormalQuantile(double probability) =>
        probability is > 0 and < 1
            ? Find(Normal, probability, 40)
            : new ShopFault("probability", Allowed.Show(probability, ""), "it must lie between 0 and 1 (0 and 100 %)");

    /// <summary>Probability that a value of Student's distribution is at most t.</summary>
    /// <param name="t">The value.</param>
    /// <param name="degreesOfFreedom">Above 0; need not be whole, infinite gives the normal distribution.</param>
    public static double Student(double t, double degreesOfFreedom)
    {
        if (double.IsPositiveInfinity(degreesOfFreedom))
        {
            return Normal(t);
        }

        double tail =
            SpecialFunctions.IncompleteBeta(degreesOfFreedom / (degreesOfFreedom + (t * t)), degreesOfFreedom / 2, 0.5)
            / 2;
        return t > 0 ? 1 - tail : tail;
    }

    /// <summary>
    /// The coverage factor k: a value of Student's distribution lies within -k and k with a probability (JCGM 100, Table G.2).
    /// </summary>
    /// <param name="coverage">Between 0 and 1.</param>
    /// <param name="degreesOfFreedom">At least 1; infinite gives the normal distribution.</param>
    public static ShopResult<double> CoverageFactor(double coverage, double degreesOfFreedom) =>
        coverage is not (> 0 and < 1)
            ? new ShopFault("coverage", Allowed.Show(coverage, ""), "it must lie between 0 and 1 (0 and 100 %)")
        : degreesOfFreedom >= 1 ? Find(t => Student(t, degreesOfFreedom), (1 + coverage) / 2, 1e6)
        : new ShopFault("degrees of freedom", Allowed.Show(degreesOfFreedom, ""), "they must be at least 1");

    /// <summary>Probability that a value of Fisher's F distribution is above f, 0 or more.</summary>
    internal static double FisherTail(double f, double above, double below) =>
        SpecialFunctions.IncompleteBeta(below / (below + (above * f)), below / 2, above / 2);

    // By halving, to the last digit.
    private static double Find(Func<double, double> distribution, double probability, double farthest)
    {
        (double low, double high) = (-farthest, farthest);
        for (int i = 0; i < MostHalvings; i++)
        {
            double middle = low + ((high - low) / 2);
            (low, high) = distribution(middle) < probability ? (middle, high) : (low, middle);
        }

        return low + ((high - low) / 2);
    }
}
