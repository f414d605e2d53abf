namespace ProcRunner.ShopMath;

/// <summary>Middle and three-sigma limits of a chart of values and of the chart of ranges beside it, in the readings' unit.</summary>
/// <param name="Mean">Middle of the values.</param>
/// <param name="Low">Lower limit of the values.</param>
/// <param name="High">Upper limit of the values.</param>
/// <param name="MeanRange">Middle of the ranges.</param>
/// <param name="RangeLow">Lower limit of the ranges.</param>
/// <param name="RangeHigh">Upper limit of the ranges.</param>
/// <param name="Sigma">Mean range / d2.</param>
public sealed record ControlLimits(
    double Mean,
    double Low,
    double High,
    double MeanRange,
    double RangeLow,
    double RangeHigh,
    double Sigma
)
{
    /// <summary>Individuals and moving ranges of two: mean +- 3 x mean moving range / 1.128 (NIST/SEMATECH e-Handbook 6.3.2.2).</summary>
    /// <param name="readings">In the order they were taken, finite, at least 2.</param>
    public static ShopResult<ControlLimits> OfIndividuals(IReadOnlyList<double> readings)
    {
        if (readings.Count < 2)
        {
            return Univariate.TooFew(readings.Count, 2);
        }

        if (Allowed.Finite("readings", readings, "") is { } fault)
        {
            return fault;
        }

        ChartConstants two = ChartConstants.All[0];
        double mean = readings.Average();
        double range = readings.Zip(readings.Skip(1), (one, next) => Math.Abs(next - one)).Average();
        double sigma = range / two.D2;
        return new ControlLimits(
            mean,
            mean - (3 * sigma),
            mean + (3 * sigma),
            range,
            two.RangeLow * range,
            two.RangeHigh * range,
            sigma
        );
    }

    /// <summary>Means and ranges of subgroups: mean +- A2 x mean range, D3 and D4 x mean range.</summary>
    /// <param name="means">One for each subgroup.</param>
    /// <param name="ranges">One for each subgroup, not below 0.</param>
    /// <param name="size">Readings in a subgroup, 2 to 10.</param>
    public static ShopResult<ControlLimits> OfSubgroups(
        IReadOnlyList<double> means,
        IReadOnlyList<double> ranges,
        double size
    ) =>
        means.Count != ranges.Count || means.Count == 0
            ? new ShopFault(
                "ranges",
                FormattableString.Invariant($"{ranges.Count} values"),
                FormattableString.Invariant($"give one for each of {means.Count} means")
            )
        : (Allowed.Finite("means", means, "") ?? NotBelow0("ranges", ranges)) is { } fault ? fault
        : ChartConstants
            .Of(size)
            .Then<ControlLimits>(factors =>
            {
                double mean = means.Average();
                double range = ranges.Average();
                return new ControlLimits(
                    mean,
                    mean - (factors.A2 * range),
                    mean + (factors.A2 * range),
                    range,
                    factors.RangeLow * range,
                    factors.RangeHigh * range,
                    range / factors.D2
                );
            });

    // A range is largest less smallest.
    private static ShopFault? NotBelow0(string argument, IReadOnlyList<double> all) =>
        all.Select(one => AllowedAngles.NotBelow0(argument, one, "")).FirstOrDefault(one => one is not null);
}
