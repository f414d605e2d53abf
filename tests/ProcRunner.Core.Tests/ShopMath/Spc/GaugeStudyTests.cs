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

    [Fact]
    public void By_analysis_of_variance()
    {
        var anova = GaugeAnova.Of(Example());

        Assert.Equal(88.3619344444, anova.Part.SumOfSquares, 9);
        Assert.Equal(3.1672622222, anova.Appraiser.SumOfSquares, 9);
        Assert.Equal(0.3589822222, anova.Interaction.SumOfSquares, 9);
        Assert.Equal(2.7589333333, anova.Repeatability.SumOfSquares, 9);
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
