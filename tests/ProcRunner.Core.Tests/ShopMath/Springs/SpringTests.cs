using FsCheck.Xunit;
using ProcRunner.Core.Tests.ShopMath.Work;
using ProcRunner.Quantities;
using ProcRunner.ShopMath;

namespace ProcRunner.Core.Tests.ShopMath.Springs;

public class SpringTests
{
    // TM 9-2815-220-24, WP 0145: loads at lengths of the inner, middle and outer spring; rates and free lengths worked by hand.
    [Theory]
    [InlineData("26.2 lbf", "2.07 in", "43.9 lbf", "1.30 in", "22.987012987 lbf/in", "4.025642836 N/mm", "3.209774 in")]
    [InlineData("51.7 lbf", "2.26 in", "81.4 lbf", "1.56 in", "42.428571429 lbf/in", "7.430381438 N/mm", "3.478519 in")]
    [InlineData(
        "85.4 lbf",
        "2.26 in",
        "134.2 lbf",
        "1.56 in",
        "69.714285714 lbf/in",
        "12.208842229 N/mm",
        "3.485000 in"
    )]
    public void Rate_and_free_length(
        string load1,
        string height1,
        string load2,
        string height2,
        string inch,
        string metric,
        string free
    )
    {
        string two = $"load1={load1}; height1={height1}; load2={load2}; height2={height2}";
        WorkBench.Gives("spring-rate", two, $"rate={inch}; rate={metric}");
        Exact rate = Known.Value(Spring.Rate(Known.Of(load1), Known.Of(height1), Known.Of(load2), Known.Of(height2)));

        Exact found = Known.Value(Spring.HeightFor(Known.Of(load1), Known.Of(height1), rate, Known.Of("0 N")));

        Assert.True(found.TryToQuantity(Units.Inch, 6, Rounding.Nearest, out Quantity rounded));
        Assert.Equal(free, rounded.ToString());
    }

    // The same page: open height less solid height is 0.020, 0.220, 0.090 in.
    [Theory]
    [InlineData("2.07 in", "0.77 in", "1.28 in", "0.020 in")]
    [InlineData("2.26 in", "0.70 in", "1.34 in", "0.220 in")]
    [InlineData("2.26 in", "0.70 in", "1.47 in", "0.090 in")]
    public void Coil_bind_margin(string height, string lift, string solid, string left) =>
        Assert.Equal(
            Known.Of(left),
            Known.Value(Spring.CoilBindMargin(Known.Of(height), Known.Of(lift), Known.Of(solid)))
        );

    // The middle spring of that page, installed at 2.29 instead of 2.26 in: worked by hand, inside 51.7 +- 2.60; 0.030 of shim restores.
    [Fact]
    public void A_spring_too_high_is_weak_until_it_is_shimmed()
    {
        Exact rate = Known.Value(
            Spring.Rate(Known.Of("51.7 lbf"), Known.Of("2.26 in"), Known.Of("81.4 lbf"), Known.Of("1.56 in"))
        );
        Exact load = Known.Value(Spring.LoadAt(Known.Of("51.7 lbf"), Known.Of("2.26 in"), rate, Known.Of("2.29 in")));

        Assert.True(load.TryToQuantity(Units.PoundForce, 6, Rounding.Nearest, out Quantity rounded));
        Assert.Equal("50.427143 lbf", rounded.ToString());
        Assert.True(load.CompareTo(Known.Of("49.10 lbf")) > 0 && load.CompareTo(Known.Of("54.30 lbf")) < 0);
        Assert.Equal(Known.Of("0.030 in"), Spring.ShimFor(Known.Of("2.29 in"), Known.Of("2.26 in")));
    }

    // The bands of that page, in pounds, are a tenth of the load at full lift and a twentieth of it with the valve closed.
    [Theory]
    [InlineData("43.9 lbf", "4.39 lbf", "10.0 %")]
    [InlineData("26.2 lbf", "1.31 lbf", "5.0 %")]
    [InlineData("81.4 lbf", "8.14 lbf", "10.0 %")]
    [InlineData("51.7 lbf", "2.60 lbf", "5.0 %")]
    [InlineData("134.2 lbf", "13.42 lbf", "10.0 %")]
    [InlineData("85.4 lbf", "4.27 lbf", "5.0 %")]
    public void A_load_at_the_end_of_its_band_is_so_far_off(string load, string band, string off)
    {
        Exact highest = Known.Of(load) + Known.Of(band);

        Assert.True(
            Known
                .Value(Spring.PartOff(highest, Known.Of(load)))
                .TryToQuantity(Units.Percent, 1, Rounding.Nearest, out Quantity found)
        );
        Assert.Equal(off, found.ToString());
    }

    // Geometry: a valve that sinks takes its retainer along, so the spring's seat load falls by rate x sink, the tip rises by the
    // sink, and a shim as thick as the sink gives the load back.
    [Property]
    public void A_sunk_valve_loses_the_rate_times_its_sink(byte sink, byte rate)
    {
        Exact by = Known.Millimetres(sink / 100m);
        Exact stiffness = Exact.Of(new Quantity(1 + rate, Units.NewtonPerMillimetre));
        Exact load = Exact.Of(new Quantity(1000, Units.Newton));
        Exact none = Known.Millimetres(0);
        Exact height = Known.Millimetres(45);

        Exact sunk = ProcRunner.ShopMath.Heights.InstalledHeight(height, by, none);
        Exact left = Known.Value(Spring.LoadAt(load, height, stiffness, sunk));

        Assert.Equal(by, sunk - height);
        Assert.Equal(
            by,
            ProcRunner.ShopMath.Heights.StemHeight(Known.Millimetres(41), by, none) - Known.Millimetres(41)
        );
        Assert.Equal(stiffness * by, load - left);
        Assert.Equal(by, Spring.ShimFor(sunk, height));
        Assert.Equal(load, Known.Value(Spring.LoadAt(left, sunk, stiffness, sunk - by)));
    }

    // TM 5-1940-322-24: 80.7 and 89.2 lb, printed 359 and 397 N; 1.94 in, printed 49.25 mm, is 49.276.
    [Theory]
    [InlineData("80.7 lbf", "358.97148 N", "359 N")]
    [InlineData("89.2 lbf", "396.78137 N", "397 N")]
    [InlineData("1.94 in", "49.276 mm", "49 mm")]
    public void Loads_of_a_manual_in_both_units(string inch, string metric, string printed)
    {
        foreach (string text in new[] { metric, printed })
        {
            Assert.True(Quantity.TryParse(text, out Quantity wanted));
            Assert.True(
                Known.Of(inch).TryToQuantity(wanted.Unit, wanted.Value.Scale, Rounding.Nearest, out Quantity found)
            );
            Assert.Equal(text, found.ToString());
        }
    }

    [Property]
    public void Height_for_the_load_at_a_height_is_that_height(ushort load, byte rate, byte height)
    {
        Exact known = Exact.Of(new Quantity(1 + load, Units.Newton));
        Exact stiffness = Exact.Of(new Quantity(1 + rate, Units.NewtonPerMillimetre));
        Exact at = Known.Millimetres(100);
        Exact lower = Known.Millimetres(100 - (height % 100m));

        Exact there = Known.Value(Spring.LoadAt(known, at, stiffness, lower));

        Assert.Equal(lower, Known.Value(Spring.HeightFor(known, at, stiffness, there)));
        Assert.True(there.CompareTo(known) >= 0);
        if (lower != at)
        {
            Assert.Equal(stiffness, Known.Value(Spring.Rate(known, at, there, lower)));
            Assert.Equal(stiffness, Known.Value(Spring.Rate(there, lower, known, at)));
        }
    }

    [Theory]
    [InlineData("spring-rate", "load1=50 N; height1=40 mm; load2=60 N; height2=40 mm", "height2", "divides by zero")]
    [InlineData(
        "spring-rate",
        "load1=50 N; height1=40 mm; load2=60 N; height2=50 mm",
        "load2",
        "must rise as the height falls"
    )]
    [InlineData("spring-rate", "load1=50 N; height1=0 mm; load2=60 N; height2=50 mm", "height1", "above 0")]
    [InlineData("spring-load", "load=50 N; height=40 mm; rate=0 N/mm; at=30 mm", "rate", "above 0")]
    [InlineData("spring-load", "load=50 N; height=40 mm; rate=5 N/mm; at=50.1 mm", "at", "free length is 50 mm")]
    [InlineData("spring-load", "load=50 N; height=40 mm; rate=5 N/mm; at=0 mm", "at", "above 0")]
    [InlineData("spring-height", "load=50 N; height=40 mm; rate=5 N/mm; wanted=-1 N", "wanted", "not be below 0")]
    [InlineData("spring-height", "load=50 N; height=40 mm; rate=5 N/mm; wanted=250 N", "wanted", "no height")]
    [InlineData("percent-of-spec", "reading=50 N; spec=0 N", "spec", "divides by zero")]
    [InlineData("coil-bind", "height=0 in; lift=0.4 in; solid=1.2 in", "height", "above 0")]
    [InlineData("coil-bind", "height=1.8 in; lift=-0.4 in; solid=1.2 in", "lift", "not be below 0")]
    [InlineData("coil-bind", "height=1.8 in; lift=0.4 in; solid=0 in", "solid", "above 0")]
    [InlineData("coil-bind", "height=1.8 in; lift=0.4 in; solid=1.2 in; margin=-1 in", "margin", "not be below 0")]
    [InlineData("retainer-to-seal", "gap=-0.1 in; lift=0.4 in", "gap", "not be below 0")]
    [InlineData("retainer-to-seal", "gap=0.5 in; lift=-0.4 in", "lift", "not be below 0")]
    public void What_is_no_spring_is_refused(string function, string given, string argument, string why)
    {
        ShopFault fault = WorkBench.Fault(function, given);

        Assert.Equal(argument, fault.Argument);
        Assert.Contains(why, fault.Allowed, StringComparison.Ordinal);
    }

    // Common practice, no source: a spring that binds or a retainer that touches is shown below zero, not hidden.
    [Fact]
    public void What_touches_is_below_zero()
    {
        WorkBench.Gives(
            "coil-bind",
            "height=1.7 in; lift=0.5 in; solid=1.25 in; margin=0.05 in",
            "left=-0.05 in; most shim=-0.10 in"
        );
        WorkBench.Gives("retainer-to-seal", "gap=0.45 in; lift=0.5 in", "left=-0.05 in");
    }
}
