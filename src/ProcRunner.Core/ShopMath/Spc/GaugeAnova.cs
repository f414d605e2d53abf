namespace ProcRunner.ShopMath;

/// <summary>Two-way analysis of variance of a gauge study, parts and appraisers crossed.</summary>
/// <param name="Part">Between parts.</param>
/// <param name="Appraiser">Between appraisers.</param>
/// <param name="Interaction">Of the two.</param>
/// <param name="Repeatability">What is left.</param>
public sealed record GaugeAnova(AnovaLine Part, AnovaLine Appraiser, AnovaLine Interaction, AnovaLine Repeatability)
{
    private const double PoolAbove = 0.25;

    /// <summary>Interaction and repeatability as one.</summary>
    public AnovaLine Pooled =>
        new(
            Interaction.SumOfSquares + Repeatability.SumOfSquares,
            Interaction.DegreesOfFreedom + Repeatability.DegreesOfFreedom
        );

    /// <summary>Interaction over repeatability; infinite where the trials never differ.</summary>
    public double InteractionRatio => Interaction.MeanSquare / Repeatability.MeanSquare;

    /// <summary>Whether the interaction is not significant at 25 % and so is pooled with repeatability.</summary>
    public bool IsPooled =>
        Repeatability.SumOfSquares <= 0
            ? Interaction.SumOfSquares <= 0
            : Distributions.FisherTail(InteractionRatio, Interaction.DegreesOfFreedom, Repeatability.DegreesOfFreedom)
                > PoolAbove;

    /// <summary>Of a study. Sums are of squared deviations from means, never differences of large sums.</summary>
    public static GaugeAnova Of(GaugeReadings readings)
    {
        (int appraisers, int trials, int parts) = (readings.Appraisers, readings.Trials, readings.Parts);
        double mean = readings.Mean;
        double[] byPart = [.. Enumerable.Range(0, parts).Select(part => readings.MeanOfPart(part) - mean)];
        double[] byAppraiser =
        [
            .. Enumerable.Range(0, appraisers).Select(appraiser => readings.MeanOfAppraiser(appraiser) - mean),
        ];
        double interaction = 0;
        double repeatability = 0;
        for (int appraiser = 0; appraiser < appraisers; appraiser++)
        {
            for (int part = 0; part < parts; part++)
            {
                double cell = readings.MeanOfCell(appraiser, part);
                interaction += Math.Pow(cell - mean - byAppraiser[appraiser] - byPart[part], 2);
                for (int trial = 0; trial < trials; trial++)
                {
                    repeatability += Math.Pow(readings[appraiser, trial, part] - cell, 2);
                }
            }
        }

        return new GaugeAnova(
            new AnovaLine(appraisers * trials * byPart.Sum(one => one * one), parts - 1),
            new AnovaLine(parts * trials * byAppraiser.Sum(one => one * one), appraisers - 1),
            new AnovaLine(trials * interaction, (parts - 1) * (appraisers - 1)),
            new AnovaLine(repeatability, parts * appraisers * (trials - 1))
        );
    }
}
