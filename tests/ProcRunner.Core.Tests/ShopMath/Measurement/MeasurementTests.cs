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
    // The standard normal distribution, as tables print it.
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
        Assert.Equal(z, quantile, 7);
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
        Assert.Equal(16.76, budget.DegreesOfFreedom, 2);
        Assert.True(budget.CoverageFactor(0.99).TryGet(out double factor, out _));
        Assert.Equal(2.92, factor, 2);
        Assert.Equal(93, Math.Round(factor, 2) * 32, 0);
        Assert.Equal(92.5, factor * budget.Combined, 1);
    }

    // Limits are inclusive on both sides of the zone of neither: 0.050 +- 0.005 mm.
    [Theory]
    [InlineData("0.0450", "proved in limits")]
    [InlineData("0.0451", "not decided: nearer to a limit than the uncertainty")]
    [InlineData("0.0550", "not decided: nearer to a limit than the uncertainty")]
    [InlineData("0.0551", "proved out of limits")]
    public void The_zones_of_conformity(string value, string verdict) =>
        WorkBench.Gives("conformity", $"value={value} mm; high=0.050 mm; uncertainty=0.005 mm", $"verdict={verdict}");

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

    private static Exact Of(int value) => new(Rational.FromInteger(value), Dimension.OfLength);

    private static void Near(double expected, double found) =>
        Assert.True(
            Math.Abs(expected - found) <= 1e-12 + (1e-9 * expected),
            FormattableString.Invariant($"{expected:R} {found:R}")
        );
}
