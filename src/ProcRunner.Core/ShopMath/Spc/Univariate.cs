using ProcRunner.Quantities;

namespace ProcRunner.ShopMath;

/// <summary>Mean, spread and self-likeness of readings in the order they were taken.</summary>
/// <param name="Count">How many.</param>
/// <param name="Mean">Arithmetic mean.</param>
/// <param name="Deviation">Standard deviation, n - 1.</param>
/// <param name="Lag1">Autocorrelation of neighbours; 0 where all readings are the same.</param>
public sealed record Univariate(int Count, double Mean, double Deviation, double Lag1)
{
    /// <summary>
    /// The mean and every deviation from it are exact ratios of integers before a double is made of them, so that readings that
    /// agree in many leading digits lose none: unlike the one-pass formula, which has no digit left on such data.
    /// </summary>
    /// <param name="readings">At least 2.</param>
    public static ShopResult<Univariate> Of(IReadOnlyList<Rational> readings)
    {
        if (readings.Count < 2)
        {
            return TooFew(readings.Count, 2);
        }

        Rational mean =
            readings.Aggregate(Rational.Zero, (sum, one) => sum + one) / Rational.FromInteger(readings.Count);
        double[] off = [.. readings.Select(one => (one - mean).ToDouble())];
        double squares = off.Sum(one => one * one);
        double neighbours = off.Zip(off.Skip(1), (one, next) => one * next).Sum();
        return new Univariate(
            readings.Count,
            mean.ToDouble(),
            Math.Sqrt(squares / (readings.Count - 1)),
            squares > 0 ? neighbours / squares : 0
        );
    }

    internal static ShopFault TooFew(int count, int least) =>
        new(
            "readings",
            FormattableString.Invariant($"{count} values"),
            FormattableString.Invariant($"at least {least} readings are needed")
        );
}
