namespace ProcRunner.ShopMath;

/// <summary>How well a process fits its limits (NIST/SEMATECH e-Handbook 6.1.6).</summary>
/// <param name="Cp">(high - low) / 6 sigma; null with one limit.</param>
/// <param name="Upper">(high - mean) / 3 sigma; null without a high limit.</param>
/// <param name="Lower">(mean - low) / 3 sigma; null without a low limit.</param>
/// <param name="OffCentre">k = |middle - mean| / half the zone; null with one limit.</param>
public sealed record Capability(double? Cp, double? Upper, double? Lower, double? OffCentre)
{
    /// <summary>The smaller of the two; with one limit, as for runout, the only one.</summary>
    public double Cpk => Math.Min(Upper ?? double.PositiveInfinity, Lower ?? double.PositiveInfinity);

    /// <summary>Of a mean and a standard deviation; one limit at least.</summary>
    /// <param name="mean">Of the process, finite, in the unit of all the others.</param>
    /// <param name="sigma">Above 0.</param>
    /// <param name="low">Null for none.</param>
    /// <param name="high">Null for none; above low.</param>
    public static ShopResult<Capability> Of(double mean, double sigma, double? low, double? high)
    {
        ShopFault? fault =
            Allowed.Above0("sigma", sigma, "")
            ?? Allowed.Finite("mean", mean, "")
            ?? Allowed.Finite("low", low ?? 0, "")
            ?? Allowed.Finite("high", high ?? 0, "")
            ?? (
                low is null && high is null
                    ? new ShopFault("low", "nothing", "give a low limit, a high limit, or both")
                    : null
            )
            ?? (
                low >= high
                    ? new ShopFault(
                        "low",
                        Allowed.Show(low.Value, ""),
                        $"it must be below {Allowed.Show(high.Value, "")}"
                    )
                    : null
            );
        return fault is not null
            ? fault
            : new Capability(
                (high - low) / (6 * sigma),
                (high - mean) / (3 * sigma),
                (mean - low) / (3 * sigma),
                high is { } top && low is { } bottom
                    ? Math.Abs(((top + bottom) / 2) - mean) / ((top - bottom) / 2)
                    : null
            );
    }
}
