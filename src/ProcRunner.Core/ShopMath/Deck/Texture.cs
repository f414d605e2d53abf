using ProcRunner.Quantities;

namespace ProcRunner.ShopMath;

/// <summary>Parameters of a measured profile (ISO 21920-2, earlier ISO 4287), all about its mean line, micrometres.</summary>
/// <param name="RaMicrometres">Mean of the absolute heights.</param>
/// <param name="RqMicrometres">Root of the mean square height.</param>
/// <param name="RtMicrometres">Highest peak to deepest valley.</param>
/// <param name="RzMicrometres">
/// Mean over five sampling lengths, equal parts of the evaluation length, of highest peak to deepest valley within each; null
/// for fewer than two heights in each.
/// </param>
public sealed record Texture(double RaMicrometres, double RqMicrometres, double RtMicrometres, double? RzMicrometres)
{
    private const int SamplingLengths = 5;

    /// <summary>The names a roughness goes by; a figure of one says nothing about another.</summary>
    public static IReadOnlyList<string> Parameters { get; } = ["Ra", "Rq", "Rz", "Rt"];

    /// <summary>Of heights at equal steps along a profile, of one evaluation length, already filtered.</summary>
    /// <param name="heightsMicrometres">At least 2, finite; else a fault.</param>
    public static ShopResult<Texture> Of(IReadOnlyList<double> heightsMicrometres)
    {
        if (heightsMicrometres.Count < 2)
        {
            return new ShopFault(
                "heights",
                FormattableString.Invariant($"{heightsMicrometres.Count} values"),
                "at least 2 heights are needed"
            );
        }

        if (Allowed.Finite("heights", heightsMicrometres, "um") is { } fault)
        {
            return fault;
        }

        double mean = heightsMicrometres.Average();
        return new Texture(
            heightsMicrometres.Average(one => Math.Abs(one - mean)),
            Math.Sqrt(heightsMicrometres.Average(one => (one - mean) * (one - mean))),
            heightsMicrometres.Max() - heightsMicrometres.Min(),
            heightsMicrometres.Count >= 2 * SamplingLengths ? Rz(heightsMicrometres) : null
        );
    }

    private static double Rz(IReadOnlyList<double> heights)
    {
        double sum = 0;
        for (int part = 0; part < SamplingLengths; part++)
        {
            int from = part * heights.Count / SamplingLengths;
            int to = (part + 1) * heights.Count / SamplingLengths;
            double[] within = [.. heights.Skip(from).Take(to - from)];
            sum += within.Max() - within.Min();
        }

        return sum / SamplingLengths;
    }

    /// <summary>
    /// The cut-off to measure a non-periodic Ra with (ISO 4288, ISO 21920-3; from memory); five of them are the evaluation
    /// length. Upper ends belong to the band.
    /// </summary>
    /// <param name="ra">Expected Ra, above 0.02 um, up to 10 um.</param>
    public static ShopResult<Quantity> CutOff(Exact ra)
    {
        Rational micrometres = ra.In(Units.Micrometre);
        (decimal Over, decimal CutOff)[] bands = [(2m, 2.5m), (0.1m, 0.8m), (0.02m, 0.25m)];
        foreach ((decimal over, decimal cutOff) in bands)
        {
            if (micrometres > Rational.FromDecimal(over) && micrometres <= Rational.FromInteger(10))
            {
                return new Quantity(cutOff, Units.Millimetre);
            }
        }

        return new ShopFault("ra", Allowed.Show(ra), "a cut-off is known over 0.02 um and up to 10 um");
    }
}
