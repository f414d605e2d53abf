namespace ProcRunner.ShopMath;

/// <summary>How probable it is that a thing conforms (JCGM 106:2012), all amounts in one unit.</summary>
public static class ConformanceProbability
{
    private const int Panels = 2000;
    private const double Reach = 9;

    /// <summary>
    /// Of one thing measured, its value normally distributed about the reading: Phi((high - y) / u) - Phi((low - y) / u) (7.4).
    /// A fault where both limits are missing, low is not below high, or a value is no finite number.
    /// </summary>
    /// <param name="reading">y, finite.</param>
    /// <param name="standardUncertainty">u, above 0.</param>
    /// <param name="low">Negative infinity for none.</param>
    /// <param name="high">Positive infinity for none.</param>
    public static ShopResult<double> Of(double reading, double standardUncertainty, double low, double high)
    {
        ShopFault? fault =
            Unusable("uncertainty", standardUncertainty, low, high)
            ?? Allowed.Finite("value", reading, "")
            ?? (
                double.IsFinite(low) || double.IsFinite(high)
                    ? null
                    : new ShopFault("low", "nothing", "give a low limit, a high limit, or both")
            );
        if (fault is not null)
        {
            return fault;
        }

        double below = (low - reading) / standardUncertainty;
        double above = (high - reading) / standardUncertainty;

        // On the far side of the mean the complements are subtracted, so that a small probability keeps its digits.
        return below > 0
            ? Distributions.Normal(-below) - Distributions.Normal(-above)
            : Distributions.Normal(above) - Distributions.Normal(below);
    }

    /// <summary>
    /// Over many things that are made and measured alike: the part that conforms, the global consumer's risk (bad and accepted)
    /// and the global producer's risk (good and rejected), 9.5. Values and measurements normally distributed; by integration.
    /// </summary>
    /// <param name="mean">Of what is made.</param>
    /// <param name="spread">Standard deviation of what is made, above 0.</param>
    /// <param name="standardUncertainty">Of a measurement, above 0.</param>
    /// <param name="low">Low tolerance limit.</param>
    /// <param name="high">High tolerance limit.</param>
    /// <param name="acceptLow">Least reading accepted.</param>
    /// <param name="acceptHigh">Most reading accepted.</param>
    public static ShopResult<Risks> Global(
        double mean,
        double spread,
        double standardUncertainty,
        double low,
        double high,
        double acceptLow,
        double acceptHigh
    )
    {
        ShopFault? fault =
            Unusable("spread", spread, low, high)
            ?? Allowed.Finite("mean", mean, "")
            ?? Allowed.Finite("low", low, "")
            ?? Allowed.Finite("high", high, "")
            ?? Allowed.Finite("accept low", acceptLow, "")
            ?? Allowed.Finite("accept high", acceptHigh, "")
            ?? Unusable("uncertainty", standardUncertainty, acceptLow, acceptHigh);
        if (fault is not null)
        {
            return fault;
        }

        double Accepted(double value) =>
            Distributions.Normal((acceptHigh - value) / standardUncertainty)
            - Distributions.Normal((acceptLow - value) / standardUncertainty);
        double Made(double value) => Distributions.NormalDensity((value - mean) / spread) / spread;
        (double least, double most) = (mean - (Reach * spread), mean + (Reach * spread));
        double from = Math.Clamp(low, least, most);
        double to = Math.Clamp(high, least, most);
        double[] ends = [acceptLow, acceptHigh];
        double consumer =
            Integral(one => Made(one) * Accepted(one), least, from, ends, standardUncertainty)
            + Integral(one => Made(one) * Accepted(one), to, most, ends, standardUncertainty);
        double producer = Integral(one => Made(one) * (1 - Accepted(one)), from, to, ends, standardUncertainty);
        return Of(mean, spread, low, high).Then<Risks>(conforming => new Risks(conforming, consumer, producer));
    }

    // Within reach of an end of acceptance the integrand changes as fast as the gauge is fine: these parts are summed apart.
    private static double Integral(
        Func<double, double> height,
        double from,
        double to,
        double[] ends,
        double standardUncertainty
    )
    {
        double[] cuts =
        [
            from,
            .. ends.SelectMany(end =>
                    new[] { end - (Reach * standardUncertainty), end + (Reach * standardUncertainty) }
                )
                .Where(cut => cut > from && cut < to)
                .Order(),
            to,
        ];
        return cuts.Zip(cuts.Skip(1), (start, end) => Integral(height, start, end)).Sum();
    }

    // Simpson's rule; the integrands are smooth, so that it is good to about 12 digits.
    private static double Integral(Func<double, double> height, double from, double to)
    {
        double step = (to - from) / (2 * Panels);
        double sum = height(from) + height(to);
        for (int i = 1; i < 2 * Panels; i++)
        {
            sum += height(from + (i * step)) * (i % 2 == 0 ? 2 : 4);
        }

        return sum * step / 3;
    }

    private static ShopFault? Unusable(string argument, double standardDeviation, double low, double high) =>
        Allowed.Above0(argument, standardDeviation, "")
        ?? (
            low < high
                ? null
                : new ShopFault("low", Allowed.Show(low, ""), $"it must be below {Allowed.Show(high, "")}")
        );
}
