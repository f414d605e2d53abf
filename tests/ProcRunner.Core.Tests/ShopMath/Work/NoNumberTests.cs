using ProcRunner.ShopMath;

namespace ProcRunner.Core.Tests.ShopMath.Work;

/// <summary>
/// What is no finite number, given to the typed functions that take doubles: a fault that names the argument, and no number out. What is
/// typed never gets there, a value that another calculation gave might.
/// </summary>
public class NoNumberTests
{
    private static readonly (string Argument, Func<double, ShopFault?> Call)[] Calls =
    [
        ("points", bad => FaultOf(Flatness.Of(Corners(bad)))),
        ("points", bad => FaultOf(MinimumZone.Of(Corners(bad)))),
        ("y", bad => FaultOf(Straightness.Of([0, 1, 2], [0, bad, 0]))),
        ("x", bad => FaultOf(Straightness.Of([0, bad, 2], [0, 1, 0]))),
        ("heights", bad => FaultOf(Texture.Of([0, bad, 1]))),
        ("heights", bad => FaultOf(GaussianFilter.Roughness([.. new double[40], bad], 0.1, 0.8))),
        ("spacing", bad => FaultOf(GaussianFilter.Roughness(new double[40], bad, 0.8))),
        ("cut off", bad => FaultOf(GaussianFilter.Roughness(new double[40], 0.1, bad))),
        ("head diameter", bad => FaultOf(ChamberVolume.OfSink(bad, 1, 1))),
        ("sink", bad => FaultOf(ChamberVolume.OfSink(40, bad, 1))),
        ("valves", bad => FaultOf(ChamberVolume.OfSink(40, 1, bad))),
        ("area", bad => FaultOf(ChamberVolume.OfSkim(bad, 1))),
        ("deck cut", bad => FaultOf(ChamberVolume.OfSkim(40, bad))),
        ("bore", bad => FaultOf(ChamberVolume.Swept(bad, 1))),
        ("stroke", bad => FaultOf(ChamberVolume.Swept(1, bad))),
        ("chamber", bad => FaultOf(ChamberVolume.Ratio(1, bad))),
        ("ratio", bad => FaultOf(ChamberVolume.ForRatio(1, bad))),
        ("value", bad => FaultOf(ConformanceProbability.Of(bad, 1, 0, 1))),
        ("uncertainty", bad => FaultOf(ConformanceProbability.Of(0, bad, 0, 1))),
        ("mean", bad => FaultOf(ConformanceProbability.Global(bad, 1, 1, 0, 1, 0, 1))),
        ("spread", bad => FaultOf(ConformanceProbability.Global(0, bad, 1, 0, 1, 0, 1))),
        ("uncertainty", bad => FaultOf(ConformanceProbability.Global(0, 1, bad, 0, 1, 0, 1))),
        ("low", bad => FaultOf(ConformanceProbability.Global(0, 1, 1, -Math.Abs(bad), 1, 0, 1))),
        ("accept high", bad => FaultOf(ConformanceProbability.Global(0, 1, 1, 0, 1, 0, Math.Abs(bad)))),
        ("probability", bad => FaultOf(Distributions.NormalQuantile(bad))),
        ("coverage", bad => FaultOf(Distributions.CoverageFactor(bad, 5))),
        ("contributions", bad => FaultOf(UncertaintyBudget.Of([1, bad], []))),
        ("degrees of freedom", bad => FaultOf(UncertaintyBudget.Of([1, 1], [5, -Math.Abs(bad)]))),
        ("readings", bad => FaultOf(ControlLimits.OfIndividuals([1, bad]))),
        ("means", bad => FaultOf(ControlLimits.OfSubgroups([bad], [1], 5))),
        ("ranges", bad => FaultOf(ControlLimits.OfSubgroups([1], [bad], 5))),
        ("size", bad => FaultOf(ControlLimits.OfSubgroups([1], [1], bad))),
        ("readings", bad => FaultOf(Ewma.Of([1, bad], 0.3, 1, 1))),
        ("weight", bad => FaultOf(Ewma.Of([1], bad, 1, 1))),
        ("start", bad => FaultOf(Ewma.Of([1], 0.3, bad, 1))),
        ("sigma", bad => FaultOf(Ewma.Of([1], 0.3, 1, bad))),
        ("mean", bad => FaultOf(Capability.Of(bad, 1, 0, 1))),
        ("sigma", bad => FaultOf(Capability.Of(0, bad, 0, 1))),
        ("low", bad => FaultOf(Capability.Of(0, 1, bad, 1))),
        ("high", bad => FaultOf(Capability.Of(0, 1, 0, bad))),
        ("readings", bad => FaultOf(GaugeReadings.Of([1, 2, 3, 4, 5, 6, 7, bad], 2, 2, 2))),
    ];

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(double.NegativeInfinity)]
    public void What_is_no_number_is_named(double bad) =>
        Assert.All(
            Calls,
            one =>
            {
                ShopFault? fault = one.Call(bad);
                Assert.True(fault is not null, $"{one.Argument} of {bad} is taken");
                Assert.StartsWith(one.Argument, fault.Argument, StringComparison.Ordinal);
                Assert.NotEmpty(fault.Read);
                Assert.NotEmpty(fault.Allowed);
            }
        );

    [Fact]
    public void Too_few_and_lined_up_are_named()
    {
        SurfacePoint[] line = [new(0, 0, 0), new(1, 1, 1), new(2, 2, 0)];
        (string Argument, ShopFault? Fault)[] faults =
        [
            ("points", FaultOf(Flatness.Of([]))),
            ("points", FaultOf(Flatness.Of(line[..2]))),
            ("points", FaultOf(Flatness.Of(line))),
            ("points", FaultOf(MinimumZone.Of(line))),
            ("points", FaultOf(Flatness.Of([line[0], line[0], line[0]]))),
            ("x", FaultOf(Straightness.Of([], []))),
            ("x", FaultOf(Straightness.Of([0], [0]))),
            ("x", FaultOf(Straightness.Of([1, 1], [0, 1]))),
            ("heights", FaultOf(Texture.Of([]))),
            ("heights", FaultOf(Texture.Of([1]))),
            ("heights", FaultOf(GaussianFilter.Roughness([], 0.1, 0.8))),
            ("readings", FaultOf(Univariate.Of([]))),
            ("readings", FaultOf(Univariate.Of([Quantities.Rational.One]))),
            ("readings", FaultOf(ControlLimits.OfIndividuals([1]))),
            ("ranges", FaultOf(ControlLimits.OfSubgroups([], [], 5))),
            ("readings", FaultOf(Ewma.Of([], 0.3, 1, 1))),
            ("contributions", FaultOf(UncertaintyBudget.Of([], []))),
            ("readings", FaultOf(DeckStock.CutNeeded([], []))),
            ("thickness", FaultOf(DeckStock.Wedge([Known.Of("1 mm")]))),
            ("readings", FaultOf(RoundShape.Of([]))),
        ];

        Assert.All(faults, one => Assert.Equal(one.Argument, one.Fault?.Argument));
    }

    [Fact]
    public void A_probability_without_a_limit_is_none()
    {
        Assert.Equal(
            "low",
            WorkBench.Fault("conformance-probability", "value=1 mm; standard-uncertainty=1 mm").Argument
        );
        Assert.Equal("ranges", WorkBench.Fault("subgroup-chart", "means=1 mm; ranges=-1 mm; size=5").Argument);
    }

    // Squares of these leave a double's range; the root of their sum does not.
    [Theory]
    [InlineData(3e-200, 4e-200, 5e-200)]
    [InlineData(3e200, 4e200, 5e200)]
    [InlineData(3, 4, 5)]
    public void Uncertainties_of_any_size_are_combined(double one, double other, double both) =>
        Assert.Equal(1, Known.Value(UncertaintyBudget.Of([one, other], [7, 7])).Combined / both, 1e-15);

    private static SurfacePoint[] Corners(double bad) => [new(0, 0, 0), new(1, 0, 0), new(0, 1, bad), new(1, 1, 0)];

    private static ShopFault? FaultOf<T>(ShopResult<T> result) =>
        result.TryGet(out _, out ShopFault? fault) ? null : fault;
}
