using FsCheck.Xunit;
using ProcRunner.Core.Tests.ShopMath.Work;
using ProcRunner.Quantities;
using ProcRunner.ShopMath;

namespace ProcRunner.Core.Tests.ShopMath.Cutting;

public class CuttingSpeedTests
{
    [Theory]
    // F. D. Jones, Turning and Boring, rules for calculating cutting speeds: 12 x 60 / (pi x 5), printed 46.
    [InlineData("60 ft/min", "5 in", "45.8366236105 rpm")]
    [InlineData("60 ft/min", "5 in", "46 rpm")]
    // https://www.phantom.eu/en-us/information-advice/tips-tricks/87/freessnelheidberekenen, printed 663.
    [InlineData("25 m/min", "12 mm", "663.145596216 rpm")]
    // P. C. Sharma, Production Engineering, ch. 22, printed 159, 954, 1336.9, 334.23.
    [InlineData("30 m/min", "60 mm", "159.154943092 rpm")]
    [InlineData("30 m/min", "10 mm", "954.929658551 rpm")]
    [InlineData("21 m/min", "5 mm", "1336.90152197 rpm")]
    [InlineData("21 m/min", "20 mm", "334.225380493 rpm")]
    // Worked by hand.
    [InlineData("1000 ft/min", "6.5 in", "587.649020647 rpm")]
    [InlineData("1 ft/min", "1 in", "3.81971863421 rpm")]
    [InlineData("1 m/min", "1 mm", "318.309886184 rpm")]
    public void Spindle_speed(string speed, string diameter, string spindle) =>
        WorkBench.Gives("spindle-speed", $"speed={speed}; diameter={diameter}", "spindle=" + spindle);

    [Property]
    public void The_cutting_speed_of_a_spindle_speed_is_the_one_asked_for(ushort speed, ushort diameter)
    {
        Exact wanted = Exact.Of(new Quantity((1 + speed) / 10m, Units.FootPerMinute));
        Exact size = Exact.Of(new Quantity((1 + diameter) / 1000m, Units.Inch));

        Exact spindle = Known.Value(CuttingSpeed.SpindleSpeed(wanted, size));
        Exact back = Known.Value(CuttingSpeed.SurfaceSpeed(spindle, size));

        Assert.InRange((back / wanted).Value.ToDouble(), 1 - 1e-11, 1 + 1e-11);
    }

    [Theory]
    [InlineData("slowest=40 rpm; fastest=2000 rpm", "954.929658551 rpm", "30.0000 m/min")]
    [InlineData("slowest=40 rpm; fastest=500 rpm", "500 rpm", "15.7080 m/min")]
    [InlineData("slowest=1000 rpm; fastest=2000 rpm", "1000 rpm", "31.4159 m/min")]
    [InlineData("slowest=500 rpm; fastest=500 rpm", "500 rpm", "15.7080 m/min")]
    public void The_machine_holds_it_to_its_range(string range, string spindle, string left) =>
        WorkBench.Gives(
            "spindle-speed",
            $"speed=30 m/min; diameter=10 mm; {range}",
            $"spindle={spindle}; speed left={left}"
        );

    [Property]
    public void A_speed_held_to_a_range_is_in_it(ushort wanted, ushort a, ushort b)
    {
        Exact[] ends = [.. new[] { a, b }.Order().Select(one => Rpm(1 + one))];

        Exact held = Known.Value(CuttingSpeed.WithinRange(Rpm(wanted), ends[0], ends[1]));

        Assert.True(held.CompareTo(ends[0]) >= 0 && held.CompareTo(ends[1]) <= 0);
        Assert.Equal(held, Known.Value(CuttingSpeed.WithinRange(held, ends[0], ends[1])));
    }

    // R = f²/(8 r), from memory: 0.1 mm a turn and 0.8 mm give 1.5625 micrometre.
    [Fact]
    public void Ideal_roughness_and_the_feed_for_it()
    {
        Exact roughness = Known.Value(CuttingSpeed.IdealRoughness(Known.Of("0.1 mm/rev"), Known.Of("0.8 mm")));

        Assert.Equal(Known.Of("1.5625 um"), roughness);
        Assert.Equal(Known.Of("0.1 mm/rev"), Known.Value(CuttingSpeed.FeedForRoughness(roughness, Known.Of("0.8 mm"))));
    }

    // The exact height of the cusp between two circles of radius r a feed f apart is r - root(r² - f²/4).
    [Property]
    public void Ideal_roughness_is_near_the_cusp_between_two_circles(byte feed)
    {
        double f = 0.01 + (feed / 2000.0);
        Exact roughness = Known.Value(
            CuttingSpeed.IdealRoughness(
                new Exact(Rational.FromDouble(f) / Rational.FromInteger(360), Dimension.OfFeed),
                Known.Of("0.8 mm")
            )
        );

        double cusp = 0.8 - Math.Sqrt((0.8 * 0.8) - (f * f / 4));
        Assert.InRange(roughness.In(Units.Millimetre).ToDouble() / cusp, 0.99, 1.0001);
    }

    [Theory]
    [InlineData("spindle-speed", "speed=60 ft/min; diameter=0 in", "diameter")]
    [InlineData("spindle-speed", "speed=-60 ft/min; diameter=5 in", "speed")]
    [InlineData("spindle-speed", "speed=60 ft/min; diameter=5 in; slowest=40 rpm", "fastest")]
    [InlineData("spindle-speed", "speed=60 ft/min; diameter=5 in; slowest=400 rpm; fastest=40 rpm", "slowest")]
    [InlineData("spindle-speed", "speed=60 ft/min; diameter=5 in; slowest=0 rpm; fastest=40 rpm", "slowest")]
    [InlineData("surface-speed", "spindle=-60 rpm; diameter=5 in", "spindle")]
    [InlineData("feed-speed", "feed=-0.1 mm/rev; spindle=100 rpm", "feed")]
    [InlineData("ideal-roughness", "feed=0 mm/rev; nose=0.8 mm", "feed")]
    [InlineData("ideal-roughness", "feed=0.9 mm/rev; nose=0.8 mm", "feed")]
    [InlineData("ideal-roughness", "feed=0.1 mm/rev; nose=0 mm", "nose")]
    [InlineData("feed-for-roughness", "roughness=0 um; nose=0.8 mm", "roughness")]
    [InlineData("feed-for-roughness", "roughness=101 um; nose=0.8 mm", "roughness")]
    public void What_can_not_cut_is_refused(string function, string given, string argument) =>
        Assert.Equal(argument, WorkBench.Fault(function, given).Argument);

    private static Exact Rpm(int value) => Exact.Of(new Quantity(value, Units.Rpm));
}
