using FsCheck.Xunit;
using ProcRunner.Core.Tests.ShopMath.Work;
using ProcRunner.Quantities;
using ProcRunner.ShopMath;

namespace ProcRunner.Core.Tests.ShopMath.Springs;

public class WireSpringTests
{
    private const double Inch = 25.4;
    private const double Psi = 0.0068947572931683613;
    private const double PoundPerInch = 0.1751268352464764;

    // Jindal, Machine Design, Ex. 8.1: d 5, D 30 mm, 84 GPa, 15 coils, 300 N. Inputs as printed; a public notebook of it divides whole
    // numbers and gets 16.0, 18.0, 1.0 and 1.1025.
    [Fact]
    public void Rate_travel_and_corrections()
    {
        WireSpring spring = new(5, 30, 15, 84_000);

        Assert.Null(spring.Fault);
        Known.Printed("16.203703703703702", spring.RateNewtonsPerMillimetre);
        Known.Printed("18.514285714285716", 300 / spring.RateNewtonsPerMillimetre);
        Known.Printed("1.0833333", spring.ShearCorrection);
        Known.Printed("1.2525", spring.WahlCorrection);
        // By hand: 16.2037037 / (1 + 1/72), and 1.2525 x 8 x 300 x 30 / (pi 125).
        Known.Printed("15.9817352", spring.RateWithShearNewtonsPerMillimetre);
        Known.Printed("229.641484", spring.StressMegapascals(300));
    }

    // Wentzell, Machine Design, Ex. 8.2, p. 163: 0.105 in wire, 0.620 in, 11.85e6 psi, 35 lb at 0.5 in; printed 12.79 coils with two at
    // the ends.
    [Fact]
    public void Coils_for_a_rate()
    {
        double coils = Known.Value(
            WireSpring.CoilsFor(0.105 * Inch, 0.620 * Inch, 11.85e6 * Psi, 35 / 0.5 * PoundPerInch)
        );

        Known.Printed("10.792261282245477", coils);
        Known.Printed("12.792261", coils + 2);
        Known.Printed("12.79", coils + 2);
        Exact rate = Known.Value(
            Spring.Rate(Known.Of("0 lbf"), Known.Of("2.0 in"), Known.Of("35 lbf"), Known.Of("1.5 in"))
        );
        Assert.Equal(Known.Of("70 lbf/in"), rate);
    }

    // Wentzell, Machine Design, Ex. 8.4, p. 165: 35 lb on 73.3 lb/in; printed 0.48 in.
    [Fact]
    public void Travel_under_a_load()
    {
        Exact free = Known.Of("2 in");
        Exact pressed = Known.Value(
            Spring.HeightFor(Known.Of("0 lbf"), free, Known.Of("73.3 lbf/in"), Known.Of("35 lbf"))
        );

        Known.Printed("0.4774898", (free - pressed).In(Units.Inch).ToDouble());
        Known.Printed("0.48", (free - pressed).In(Units.Inch).ToDouble());
    }

    // A published quiz on Shigley, chapter 10: 1.905 mm wire, outside 19.380, 14.2 coils squared and ground, 81 GPa, 7860 kg/m3; printed
    // 2.05 N/mm, 27.1 mm, 185 Hz.
    [Fact]
    public void Solid_height_mass_and_natural_frequency()
    {
        WireSpring spring = new(1.905, 19.380 - 1.905, 14.2 - 2, 81_000);

        Known.Printed("2.04815852750642", spring.RateNewtonsPerMillimetre);
        Known.Printed("2.05", spring.RateNewtonsPerMillimetre);
        Known.Printed("17.475", spring.MeanMillimetres);
        Known.Printed("12.2", spring.ActiveCoils);
        Known.Printed("27.051", spring.SolidMillimetres(14.2, areGround: true));
        Known.Printed("27.1", spring.SolidMillimetres(14.2, areGround: true));
        Known.Printed("0.0150047677", spring.MassKilograms(7860));
        Known.Printed("184.72988", spring.NaturalFrequencyHertz(7860));
        Known.Printed("185", spring.NaturalFrequencyHertz(7860));
    }

    // Shigley, Ex. 10-1 (from memory; digits worked by hand): 0.037 in wire, outside 7/16 in, 12.5 coils squared, 11.85e6 psi: rate 4.13
    // lb/in, 6.46 lb at 1.56 in, solid 0.4995 in, free 2.06 in.
    [Fact]
    public void Squared_ends()
    {
        WireSpring spring = new(0.037 * Inch, 0.400 * Inch, 10.5, 11.85e6 * Psi);
        double rate = spring.RateNewtonsPerMillimetre / PoundPerInch;
        double solid = spring.SolidMillimetres(12.5, areGround: false) / Inch;

        Known.Printed("4.131102650669641", rate);
        Known.Printed("4.13", rate);
        Known.Printed("1.56374715", 6.46 / rate);
        Known.Printed("1.56", 6.46 / rate);
        Known.Printed("0.4995", solid);
        Known.Printed("2.06324715", solid + (6.46 / rate));
        Known.Printed("2.06", solid + (6.46 / rate));
    }

    [Property]
    public void Coils_for_the_rate_of_so_many_coils_are_so_many(byte wire, byte mean, byte coils)
    {
        double d = 1 + (wire / 50.0);
        WireSpring spring = new(d, d + 1 + mean, 1 + coils, 80_000);

        double found = Known.Value(WireSpring.CoilsFor(d, d + 1 + mean, 80_000, spring.RateNewtonsPerMillimetre));

        Assert.Equal(1 + coils, found, 1e-9);
    }

    [Theory]
    [InlineData(0, 30, 15, 84_000, "wire")]
    [InlineData(5, 5, 15, 84_000, "mean diameter")]
    [InlineData(5, double.NaN, 15, 84_000, "mean diameter")]
    [InlineData(5, 30, 0, 84_000, "coils")]
    [InlineData(5, 30, 15, -1, "shear modulus")]
    public void What_is_no_spring_is_named(double wire, double mean, double coils, double modulus, string argument) =>
        Assert.Equal(argument, new WireSpring(wire, mean, coils, modulus).Fault?.Argument);

    [Fact]
    public void A_rate_or_density_of_nothing_is_refused()
    {
        const string coil = "wire=5 mm; mean-diameter=30 mm; shear-modulus=84 GPa; ";

        Assert.Equal("rate", WorkBench.Fault("spring-coils", coil + "rate=0 N/mm").Argument);
        Assert.Equal("density", WorkBench.Fault("spring-from-wire", coil + "coils=15; density=0 kg/m3").Argument);
    }

    // TM 9-2815-220-24, WP 0145, middle and outer spring: rates 42.428571 and 69.714286 lb/in together 112.142857; the loads printed at
    // 1.56 in, 81.4 and 134.2, are the sum at full lift.
    [Fact]
    public void Nested_springs_add_up_and_the_first_to_bind_counts()
    {
        Exact middle = Known.Value(
            Spring.Rate(Known.Of("51.7 lbf"), Known.Of("2.26 in"), Known.Of("81.4 lbf"), Known.Of("1.56 in"))
        );
        Exact outer = Known.Value(
            Spring.Rate(Known.Of("85.4 lbf"), Known.Of("2.26 in"), Known.Of("134.2 lbf"), Known.Of("1.56 in"))
        );
        Exact closed = Known.Of("2.26 in");

        NestedSprings nest = Known.Value(
            NestedSprings.Of(
                [Known.Of("51.7 lbf"), Known.Of("85.4 lbf")],
                [middle, outer],
                Known.Of("0.70 in"),
                [closed, closed],
                [Known.Of("1.34 in"), Known.Of("1.47 in")]
            )
        );

        Known.Printed("112.142857", nest.Rate.In(Units.PoundForcePerInch).ToDouble());
        Assert.Equal(Known.Of("215.6 lbf"), nest.Open);
        Assert.Equal(Known.Of("0.090 in"), nest.LeastMargin);
        Assert.Equal(2, nest.Nearest);
    }

    [Theory]
    [InlineData("loads=50 60 N; rates=5 N/mm; lift=10 mm", "rates")]
    [InlineData("loads=50 60 N; rates=5 0 N/mm; lift=10 mm", "rates")]
    [InlineData("loads=50 60 N; rates=5 6 N/mm; lift=-1 mm", "lift")]
    [InlineData("loads=50 60 N; rates=5 6 N/mm; lift=10 mm; heights=40 40 mm", "solids")]
    [InlineData("loads=50 60 N; rates=5 6 N/mm; lift=10 mm; heights=40 mm; solids=20 20 mm", "heights")]
    [InlineData("loads=50 60 N; rates=5 6 N/mm; lift=10 mm; heights=40 0 mm; solids=20 20 mm", "heights")]
    public void Springs_that_do_not_go_together_are_refused(string given, string argument) =>
        Assert.Equal(argument, WorkBench.Fault("nested-springs", given).Argument);

    [Fact]
    public void No_spring_is_no_nest() =>
        Assert.Equal("loads", Known.Fault(NestedSprings.Of([], [], Known.Of("1 mm"), [], [])).Argument);
}
