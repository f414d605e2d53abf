using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.Statistics;
using ProcRunner.Core.Tests.ShopMath.Work;
using ProcRunner.ShopMath;

namespace ProcRunner.Core.Tests.ShopMath.Spc;

/// <summary>
/// The worked example of AIAG's Measurement Systems Analysis: 3 appraisers, 3 trials, 10 parts. Averages and ranges as printed
/// there; the analysis of variance worked out outside this program.
/// </summary>
public class GaugeStudyTests
{
    [Fact]
    public void By_average_and_range()
    {
        GaugeReadings readings = Example();

        Assert.Equal([0.184, 0.513, 0.328], Enumerable.Range(0, 3).Select(at => Math.Round(Ranges(readings, at), 3)));
        Assert.Equal(0.1903333333, readings.MeanOfAppraiser(0), 10);
        Assert.Equal(0.0683333333, readings.MeanOfAppraiser(1), 10);
        Assert.Equal(-0.2543333333, readings.MeanOfAppraiser(2), 10);
        Assert.Equal(0.3416666667, GaugeStudy.MeanRange(readings), 10);
        double[] parts = [.. Enumerable.Range(0, 10).Select(readings.MeanOfPart)];
        Assert.Equal(0.4446666667, readings.MeanOfAppraiser(0) - readings.MeanOfAppraiser(2), 10);
        Assert.Equal(3.5111111111, parts.Max() - parts.Min(), 10);
        Assert.True(GaugeStudy.ByRange(readings).TryGet(out GaugeStudy? study, out _));
        Assert.Equal(0.2018566667, study.Equipment, 10);
        Assert.Equal(0.2296670291, study.Appraiser, 10);
        Assert.Equal(0.3057663457, study.Gauge, 10);
        Assert.Equal(1.1045955556, study.Part, 10);
        Assert.Equal(1.1461345469, study.Total, 10);
        Assert.Equal(0.2667804984, study.GaugeShare, 10);
        Assert.Equal(0.1761195, study.Equipment / study.Total, 7);
        Assert.Equal(0.2003840, study.Appraiser / study.Total, 7);
        Assert.Equal(0.9637573, study.Part / study.Total, 7);

        // 1.41 x PV / GRR; a published form has the root of the quotient, which gives 2.68.
        Assert.Equal(5.0937, study.Categories, 4);
    }

    // The same example as it is printed, rounded.
    [Fact]
    public void By_average_and_range_as_printed()
    {
        GaugeStudy study = Known.Value(GaugeStudy.ByRange(Example()));

        Assert.Equal(0.3417, GaugeStudy.MeanRange(Example()), 4);
        Assert.Equal(0.2019, study.Equipment, 4);
        Assert.Equal(0.2297, study.Appraiser, 4);
        Assert.Equal(0.3058, study.Gauge, 4);
        Assert.Equal(1.1046, study.Part, 4);
        Assert.Equal(1.1461, study.Total, 4);
        Assert.Equal(26.7, 100 * study.GaugeShare, 1);
        Assert.Equal(5, Math.Floor(study.Categories));
    }

    // Factors of AIAG's form: K1 0.8862 for 2 trials and 0.5908 for 3, K2 0.7071 for 2 appraisers and 0.5231 for 3 (2 of each from
    // memory), K3 0.3146 for 10 parts: http://gagerandr.com/wp-content/uploads/2014/09/VariableRandR_Xbar.htm. By hand: every range is
    // 1, the appraisers' means are 10 apart, and the parts' lie 90 apart.
    [Theory]
    [InlineData(2, 2, 0.8862, 0.7071)]
    [InlineData(2, 3, 0.5908, 0.7071)]
    [InlineData(3, 2, 0.8862, 0.5231)]
    [InlineData(3, 3, 0.5908, 0.5231)]
    public void Factors_of_the_range_method(int appraisers, int trials, double k1, double k2)
    {
        double[] readings =
        [
            .. from appraiser in Enumerable.Range(0, appraisers)
            from trial in Enumerable.Range(0, trials)
            from part in Enumerable.Range(0, 10)
            select (10.0 * part) + (10.0 / (appraisers - 1) * appraiser) + (trial == 0 ? 0.0 : 1.0),
        ];

        GaugeStudy study = Known.Value(
            GaugeStudy.ByRange(Known.Value(GaugeReadings.Of(readings, appraisers, trials, 10)))
        );

        Assert.Equal(k1, study.Equipment, 12);
        Assert.Equal(Math.Sqrt(Math.Pow(10 * k2, 2) - (k1 * k1 / (10 * trials))), study.Appraiser, 10);
        Assert.Equal(90 * 0.3146, study.Part, 10);
    }

    // 2 or 3 people, 2 or 3 trials, 2 to 10 parts. Mean squares, remainder and F from MathNet's variances and distribution.
    [Property(MaxTest = 200)]
    public Property Both_methods_are_what_MathNet_makes_of_them() =>
        Prop.ForAll(
            Studies().ToArbitrary(),
            readings =>
            {
                (int people, int trials, int parts) = (readings.Appraisers, readings.Trials, readings.Parts);
                double[][] cells =
                [
                    .. from person in Enumerable.Range(0, people)
                    from part in Enumerable.Range(0, parts)
                    select Enumerable.Range(0, trials).Select(trial => readings[person, trial, part]).ToArray(),
                ];
                double[] byPart = [.. Means(parts, part => cells.Where((_, at) => at % parts == part))];
                double[] byPerson = [.. Means(people, person => cells.Where((_, at) => at / parts == person))];
                double within = cells.Average(cell => cell.Variance());
                double ofParts = people * trials * byPart.Variance();
                double ofPeople = parts * trials * byPerson.Variance();
                int free = (people - 1) * (parts - 1);
                int left = people * parts * (trials - 1);
                double interaction =
                    (
                        (readings.All.Variance() * (readings.All.Count - 1))
                        - (within * left)
                        - (ofParts * (parts - 1))
                        - (ofPeople * (people - 1))
                    ) / free;
                double tail = 1 - FisherSnedecor.CDF(free, left, interaction / within);
                if (Math.Abs(tail - 0.25) < 1e-6)
                {
                    return;
                }

                double pooled = ((interaction * free) + (within * left)) / (free + left);
                (double error, double between) = tail > 0.25 ? (pooled, pooled) : (within, interaction);
                GaugeStudy variance = Known.Value(GaugeStudy.ByVariance(readings));
                Near(error, variance.Equipment);
                Near(
                    Math.Max((between - error) / trials, 0) + Math.Max((ofPeople - between) / (parts * trials), 0),
                    variance.Appraiser
                );
                Near(Math.Max((ofParts - between) / (people * trials), 0), variance.Part);

                GaugeStudy range = Known.Value(GaugeStudy.ByRange(readings));
                double equipment =
                    cells.Average(cell => cell.Maximum() - cell.Minimum()) * (trials == 2 ? 0.8862 : 0.5908);
                double apart = (byPerson.Maximum() - byPerson.Minimum()) * (people == 2 ? 0.7071 : 0.5231);
                Near(equipment * equipment, range.Equipment);
                Near(Math.Max((apart * apart) - (equipment * equipment / (parts * trials)), 0), range.Appraiser);
            }
        );

    [Fact]
    public void By_analysis_of_variance()
    {
        var anova = GaugeAnova.Of(Example());

        Assert.Equal(88.3619344444, anova.Part.SumOfSquares, 10);
        Assert.Equal(3.1672622222, anova.Appraiser.SumOfSquares, 10);
        Assert.Equal(0.3589822222, anova.Interaction.SumOfSquares, 10);
        Assert.Equal(2.7589333333, anova.Repeatability.SumOfSquares, 10);
        Assert.Equal(
            94.6471122222,
            anova.Part.SumOfSquares
                + anova.Appraiser.SumOfSquares
                + anova.Interaction.SumOfSquares
                + anova.Repeatability.SumOfSquares,
            10
        );
        Assert.Equal(492.2914, anova.Part.MeanSquare / anova.Interaction.MeanSquare, 4);
        Assert.Equal(245.614, anova.Part.MeanSquare / anova.Pooled.MeanSquare, 3);
        Assert.Equal(213.517, anova.Part.MeanSquare / anova.Repeatability.MeanSquare, 3);
        Assert.Equal(0.43372, anova.InteractionRatio, 5);
        Assert.True(anova.IsPooled);
        Assert.True(GaugeStudy.ByVariance(Example()).TryGet(out GaugeStudy? study, out _));
        Assert.Equal(0.0399732764, study.Equipment * study.Equipment, 10);
        Assert.Equal(0.0514552612, study.Appraiser * study.Appraiser, 10);
        Assert.Equal(1.0864466044, study.Part * study.Part, 10);
        Assert.Equal(0.3023715223, study.Gauge, 10);
        Assert.Equal(1.0852995632, study.Total, 10);
        Assert.Equal(0.2786065088, study.GaugeShare, 10);
        Assert.Equal(4.8605, study.Categories, 4);
    }

    [Fact]
    public void Readings_that_never_differ_say_nothing_of_the_gauge()
    {
        Assert.True(GaugeReadings.Of([1, 2, 1, 2, 1, 2, 1, 2], 2, 2, 2).TryGet(out GaugeReadings? same, out _));

        Assert.False(GaugeStudy.ByRange(same).TryGet(out _, out ShopFault? fault));
        Assert.Equal("readings", fault.Argument);
        Assert.False(GaugeStudy.ByVariance(same).TryGet(out _, out _));
    }

    [Fact]
    public void A_row_that_does_not_fit_is_refused()
    {
        Assert.False(GaugeReadings.Of([1, 2, 3], 2, 2, 2).TryGet(out _, out ShopFault? fault));
        Assert.Equal("readings", fault.Argument);
        Assert.False(GaugeReadings.Of([1, 2, 3, 4], 1, 2, 2).TryGet(out _, out fault));
        Assert.Equal("appraisers", fault.Argument);
    }

    private static double Ranges(GaugeReadings readings, int appraiser) =>
        Enumerable.Range(0, readings.Parts).Average(part => readings.RangeOfCell(appraiser, part));

    private static IEnumerable<double> Means(int count, Func<int, IEnumerable<double[]>> cells) =>
        Enumerable.Range(0, count).Select(one => cells(one).SelectMany(cell => cell).Mean());

    private static void Near(double variance, double deviation) =>
        Assert.Equal(variance, deviation * deviation, 1e-9 * (1 + variance));

    // Readings in whole thousandths; a part's own size is in them, so that parts differ by more than a gauge does in most.
    private static Gen<GaugeReadings> Studies() =>
        from people in Gen.Choose(2, 3)
        from trials in Gen.Choose(2, 3)
        from parts in Gen.Choose(2, 10)
        from sizes in Gen.Choose(0, 300).ArrayOf(parts)
        from reading in Gen.Choose(0, 60).ArrayOf(people * trials * parts)
        where reading.Distinct().Count() > 1
        select Known.Value(
            GaugeReadings.Of(
                [.. reading.Select((one, at) => (sizes[at % parts] + one) / 1000.0)],
                people,
                trials,
                parts
            )
        );

    private static GaugeReadings Example()
    {
        WorkExample example = WorkFunctions.Find("gauge-study")!.Examples[0];
        double[] readings =
        [
            .. example
                .Arguments.Single(one => one.Key == "readings")
                .Value.Split(' ')
                .Select(one => double.Parse(one, System.Globalization.CultureInfo.InvariantCulture)),
        ];
        Assert.True(GaugeReadings.Of(readings, 3, 3, 10).TryGet(out GaugeReadings? all, out _));
        return all;
    }
}
