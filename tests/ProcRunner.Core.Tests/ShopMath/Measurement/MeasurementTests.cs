using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using MathNet.Numerics.Distributions;
using ProcRunner.Core.Tests.ShopMath.Work;
using ProcRunner.Quantities;
using ProcRunner.ShopMath;

namespace ProcRunner.Core.Tests.ShopMath.Measurement;

public class MeasurementTests
{
    // The standard normal distribution, as tables print it: to all ten places the way the figure was rounded.
    [Theory]
    [InlineData(1, 0.8413447461)]
    [InlineData(1.2815515655, 0.90)]
    [InlineData(1.6448536270, 0.95)]
    [InlineData(1.9599639845, 0.975)]
    [InlineData(2, 0.9772498681)]
    [InlineData(2.5758293035, 0.995)]
    [InlineData(3, 0.9986501020)]
    public void The_normal_distribution(double z, double probability)
    {
        Assert.Equal(probability, Distributions.Normal(z), 10);
        Assert.True(Distributions.NormalQuantile(probability).TryGet(out double quantile, out _));
        Assert.Equal(z, quantile, probability == Math.Round(probability, 4) ? 10 : 7);
    }

    // JCGM 100:2008, Table G.2.
    [Theory]
    [InlineData(0.95, 16, 2.12)]
    [InlineData(0.9545, 16, 2.17)]
    [InlineData(0.99, 16, 2.92)]
    [InlineData(0.9545, double.PositiveInfinity, 2.00)]
    public void Coverage_factors(double coverage, double degreesOfFreedom, double factor)
    {
        Assert.True(Distributions.CoverageFactor(coverage, degreesOfFreedom).TryGet(out double found, out _));
        Assert.Equal(factor, found, 2);
    }

    [Property]
    public Property Distributions_are_those_of_MathNet() =>
        Prop.ForAll(
            Gen.Choose(-8000, 8000).Zip(Gen.Choose(1, 400)).ToArbitrary(),
            one =>
            {
                (double z, double freedom) = (one.Item1 / 1000.0, one.Item2 / 4.0 + 0.75);
                Near(Normal.CDF(0, 1, z), Distributions.Normal(z));
                Near(StudentT.CDF(0, 1, freedom, z), Distributions.Student(z, freedom));
            }
        );

    [Property]
    public Property Quantiles_are_those_of_MathNet() =>
        Prop.ForAll(
            Gen.Choose(1, 9999).Zip(Gen.Choose(4, 400)).ToArbitrary(),
            one =>
            {
                (double probability, double freedom) = (one.Item1 / 10_000.0, one.Item2 / 4.0);
                Assert.True(Distributions.NormalQuantile(probability).TryGet(out double normal, out _));
                Assert.Equal(Normal.InvCDF(0, 1, probability), normal, 1e-9 * (1 + Math.Abs(normal)));
                Assert.True(Distributions.CoverageFactor(probability, freedom).TryGet(out double factor, out _));
                double theirs = StudentT.InvCDF(0, 1, freedom, (1 + probability) / 2);
                Assert.Equal(theirs, factor, 1e-6 * (1 + factor));
            }
        );

    [Property]
    public Property Probabilities_of_conformance_are_those_of_MathNet() =>
        Prop.ForAll(
            Gen.Choose(-3000, 3000).Zip(Gen.Choose(1, 2000)).ToArbitrary(),
            one =>
            {
                (double reading, double uncertainty) = (one.Item1 / 1000.0, one.Item2 / 1000.0);
                Assert.True(ConformanceProbability.Of(reading, uncertainty, -1, 1).TryGet(out double found, out _));
                Near(Normal.CDF(reading, uncertainty, 1) - Normal.CDF(reading, uncertainty, -1), found);
            }
        );

    // However fine or coarse the gauge is: readings are spread as sqrt(spread^2 + u^2), and of what is accepted the good part is
    // integrated here by another rule, between the readings' limits instead of between the true values'.
    [Property(MaxTest = 60)]
    public Property Risks_are_those_of_another_integral() =>
        Prop.ForAll(
            Gen.Choose(1, 4000).Zip(Gen.Choose(-20, 20)).ToArbitrary(),
            one =>
            {
                (double u, double mean) = (one.Item1 / 2000.0, one.Item2 / 10.0);
                Assert.True(
                    ConformanceProbability.Global(mean, 1, u, -1, 1.5, -0.9, 1.3).TryGet(out Risks? risks, out _)
                );
                double both = Math.Sqrt(1 + (u * u));
                double accepted = Normal.CDF(mean, both, 1.3) - Normal.CDF(mean, both, -0.9);

                // Given a reading y, the true value is normal about (mean u^2 + y) / (1 + u^2), its spread u / sqrt(1 + u^2).
                double good = MathNet.Numerics.Integration.GaussLegendreRule.Integrate(
                    y =>
                        Normal.PDF(mean, both, y)
                        * (
                            Normal.CDF(((mean * u * u) + y) / (both * both), u / both, 1.5)
                            - Normal.CDF(((mean * u * u) + y) / (both * both), u / both, -1)
                        ),
                    -0.9,
                    1.3,
                    1024
                );
                double conforming = Normal.CDF(mean, 1, 1.5) - Normal.CDF(mean, 1, -1);
                Assert.Equal(accepted - good, risks.Consumer, 1e-7);
                Assert.Equal(conforming - good, risks.Producer, 1e-7);
            }
        );

    // JCGM 100:2008, H.1: 32 nm, 16 degrees of freedom, t 2.92; U 93 nm from 32, 92.5 unrounded.
    [Fact]
    public void The_end_gauge_of_the_guide()
    {
        Assert.True(
            UncertaintyBudget.Of([25, 9.7, 2.9, 16.6], [18, 25.6, 50, 2]).TryGet(out UncertaintyBudget? budget, out _)
        );
        Assert.Equal(31.7, budget.Combined, 1);
        Assert.Equal(32, budget.Combined, 0);
        Assert.Equal(16.76, budget.DegreesOfFreedom, 2);
        Assert.Equal(16.7, Math.Floor(10 * budget.DegreesOfFreedom) / 10);
        Assert.Equal(16, Math.Floor(budget.DegreesOfFreedom));
        Assert.True(budget.CoverageFactor(0.99).TryGet(out double factor, out _));
        Assert.Equal(2.92, factor, 2);
        Assert.Equal(93, Math.Round(factor, 2) * 32, 0);
        Assert.Equal(92.5, factor * budget.Combined, 1);
    }

    // JCGM 100:2008, H.1.3 (bounds and parts of d from memory): u of the expansion's difference is 1e-6/sqrt 3 per degC, of its value
    // 2e-6/sqrt 3, of the temperatures' difference 0.05/sqrt 3 degC; they count with 50.000623 mm and -0.1 degC, or with 50.000623 mm
    // and 11.5e-6. The deviation of the bench is 0.41 of 0.2 and 0.5/sqrt 2; d is 9.7 nm and 25.6 of 5.8, 3.9 and 6.7 nm.
    [Fact]
    public void The_contributions_to_the_end_gauge()
    {
        double length = 50.000623e6;
        Assert.Equal(1.2, StandardUncertainty.Rectangular(2), 1);
        Assert.Equal(0.58, StandardUncertainty.Rectangular(1), 2);
        Assert.Equal(0.029, StandardUncertainty.Rectangular(0.05), 3);
        Assert.Equal(2.9, length * 0.1 * StandardUncertainty.Rectangular(1e-6), 1);
        Assert.Equal(16.6, length * 11.5e-6 * StandardUncertainty.Rectangular(0.05), 1);
        Assert.Equal(0.41, Known.Value(UncertaintyBudget.Of([0.2, 0.5 / Math.Sqrt(2)], [])).Combined, 2);
        UncertaintyBudget difference = Known.Value(UncertaintyBudget.Of([5.8, 3.9, 6.7], [24, 5, 8]));
        Assert.Equal(9.7, difference.Combined, 1);

        // The guide goes on from the rounded 9.7.
        Assert.Equal(25.6, difference.DegreesOfFreedom * Math.Pow(9.7 / difference.Combined, 4), 1);
    }

    // JCGM 100:2008, 4.3.7, 4.3.9 and F.2.2.1, to ten digits.
    [Theory]
    [InlineData("interval-uncertainty", "half-width=1 mm; shape=rectangular", "0.5773502692 mm")]
    [InlineData("interval-uncertainty", "half-width=1 mm; shape=triangular", "0.4082482905 mm")]
    [InlineData("step-uncertainty", "step=1 mm", "0.2886751346 mm")]
    [InlineData("step-uncertainty", "step=0.005 mm", "0.0014433757 mm")]
    public void Uncertainties_of_intervals(string function, string given, string expected) =>
        WorkBench.Gives(function, given, $"standard uncertainty={expected}");

    // A limit of 0.050 mm with U = 0.005 (u = 0.0025): Phi(1.6), a half on the limit itself, and one-sided 95 %, which the standard
    // gives as about 1.65 u. No guard band (simple acceptance, ASME B89.7.3.1) is a probability of a half.
    [Fact]
    public void A_flatness_near_its_limit()
    {
        const string Limit = "standard-uncertainty=0.0025 mm; high=0.050 mm";
        WorkBench.Gives("conformance-probability", $"value=0.046 mm; {Limit}", "probability=94.5200708 %");
        WorkBench.Gives("conformance-probability", $"value=0.050 mm; {Limit}", "probability=50.0000000 %");
        WorkBench.Gives("guard-band", Limit, "factor=1.6448536270; accept to=0.045887866 mm");
        WorkBench.Gives("guard-band", $"{Limit}; probability=95 %", "accept to=0.045887866 mm");
        WorkBench.Gives("guard-band", $"{Limit}; probability=50 %", "factor=0.0000000000; accept to=0.050000000 mm");
        Assert.InRange(1.6448536270 / 1.65, 0.996, 1);
    }

    // ASME B89.7.3.1: the zone must be 4 times the interval of 2 U.
    [Theory]
    [InlineData("0.003", "4.1667", "the gauge can tell")]
    [InlineData("0.003125", "4.0000", "the gauge can tell")]
    [InlineData("0.0035", "3.5714", "too coarse for this zone")]
    public void Four_to_one(string uncertainty, string ratio, string verdict) =>
        WorkBench.Gives(
            "gauge-ratio",
            $"low=0 mm; high=0.025 mm; uncertainty={uncertainty} mm",
            $"ratio is={ratio}; verdict={verdict}"
        );

    // ISO 1: 20 degC; length x expansion x (temperature - 20). Below 20 degC the part is too short.
    [Theory]
    [InlineData("20 degC", "0.000000000 mm")]
    [InlineData("30 degC", "0.027305000 mm")]
    [InlineData("10 degC", "-0.027305000 mm")]
    public void The_reference_temperature(string temperature, string longer) =>
        WorkBench.Gives(
            "length-at-20",
            $"length=127 mm; temperature={temperature}; expansion=0.0000215 1/K",
            $"too long by={longer}"
        );

    // Limits are inclusive on both sides of the zone of neither: 0.050 +- 0.005 mm.
    [Theory]
    [InlineData("0.0450", "proved in limits")]
    [InlineData("0.0451", "not decided: nearer to a limit than the uncertainty")]
    [InlineData("0.0550", "not decided: nearer to a limit than the uncertainty")]
    [InlineData("0.0551", "proved out of limits")]
    public void The_zones_of_conformity(string value, string verdict) =>
        WorkBench.Gives("conformity", $"value={value} mm; high=0.050 mm; uncertainty=0.005 mm", $"verdict={verdict}");

    // ISO 14253-1 at both limits: 10 to 11 mm and 0.1 prove from 10.1 to 10.9 and disprove under 9.9 and over 11.1.
    [Theory]
    [InlineData("9.89", "proved out of limits")]
    [InlineData("9.90", "not decided: nearer to a limit than the uncertainty")]
    [InlineData("10.09", "not decided: nearer to a limit than the uncertainty")]
    [InlineData("10.10", "proved in limits")]
    [InlineData("10.90", "proved in limits")]
    [InlineData("10.91", "not decided: nearer to a limit than the uncertainty")]
    [InlineData("11.10", "not decided: nearer to a limit than the uncertainty")]
    [InlineData("11.11", "proved out of limits")]
    public void The_zones_between_two_limits(string value, string verdict) =>
        WorkBench.Gives(
            "conformity",
            $"value={value} mm; low=10 mm; high=11 mm; uncertainty=0.1 mm",
            $"accept from=10.1 mm; accept to=10.9 mm; verdict={verdict}"
        );

    // JCGM 106:2012, 7.4 (inputs from memory but for the resistors', which are public): a diode's breakdown voltage, a burst pressure, an
    // oil's viscosity, printed 92, 99 and 66 %.
    [Theory]
    [InlineData(-5.47, 0.05, double.NegativeInfinity, -5.40, 0.9192433408, 0.92)]
    [InlineData(509.7, 8.6, 490, double.PositiveInfinity, 0.9890095474, 0.99)]
    [InlineData(13.6, 1.8, 12.5, 16.3, 0.6626297865, 0.66)]
    public void Conformance_of_the_guides_examples(
        double value,
        double uncertainty,
        double low,
        double high,
        double probability,
        double printed
    )
    {
        double found = Known.Value(ConformanceProbability.Of(value, uncertainty, low, high));

        Assert.Equal(probability, found, 10);
        Assert.Equal(printed, found, 2);
    }

    // JCGM 106:2012, 9.5.4, resistors: 90 %, 1 % and 7 %; the same accepted to the limits was integrated outside this program.
    [Fact]
    public void Risks_of_the_guides_resistors()
    {
        Risks guarded = Known.Value(ConformanceProbability.Global(1500, 0.12, 0.04, 1499.8, 1500.2, 1499.82, 1500.18));
        Risks simple = Known.Value(ConformanceProbability.Global(1500, 0.12, 0.04, 1499.8, 1500.2, 1499.8, 1500.2));

        Assert.Equal(0.9044192955, guarded.Conforming, 10);
        Assert.Equal(0.0098782915, guarded.Consumer, 10);
        Assert.Equal(0.0690265105, guarded.Producer, 10);
        Assert.Equal((0.90, 0.01, 0.07), (Two(guarded.Conforming), Two(guarded.Consumer), Two(guarded.Producer)));
        Assert.Equal(0.0189422067, simple.Consumer, 10);
        Assert.Equal(0.0372078002, simple.Producer, 10);
    }

    [Property]
    public Property Proved_is_accepted_and_disproved_is_not() =>
        Prop.ForAll(
            Gen.Choose(-50, 150).Zip(Gen.Choose(0, 60)).ToArbitrary(),
            one =>
            {
                (Exact value, Exact uncertainty) = (Of(one.Item1), Of(one.Item2));
                Assert.True(Tolerance.Of(Of(0), Of(100)).TryGet(out Tolerance? zone, out _));
                Assert.True(Acceptance.Prove(value, zone, uncertainty).TryGet(out Conformity verdict, out _));
                Assert.True(verdict != Conformity.Proved || zone.Holds(value));
                Assert.True(verdict != Conformity.Disproved || !zone.Holds(value));
            }
        );

    // What is not made good is made bad: conforming = good accepted + good rejected, checked by a second sum.
    [Fact]
    public void Risks_add_up()
    {
        Assert.True(ConformanceProbability.Global(0, 1, 0.3, -1, 1, -1, 1).TryGet(out Risks? risks, out _));
        double accepted = Distributions.Normal(1 / Math.Sqrt(1.09)) - Distributions.Normal(-1 / Math.Sqrt(1.09));
        Assert.Equal(accepted, risks.Conforming - risks.Producer + risks.Consumer, 10);
    }

    [Theory]
    [InlineData("conformity", "value=1 mm; uncertainty=0.1 mm", "low")]
    [InlineData("conformity", "value=1 mm; low=2 mm; high=1 mm; uncertainty=0.1 mm", "low")]
    [InlineData("conformity", "value=1 mm; high=2 mm; uncertainty=-0.1 mm", "uncertainty")]
    [InlineData("conformity", "value=1 mm; high=20 N; uncertainty=0.1 mm", "high")]
    [InlineData("conformity", "value=1 mm; high=2; uncertainty=0.1 mm", "high")]
    [InlineData("conformity", "value=20 degC; high=30 degC; uncertainty=1 K", "value")]
    [InlineData("gauge-ratio", "low=1 mm; high=1 mm; uncertainty=0.1 mm", "low")]
    [InlineData("gauge-ratio", "low=0 mm; high=1 mm; uncertainty=0 mm", "uncertainty")]
    [InlineData("guard-band", "high=1 mm; standard-uncertainty=0.1 mm; probability=100 %", "probability")]
    [InlineData("guard-band", "high=1 mm; standard-uncertainty=0 mm", "standard-uncertainty")]
    [InlineData("combined-uncertainty", "contributions=0 0 mm", "contributions")]
    [InlineData("combined-uncertainty", "contributions=1 2 mm; degrees-of-freedom=5", "degrees-of-freedom")]
    [InlineData("combined-uncertainty", "contributions=1 2 mm; degrees-of-freedom=5 0", "degrees-of-freedom")]
    [InlineData("combined-uncertainty", "contributions=1 2 mm; coverage=101 %", "coverage")]
    [InlineData("feeler-gap", "goes-in=0.2 mm; stays-out=0.1 mm; high=1 mm", "goes-in")]
    public void What_can_not_be_is_refused_by_name(string function, string given, string argument) =>
        Assert.Equal(argument, WorkBench.Fault(function, given).Argument);

    private static double Two(double value) => Math.Round(value, 2);

    private static Exact Of(int value) => new(Rational.FromInteger(value), Dimension.OfLength);

    private static void Near(double expected, double found) =>
        Assert.True(
            Math.Abs(expected - found) <= 1e-12 + (1e-9 * expected),
            FormattableString.Invariant($"{expected:R} {found:R}")
        );
}
