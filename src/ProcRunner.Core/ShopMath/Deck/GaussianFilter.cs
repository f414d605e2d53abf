namespace ProcRunner.ShopMath;

/// <summary>
/// The Gaussian profile filter (ISO 16610-21): the mean line is the profile weighted with
/// exp(-pi (x / (a cut-off))^2) / (a cut-off), a = sqrt(ln 2 / pi), which lets a wave as long as the cut-off through by half;
/// roughness is what the mean line leaves.
/// </summary>
public static class GaussianFilter
{
    private static readonly double Alpha = Math.Sqrt(Math.Log(2) / Math.PI);

    /// <summary>The roughness of heights at equal steps; half a cut-off is dropped at each end, where the weights reach over it.</summary>
    /// <param name="heightsMicrometres">Finite.</param>
    /// <param name="spacingMillimetres">From one height to the next, above 0, at most a fifth of the cut-off.</param>
    /// <param name="cutOffMillimetres">Above 0.</param>
    public static ShopResult<IReadOnlyList<double>> Roughness(
        IReadOnlyList<double> heightsMicrometres,
        double spacingMillimetres,
        double cutOffMillimetres
    )
    {
        ShopFault? fault =
            Allowed.Above0("cut off", cutOffMillimetres, "mm")
            ?? Allowed.Above0("spacing", spacingMillimetres, "mm")
            ?? Allowed.Within("spacing", spacingMillimetres, 0, cutOffMillimetres / 5, "mm")
            ?? Allowed.Finite("heights", heightsMicrometres, "um");
        if (fault is not null)
        {
            return fault;
        }

        // Past one cut-off the weights are below a millionth of the middle one.
        int reach = (int)Math.Min(heightsMicrometres.Count, Math.Ceiling(cutOffMillimetres / spacingMillimetres));
        int dropped = (int)Math.Min(heightsMicrometres.Count, Math.Ceiling(cutOffMillimetres / spacingMillimetres / 2));
        if (heightsMicrometres.Count - (2 * dropped) < 2)
        {
            return new ShopFault(
                "heights",
                FormattableString.Invariant($"{heightsMicrometres.Count} values"),
                FormattableString.Invariant(
                    $"more than {(2 * dropped) + 1} are needed: half a cut-off is dropped at each end"
                )
            );
        }

        double[] weights =
        [
            .. Enumerable.Range(0, reach + 1).Select(i => Weight(i * spacingMillimetres / cutOffMillimetres)),
        ];
        double[] rough = new double[heightsMicrometres.Count - (2 * dropped)];
        for (int i = 0; i < rough.Length; i++)
        {
            rough[i] = heightsMicrometres[i + dropped] - Mean(heightsMicrometres, weights, i + dropped);
        }

        return rough;
    }

    private static double Weight(double cutOffs) => Math.Exp(-Math.PI * cutOffs * cutOffs / (Alpha * Alpha));

    // At the ends the weights of what is there count for the whole.
    private static double Mean(IReadOnlyList<double> heights, double[] weights, int middle)
    {
        double sum = 0;
        double whole = 0;
        int last = Math.Min(heights.Count - 1, middle + weights.Length - 1);
        for (int i = Math.Max(0, middle - weights.Length + 1); i <= last; i++)
        {
            double weight = weights[Math.Abs(i - middle)];
            sum += weight * heights[i];
            whole += weight;
        }

        return sum / whole;
    }
}
