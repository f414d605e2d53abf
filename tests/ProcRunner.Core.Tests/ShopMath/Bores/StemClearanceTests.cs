using FsCheck.Xunit;
using ProcRunner.Core.Tests.ShopMath.Work;
using ProcRunner.Quantities;
using ProcRunner.ShopMath;

namespace ProcRunner.Core.Tests.ShopMath.Bores;

public class StemClearanceTests
{
    [Theory]
    // TM 9-6115-604-34, Table 1-4: stem 0.4945-0.4955, guide 0.4972-0.4980; worn limits 0.4935 and 0.4996.
    [InlineData("0.4972 0.4980 0.4945 0.4955", "in", "0.0017", "0.0035")]
    [InlineData("0.4996 0.4996 0.4935 0.4935", "in", "0.0061", "0.0061")]
    // A car maker's specification, printed 0.020 to 0.047 for intake and 0.045 to 0.072 for exhaust: stems 5.965-5.980 and 5.940-5.955,
    // guide 6.000-6.012.
    [InlineData("6.000 6.012 5.965 5.980", "mm", "0.020", "0.047")]
    [InlineData("6.000 6.012 5.940 5.955", "mm", "0.045", "0.072")]
    public void Printed_clearances(string limits, string unit, string smallest, string largest)
    {
        Exact[] all = [.. limits.Split(' ').Select(one => Known.Of($"{one} {unit}"))];

        StemClearance clearance = Known.Value(StemClearance.Of(all[0], all[1], all[2], all[3]));

        Assert.Equal(Known.Of($"{smallest} {unit}"), clearance.Smallest);
        Assert.Equal(Known.Of($"{largest} {unit}"), clearance.Largest);
    }

    [Property]
    public void Clearance_is_interference_with_its_sign_turned(ushort a, ushort b, ushort c, ushort d)
    {
        Exact[] bore = [.. new[] { a, b }.Order().Select(one => Known.Millimetres(1 + one))];
        Exact[] stem = [.. new[] { c, d }.Order().Select(one => Known.Millimetres(1 + one))];

        StemClearance clearance = Known.Value(StemClearance.Of(bore[0], bore[1], stem[0], stem[1]));
        FitRange fit = Known.Value(Fit.OfLimits(bore[0], bore[1], stem[0], stem[1]));

        Assert.Equal(fit.Most.Value, -clearance.Smallest.Value);
        Assert.Equal(fit.Least.Value, -clearance.Largest.Value);
    }

    [Fact]
    public void The_worst_readings_of_both_parts_meet()
    {
        RoundShape bore = Shape(8.010m, 8.030m);
        RoundShape stem = Shape(7.970m, 7.980m);

        StemClearance clearance = Known.Value(StemClearance.Of(bore, stem));

        Assert.Equal((Known.Of("0.030 mm"), Known.Of("0.060 mm")), (clearance.Smallest, clearance.Largest));
    }

    [Theory]
    [InlineData(
        "bore-smallest=8.1 mm; bore-largest=8.0 mm; stem-smallest=7.9 mm; stem-largest=7.95 mm",
        "bore-smallest"
    )]
    [InlineData(
        "bore-smallest=8.0 mm; bore-largest=8.1 mm; stem-smallest=7.99 mm; stem-largest=7.95 mm",
        "stem-smallest"
    )]
    [InlineData("bore-smallest=8.0 mm; bore-largest=8.1 mm; stem-smallest=0 mm; stem-largest=7.95 mm", "stem-smallest")]
    public void Readings_the_wrong_way_round_are_refused(string given, string argument) =>
        Assert.Equal(argument, WorkBench.Fault("stem-clearance", given).Argument);

    // Plane geometry, drawn out: a straight stem touching the two ends of its guide, one on each side.
    [Property]
    public void A_leaning_stem_rocks_as_its_drawing_says(byte clearance, byte guide, byte overhang)
    {
        decimal play = 0.01m + (clearance / 1000m);
        decimal length = 10 + guide;
        decimal slope = play / length;
        decimal atDial = (-play / 2) + (slope * (length + overhang));
        decimal rock = 2 * atDial;

        Exact found = Known.Value(
            RockReading.Clearance(
                new Exact(Rational.FromDecimal(rock), Dimension.OfLength),
                RockMethod.Tilt,
                Known.Millimetres(length),
                Known.Millimetres(overhang)
            )
        );

        Assert.Equal((double)play, found.In(Units.Millimetre).ToDouble(), 1e-15);
    }

    [Theory]
    // A dial at the guide's end reads the clearance itself; half a guide past it, twice the clearance.
    [InlineData("method=tilt; guide-length=50 mm; overhang=0 mm", "0.080 mm")]
    [InlineData("method=tilt; guide-length=50 mm; overhang=25 mm", "0.040 mm")]
    [InlineData("method=half", "0.040 mm")]
    [InlineData("method=straight", "0.080 mm")]
    public void Each_method_is_named(string method, string clearance) =>
        WorkBench.Gives("rock-to-clearance", "rock=0.08 mm; " + method, "clearance=" + clearance);

    [Theory]
    [InlineData("rock=-0.1 mm; method=half", "rock")]
    [InlineData("rock=0.1 mm", "method")]
    [InlineData("rock=0.1 mm; method=guess", "method")]
    [InlineData("rock=0.1 mm; method=tilt", "guide-length")]
    [InlineData("rock=0.1 mm; method=tilt; guide-length=50 mm", "overhang")]
    [InlineData("rock=0.1 mm; method=tilt; guide-length=0 mm; overhang=1 mm", "guide-length")]
    [InlineData("rock=0.1 mm; method=tilt; guide-length=50 mm; overhang=-1 mm", "overhang")]
    public void A_reading_that_says_nothing_is_refused(string given, string argument) =>
        Assert.Equal(argument, WorkBench.Fault("rock-to-clearance", given).Argument);

    private static RoundShape Shape(decimal smallest, decimal largest) =>
        Known.Value(
            RoundShape.Of([
                new("top", "1", Known.Millimetres(smallest)),
                new("top", "2", Known.Millimetres(largest)),
                new("bottom", "1", Known.Millimetres(largest)),
            ])
        );
}
