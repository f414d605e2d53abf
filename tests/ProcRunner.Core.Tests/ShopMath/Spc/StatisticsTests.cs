using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.Integration;
using MathNet.Numerics.Statistics;
using ProcRunner.Core.Tests.ShopMath.Work;
using ProcRunner.Quantities;
using ProcRunner.ShopMath;
using SpecialFunctions = MathNet.Numerics.SpecialFunctions;

namespace ProcRunner.Core.Tests.ShopMath.Spc;

public class StatisticsTests
{
    private const double Slack = 1e-9;

    // Certified by NIST, StRD univariate; NumAcc1 to 4 are exact. 14 significant digits of each are asked for.
    [Theory]
    [InlineData("Lew", -177.435, 277.332168044316, -0.307304800605679)]
    [InlineData("Lottery", 518.958715596330, 291.699727470969, -0.120948622967393)]
    [InlineData("Mavro", 2.001856, 0.000429123454003053, 0.937989183438248)]
    [InlineData("Michelso", 299.8524, 0.0790105478190518, 0.535199668621283)]
    [InlineData("NumAcc1", 10000002, 1, -0.5)]
    [InlineData("NumAcc2", 1.2, 0.1, -0.999)]
    [InlineData("NumAcc3", 1000000.2, 0.1, -0.999)]
    [InlineData("NumAcc4", 10000000.2, 0.1, -0.999)]
    public void Reference_sets(string name, double mean, double deviation, double lag1)
    {
        Assert.True(Univariate.Of(Set(name)).TryGet(out Univariate? found, out _));

        Digits(mean, found.Mean);
        Digits(deviation, found.Deviation);
        Digits(lag1, found.Lag1);
    }

    [Property]
    public Property Mean_and_deviation_are_those_of_MathNet() =>
        Prop.ForAll(
            Gen.Choose(-100_000, 100_000).ArrayOf(30).Where(all => all.Length > 1).ToArbitrary(),
            all =>
            {
                Assert.True(
                    Univariate
                        .Of([.. all.Select(one => Rational.FromRatio(one, 1000))])
                        .TryGet(out Univariate? found, out _)
                );
                double[] readings = [.. all.Select(one => one / 1000.0)];
                Assert.Equal(readings.Mean(), found.Mean, 9);
                Assert.Equal(readings.StandardDeviation(), found.Deviation, 9);
            }
        );

    [Property]
    public Property Likeness_of_neighbours_is_that_of_MathNet() =>
        Prop.ForAll(
            Gen.Choose(-1000, 1000).ArrayOf(30).Where(all => all.Distinct().Count() > 1).ToArbitrary(),
            all =>
            {
                Assert.True(
                    Univariate
                        .Of([.. all.Select(one => Rational.FromInteger(one))])
                        .TryGet(out Univariate? found, out _)
                );
                Assert.Equal(Correlation.Auto([.. all.Select(one => (double)one)])[1], found.Lag1, 10);
            }
        );

    // The factors themselves, from the moments of the range of n normal values (Tippett 1925; from memory), integrated here over MathNet's
    // normal distribution: d2 = integral of 1 - F^n - (1 - F)^n, c4 = sqrt(2 / (n - 1)) gamma(n / 2) / gamma((n - 1) / 2),
    // A2 = 3 / (d2 sqrt n), A3 = 3 / (c4 sqrt n), D4 = 1 + 3 d3 / d2, D3 = max(0, 1 - 3 d3 / d2).
    [Fact]
    public void Chart_constants_are_the_moments_of_ranges() =>
        Assert.All(
            ChartConstants.All,
            one =>
            {
                int n = one.Size;
                double d2 = GaussLegendreRule.Integrate(
                    x => 1 - Math.Pow(Normal.CDF(0, 1, x), n) - Math.Pow(1 - Normal.CDF(0, 1, x), n),
                    -9,
                    9,
                    512
                );
                double square = 2 * GaussLegendreRule.Integrate(y => Below(y, n), -9, 9, 128);
                double d3 = Math.Sqrt(square - (d2 * d2));
                double c4 =
                    Math.Sqrt(2.0 / (n - 1)) * SpecialFunctions.Gamma(n / 2.0) / SpecialFunctions.Gamma((n - 1) / 2.0);
                Assert.Equal(d2, one.D2, 0.0005 + Slack);
                Assert.Equal(d3, one.RangeSpread, 0.0005 + Slack);
                Assert.Equal(c4, one.C4, 0.00005 + Slack);
                Assert.Equal(3 / (d2 * Math.Sqrt(n)), one.A2, 0.0005 + Slack);
                Assert.Equal(3 / (c4 * Math.Sqrt(n)), one.A3, 0.0005 + Slack);
                Assert.Equal(1 + (3 * d3 / d2), one.RangeHigh, (n == 5 ? 0.000501 : 0.0005) + Slack);
                Assert.Equal(Math.Max(0, 1 - (3 * d3 / d2)), one.RangeLow, 0.0005 + Slack);
                if (n == 5)
                {
                    // So near to a half that books print 2.114 or 2.115; the worked examples here take 2.115.
                    Assert.Equal(2.114499, 1 + (3 * d3 / d2), 6);
                }
            }
        );

    // More digits, as published elsewhere; rounded to the three places of the table they are its factors.
    [Theory]
    [InlineData(2, 1.1284, 1.8800, 3.2665)]
    [InlineData(3, 1.6926, 1.0233, 2.5746)]
    [InlineData(4, 2.0588, 0.7286, 2.2821)]
    public void Chart_constants_are_those_of_another_table(int size, double d2, double a2, double d4)
    {
        Assert.True(ChartConstants.Of(size).TryGet(out ChartConstants? found, out _));
        Assert.Equal([Three(d2), Three(a2), Three(d4)], new[] { found.D2, found.A2, found.RangeHigh }.Select(Three));
        Assert.Equal(d2, found.D2, 0.0005 + Slack);
        Assert.Equal(a2, found.A2, 0.0005 + Slack);
        Assert.Equal(d4, found.RangeHigh, 0.0005 + Slack);
    }

    // 3 / 1.128: how far the limits of single readings stand from the mean in mean moving ranges.
    [Fact]
    public void The_factor_of_single_readings()
    {
        ControlLimits limits = Known.Value(ControlLimits.OfIndividuals([1, 2, 1, 2, 1]));

        Assert.Equal(2.6596, (limits.High - limits.Mean) / limits.MeanRange, 4);
        Assert.Equal(2.6596, (limits.Mean - limits.Low) / limits.MeanRange, 4);
    }

    // NIST/SEMATECH e-Handbook 6.3.2.2, single readings: printed 50.81, 1.8778, 55.8041, 45.8159; more digits by hand.
    [Fact]
    public void The_handbooks_single_readings()
    {
        ControlLimits limits = Known.Value(
            ControlLimits.OfIndividuals([49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1])
        );

        Assert.Equal(50.81, limits.Mean, 12);
        Assert.Equal(1.877777778, limits.MeanRange, 9);
        Assert.Equal(55.80408983, limits.High, 8);
        Assert.Equal(45.81591017, limits.Low, 8);
        Assert.Equal(55.8041, limits.High, 4);
        Assert.Equal(45.8159, limits.Low, 4);
        Assert.Equal(6.1347, limits.RangeHigh, 4);
    }

    // Kalpakjian and Schmid, Manufacturing Engineering, Ex. 36.2, p. 990: ten samples of 5, sums 44.296 and 1.03 in. The samples
    // themselves are not printed: ten that have those sums.
    [Fact]
    public void Subgroups_of_a_textbook()
    {
        double[] means = [.. Enumerable.Range(0, 10).Select(one => 4.4296 + ((one - 4.5) / 1000))];
        double[] ranges = [.. Enumerable.Range(0, 10).Select(one => 0.103 + ((one - 4.5) / 1000))];
        ControlLimits limits = Known.Value(ControlLimits.OfSubgroups(means, ranges, 5));

        Assert.Equal(44.296, means.Sum(), 10);
        Assert.Equal(1.03, ranges.Sum(), 10);
        Assert.Equal(4.489031, limits.High, 6);
        Assert.Equal(4.370169, limits.Low, 6);
        Assert.Equal(0.217845, limits.RangeHigh, 6);
        Assert.Equal(0.04428202923, limits.Sigma, 11);
    }

    // Sharma, Production Engineering, ch. 21: printed 11.40, 11.10 and 0.554.
    [Fact]
    public void Subgroups_of_another_textbook()
    {
        ControlLimits limits = Known.Value(
            ControlLimits.OfSubgroups(
                [11.274, 11.246, 11.204, 11.294, 11.252, 11.238, 11.230, 11.276, 11.208, 11.266],
                [.15, .20, .33, .46, .10, .15, .20, .23, .50, .30],
                5
            )
        );

        Assert.Equal(11.2488, limits.Mean, 10);
        Assert.Equal(0.262, limits.MeanRange, 10);
        Assert.Equal(11.399974, limits.High, 6);
        Assert.Equal(11.097626, limits.Low, 6);
        Assert.Equal(0.55413, limits.RangeHigh, 5);
        Assert.Equal((11.40, 11.10, 0.554), (Two(limits.High), Two(limits.Low), Three(limits.RangeHigh)));
    }

    // NIST/SEMATECH e-Handbook 6.1.6, and Miller and Freund, Probability and Statistics for Engineers, p. 470.
    [Fact]
    public void Capabilities_of_two_books()
    {
        Capability first = Known.Value(Capability.Of(16, 2, 8, 20));
        Capability second = Known.Value(Capability.Of(10.991, 0.0035, 10.98, 11.01));

        Assert.Equal(1.0, first.Cp!.Value, 12);
        Assert.Equal(0.6667, first.Upper!.Value, 4);
        Assert.Equal(1.3333, first.Lower!.Value, 4);
        Assert.Equal(0.6667, first.Cpk, 4);
        Assert.Equal(0.3333, first.OffCentre!.Value, 4);
        Assert.Equal(1.428571429, second.Cp!.Value, 9);
        Assert.Equal(1.047619048, second.Cpk, 9);
    }

    // Known wrong from a source: a standard deviation of 1.8674 for these ten readings.
    [Fact]
    public void The_deviation_of_the_individuals_example_is_not_the_one_quoted_elsewhere()
    {
        WorkFigure deviation = WorkBench
            .Answer("statistics", "readings=49.6 47.6 49.9 51.3 47.8 51.2 52.6 52.4 53.6 52.1")
            .Find("standard deviation")!;

        Assert.Equal(2.033852393m, Math.Round(deviation.Value!.Value.Value, 9));
        Assert.Equal(2.0339m, Math.Round(deviation.Value!.Value.Value, 4));
        Assert.NotEqual(1.8674m, Math.Round(deviation.Value!.Value.Value, 4));

        // What the chart takes instead is the mean moving range over d2: 1.8778 / 1.128.
        Assert.True(
            ControlLimits
                .OfIndividuals([49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1])
                .TryGet(out ControlLimits? limits, out _)
        );
        Assert.Equal(1.6647, limits.Sigma, 4);
    }

    // A textbook's Table A.22 of factors for control charts, typed a second time: n, A2, A3, c4, d2, d3, D3, D4.
    [Theory]
    [InlineData(2, 1.880, 2.659, 0.7979, 1.128, 0.853, 0, 3.267)]
    [InlineData(3, 1.023, 1.954, 0.8862, 1.693, 0.888, 0, 2.575)]
    [InlineData(4, 0.729, 1.628, 0.9213, 2.059, 0.880, 0, 2.282)]
    [InlineData(5, 0.577, 1.427, 0.9400, 2.326, 0.864, 0, 2.115)]
    [InlineData(6, 0.483, 1.287, 0.9515, 2.534, 0.848, 0, 2.004)]
    [InlineData(7, 0.419, 1.182, 0.9594, 2.704, 0.833, 0.076, 1.924)]
    [InlineData(8, 0.373, 1.099, 0.9650, 2.847, 0.820, 0.136, 1.864)]
    [InlineData(9, 0.337, 1.032, 0.9693, 2.970, 0.808, 0.184, 1.816)]
    [InlineData(10, 0.308, 0.975, 0.9727, 3.078, 0.797, 0.223, 1.777)]
    public void Chart_constants_are_as_printed(
        int size,
        double a2,
        double a3,
        double c4,
        double d2,
        double d3,
        double low,
        double high
    )
    {
        Assert.True(ChartConstants.Of(size).TryGet(out ChartConstants? found, out _));
        Assert.Equal(new ChartConstants(size, a2, a3, c4, d2, d3, low, high), found);
    }

    // NIST/SEMATECH e-Handbook 6.3.2.4, every value to its two places.
    [Fact]
    public void Every_weighted_average_of_the_handbook()
    {
        double[] readings =
        [
            52.0,
            47.0,
            53.0,
            49.3,
            50.1,
            47.0,
            51.0,
            50.1,
            51.2,
            50.5,
            49.6,
            47.6,
            49.9,
            51.3,
            47.8,
            51.2,
            52.6,
            52.4,
            53.6,
            52.1,
        ];
        double[] expected =
        [
            50.60,
            49.52,
            50.56,
            50.18,
            50.16,
            49.21,
            49.75,
            49.85,
            50.26,
            50.33,
            50.11,
            49.36,
            49.52,
            50.05,
            49.38,
            49.92,
            50.73,
            51.23,
            51.94,
            51.99,
        ];

        Assert.True(Ewma.Of(readings, 0.3, 50, 2.0539).TryGet(out Ewma? ewma, out _));
        Assert.Equal(expected, ewma.Values.Select(one => Math.Round(one, 2)));
        Assert.Equal(52.5884, ewma.High, 4);
        Assert.Equal(47.4116, ewma.Low, 4);
    }

    [Theory]
    [InlineData("statistics", "readings=1", "readings")]
    [InlineData("statistics", "readings=1 mm 2 N", "readings")]
    [InlineData("individuals-chart", "readings=1 mm", "readings")]
    [InlineData("subgroup-chart", "means=1 2 mm; ranges=1 mm; size=5", "ranges")]
    [InlineData("subgroup-chart", "means=1 mm; ranges=1 mm; size=11", "size")]
    [InlineData("ewma", "readings=1 2 mm; weight=0; start=1 mm; sigma=1 mm", "weight")]
    [InlineData("ewma", "readings=1 2 mm; weight=0.3; start=1 mm; sigma=0 mm", "sigma")]
    [InlineData("capability", "mean=1 mm; sigma=1 mm", "low")]
    [InlineData("capability", "mean=1 mm; sigma=0 mm; high=2 mm", "sigma")]
    [InlineData("capability", "mean=1 mm; sigma=1 mm; low=2 mm; high=1 mm", "low")]
    public void What_can_not_be_is_refused_by_name(string function, string given, string argument) =>
        Assert.Equal(argument, WorkBench.Fault(function, given).Argument);

    private static Rational[] Set(string name) =>
        name switch
        {
            "Lew" => Read(NistSets.Lew),
            "Lottery" => Read(NistSets.Lottery),
            "Mavro" => Read(NistSets.Mavro),
            "Michelso" => Read(NistSets.Michelso),
            "NumAcc1" => Read("10000001 10000003 10000002"),
            "NumAcc2" => Waves("1.2", "1.1 1.3 "),
            "NumAcc3" => Waves("1000000.2", "1000000.1 1000000.3 "),
            _ => Waves("10000000.2", "10000000.1 10000000.3 "),
        };

    // One value, then 500 times two others.
    private static Rational[] Waves(string first, string two) =>
        Read(first + " " + string.Concat(Enumerable.Repeat(two, 500)));

    private static Rational[] Read(string text) =>
        [
            .. text.Split([' ', '\n', '\r'], StringSplitOptions.RemoveEmptyEntries)
                .Select(one =>
                    Rational.FromDecimal(decimal.Parse(one, System.Globalization.CultureInfo.InvariantCulture))
                ),
        ];

    // Integral over x below y of the probability that all n lie outside x to y: 1 - F(y)^n - (1 - F(x))^n + (F(y) - F(x))^n.
    private static double Below(double y, int n)
    {
        double top = Normal.CDF(0, 1, y);
        return GaussLegendreRule.Integrate(
            x =>
            {
                double bottom = Normal.CDF(0, 1, x);
                return 1 - Math.Pow(top, n) - Math.Pow(1 - bottom, n) + Math.Pow(top - bottom, n);
            },
            -9,
            y,
            128
        );
    }

    private static double Two(double value) => Math.Round(value, 2);

    private static double Three(double value) => (double)Math.Round((decimal)value, 3, MidpointRounding.AwayFromZero);

    private static void Digits(double expected, double found) =>
        Assert.True(
            Math.Abs(expected - found) <= 5e-15 * Math.Abs(expected) * 2,
            FormattableString.Invariant($"{expected:R} {found:R}")
        );
}
