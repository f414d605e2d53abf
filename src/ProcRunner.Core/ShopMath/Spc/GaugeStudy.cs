namespace ProcRunner.ShopMath;

/// <summary>Where the spread of readings comes from; standard deviations in the readings' unit.</summary>
/// <param name="Equipment">EV: one person, one part, again and again.</param>
/// <param name="Appraiser">AV: between people, with interaction where it is kept.</param>
/// <param name="Part">PV: between parts.</param>
public sealed record GaugeStudy(double Equipment, double Appraiser, double Part)
{
    /// <summary>The gauge as a whole: root of EV and AV squared.</summary>
    public double Gauge => Math.Sqrt((Equipment * Equipment) + (Appraiser * Appraiser));

    /// <summary>All spread: root of gauge and part squared.</summary>
    public double Total => Math.Sqrt((Gauge * Gauge) + (Part * Part));

    /// <summary>Gauge as a part of all spread.</summary>
    public double GaugeShare => Gauge / Total;

    /// <summary>How many classes of parts the gauge tells apart: 1.41 x PV / gauge, not cut to a whole number.</summary>
    public double Categories => 1.41 * Part / Gauge;

    // 1 / d2* of the AIAG manual, by how many values the range is of: 2 and 3 trials or appraisers, 2 to 10 parts (from memory
    // but for 0.5908, 0.5231, 0.3146, which are published with the worked example).
    private static readonly double[] Trials = [0.8862, 0.5908];
    private static readonly double[] Ranges = [0.7071, 0.5231, 0.4467, 0.4030, 0.3742, 0.3534, 0.3375, 0.3249, 0.3146];

    /// <summary>
    /// Average-and-range method (AIAG Measurement Systems Analysis): EV = mean range x K1, AV = root of (difference of appraisers x
    /// K2)^2 - EV^2 / (parts x trials), PV = range of parts x K3.
    /// </summary>
    /// <param name="readings">2 or 3 trials, 2 or 3 appraisers, 2 to 10 parts.</param>
    public static ShopResult<GaugeStudy> ByRange(GaugeReadings readings)
    {
        ShopFault? fault =
            UpTo("trials", readings.Trials, 3)
            ?? UpTo("appraisers", readings.Appraisers, 3)
            ?? UpTo("parts", readings.Parts, 10);
        if (fault is not null)
        {
            return fault;
        }

        double equipment = MeanRange(readings) * Trials[readings.Trials - 2];
        double appraisers = Spread(readings.Appraisers, readings.MeanOfAppraiser) * Ranges[readings.Appraisers - 2];
        double square = (appraisers * appraisers) - (equipment * equipment / (readings.Parts * readings.Trials));
        double parts = Spread(readings.Parts, readings.MeanOfPart) * Ranges[readings.Parts - 2];
        return Usable(new GaugeStudy(equipment, Math.Sqrt(Math.Max(square, 0)), parts));
    }

    /// <summary>
    /// Analysis of variance with both kinds crossed; an interaction that is not significant at 25 % is pooled with repeatability.
    /// Variances that come out below 0 are 0 (AIAG Measurement Systems Analysis). Readings that never differ are a fault.
    /// </summary>
    /// <param name="readings">Of 2 or more appraisers, trials and parts.</param>
    public static ShopResult<GaugeStudy> ByVariance(GaugeReadings readings)
    {
        GaugeAnova anova = GaugeAnova.Of(readings);
        double error = anova.IsPooled ? anova.Pooled.MeanSquare : anova.Repeatability.MeanSquare;
        double between = anova.IsPooled ? anova.Pooled.MeanSquare : anova.Interaction.MeanSquare;
        double interaction = anova.IsPooled ? 0 : Positive((between - error) / readings.Trials);
        double appraiser = Positive((anova.Appraiser.MeanSquare - between) / (readings.Parts * readings.Trials));
        double part = Positive((anova.Part.MeanSquare - between) / (readings.Appraisers * readings.Trials));
        return Usable(new GaugeStudy(Math.Sqrt(error), Math.Sqrt(appraiser + interaction), Math.Sqrt(part)));
    }

    /// <summary>Mean over all appraisers and parts of the range of their trials.</summary>
    public static double MeanRange(GaugeReadings readings) =>
        Enumerable
            .Range(0, readings.Appraisers)
            .SelectMany(appraiser =>
                Enumerable.Range(0, readings.Parts).Select(part => readings.RangeOfCell(appraiser, part))
            )
            .Average();

    // A gauge without any spread tells nothing of itself, and its shares are 0 / 0.
    private static ShopResult<GaugeStudy> Usable(GaugeStudy study) =>
        study.Gauge > 0
            ? study
            : new ShopFault("readings", "readings that never differ", "read to the gauge's full resolution");

    private static double Spread(int count, Func<int, double> mean)
    {
        double[] means = [.. Enumerable.Range(0, count).Select(mean)];
        return means.Max() - means.Min();
    }

    private static double Positive(double value) => Math.Max(value, 0);

    private static ShopFault? UpTo(string name, int count, int most) =>
        count <= most
            ? null
            : new ShopFault(
                name,
                Allowed.Show(count, ""),
                FormattableString.Invariant(
                    $"the method by ranges has factors for up to {most}; take the one by variance"
                )
            );
}
