namespace ProcRunner.ShopMath;

/// <summary>Exponentially weighted moving averages with their limits (NIST/SEMATECH e-Handbook 6.3.2.4).</summary>
/// <param name="Values">One for each reading.</param>
/// <param name="Low">Lower limit, once settled.</param>
/// <param name="High">Upper limit, once settled.</param>
public sealed record Ewma(IReadOnlyList<double> Values, double Low, double High)
{
    /// <summary>
    /// Next = weight x reading + (1 - weight) x last; limits start +- 3 sigma x sqrt(weight / (2 - weight)).
    /// </summary>
    /// <param name="readings">In order, at least 1.</param>
    /// <param name="weight">Above 0, up to 1.</param>
    /// <param name="start">The target, or the mean of earlier readings.</param>
    /// <param name="sigma">Standard deviation of earlier readings, above 0.</param>
    public static ShopResult<Ewma> Of(IReadOnlyList<double> readings, double weight, double start, double sigma)
    {
        ShopFault? fault =
            (
                weight is > 0 and <= 1
                    ? null
                    : new ShopFault("weight", Allowed.Show(weight, ""), "it must be above 0 and at most 1")
            )
            ?? Allowed.Above0("sigma", sigma, "")
            ?? Allowed.Finite("start", start, "")
            ?? Allowed.Finite("readings", readings, "")
            ?? (readings.Count > 0 ? null : Univariate.TooFew(0, 1));
        if (fault is not null)
        {
            return fault;
        }

        double last = start;
        List<double> values = [];
        foreach (double reading in readings)
        {
            last = (weight * reading) + ((1 - weight) * last);
            values.Add(last);
        }

        double reach = 3 * sigma * Math.Sqrt(weight / (2 - weight));
        return new Ewma(values, start - reach, start + reach);
    }
}
