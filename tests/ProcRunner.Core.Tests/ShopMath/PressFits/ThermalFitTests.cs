using System.Globalization;
using FsCheck.Xunit;
using ProcRunner.Core.Tests.ShopMath.Work;
using ProcRunner.Quantities;
using ProcRunner.ShopMath;

namespace ProcRunner.Core.Tests.ShopMath.PressFits;

public class ThermalFitTests
{
    // Expansions of Callister, Materials Science and Engineering, Table B.6: aluminium 356.0 21.5e-6, grey iron 11.4e-6, steel 1020
    // 11.7e-6 per degree Celsius; the rest worked by hand on a diameter of 38 mm.
    [Theory]
    [InlineData("part-material=aluminium-356", "146.878825 K")]
    [InlineData("part-material=grey-iron-g3000", "277.008310 K")]
    [InlineData("part-expansion=0.0000215 1/K", "264.381885 degF-diff")]
    public void Heat_to_open_a_bore(string part, string difference) =>
        WorkBench.Gives(
            "assembly-temperature",
            "interference=0.10 mm; clearance=0.02 mm; diameter=38 mm; " + part,
            "difference=" + difference
        );

    // Boresi and Schmidt, Advanced Mechanics of Materials, Ex. 11.3, p. 398: 0.072 mm of interference and 0.025 of clearance on a radius
    // of 25 mm, 11.7e-6 per degree Celsius; printed 331.62.
    [Fact]
    public void Heat_to_go_together_as_printed()
    {
        Exact difference = Known.Value(
            ThermalFit.TemperatureDifference(
                Known.Millimetres(0.144m),
                Known.Millimetres(0.050m),
                Exact.Of(new Quantity(0.0000117m, Units.PerKelvin)),
                Known.Millimetres(50)
            )
        );

        Known.Printed("331.62393162393164", difference.In(Units.KelvinDifference).ToDouble());
        Known.Printed("331.62", difference.In(Units.KelvinDifference).ToDouble());
    }

    // Steel of 38 mm from 20 degC in dry ice and in nitrogen; upper bounds, since the expansion is taken as constant.
    [Theory]
    [InlineData("-78.5 degC", "-0.0437931 mm")]
    [InlineData("-196 degC", "-0.0960336 mm")]
    [InlineData("-109.3 degF", "-0.0437931 mm")]
    public void Cold_shrinks_steel(string to, string change) =>
        WorkBench.Gives(
            "length-change",
            $"length=38 mm; start=20 degC; end={to}; part-material=steel-1020",
            "change=" + change
        );

    // Callister as above, +100 K for both: aluminium lets go by 0.03724 mm, grey iron tightens by 0.00114 mm.
    [Theory]
    [InlineData("aluminium-356", "-0.03724 mm")]
    [InlineData("grey-iron-g3000", "0.00114 mm")]
    public void A_warm_head_keeps_or_loses_its_fit(string head, string left) =>
        WorkBench.Gives(
            "fit-at-temperature",
            "interference=0 mm; diameter=38 mm; measured-at=20 degC; outer-at=120 degC; inner-at=120 degC; "
                + $"outer-material={head}; inner-material=steel-1020",
            "interference left=" + left
        );

    // Each part at its own temperature, by hand: 0.1 - 38 (21.5e-6 x 80 - 11.7e-6 x 180) = 0.1146680.
    [Fact]
    public void Each_part_has_its_own_temperature() =>
        WorkBench.Gives(
            "fit-at-temperature",
            "interference=0.1 mm; diameter=38 mm; measured-at=20 degC; outer-at=100 degC; inner-at=200 degC; "
                + "outer-material=aluminium-356; inner-material=steel-1020",
            "interference left=0.1146680 mm"
        );

    [Property]
    public void Warming_both_alike_and_back_leaves_the_fit_as_it_was(short warming, byte outer, byte inner)
    {
        Exact left = Left(Known.Millimetres(0.1m), warming, outer, inner);

        Assert.Equal(Known.Millimetres(0.1m), Left(left, -warming, outer, inner));
    }

    [Property]
    public void The_temperature_for_assembly_takes_the_whole_interference(ushort interference, byte expansion)
    {
        Exact over = Known.Millimetres(interference / 1000m);
        Exact alpha = Expansion(expansion + 1);

        Exact difference = Known.Value(
            ThermalFit.TemperatureDifference(over, Known.Millimetres(0), alpha, Known.Millimetres(38))
        );

        Exact none = new(Rational.Zero, Dimension.OfTemperatureDifference);
        Exact left = Known.Value(
            ThermalFit.InterferenceLeft(over, Known.Millimetres(38), alpha, difference, alpha, none)
        );
        Assert.True(left.Value.IsZero);
    }

    [Theory]
    [InlineData("interference=-0.1 mm; clearance=0 mm; diameter=38 mm", "interference")]
    [InlineData("interference=0.1 mm; clearance=-1 mm; diameter=38 mm", "clearance")]
    [InlineData("interference=0.1 mm; clearance=0 mm; diameter=0 mm", "diameter")]
    public void What_is_no_fit_is_refused(string given, string argument) =>
        Assert.Equal(argument, WorkBench.Fault("assembly-temperature", given + "; part-material=steel-1020").Argument);

    [Theory]
    [InlineData("", "part-material")]
    [InlineData("; part-material=phosphor-bronze", "17e-6 to 18e-6")]
    public void A_missing_expansion_is_asked_for(string part, string says) =>
        Assert.Contains(
            says,
            WorkBench
                .Fault("assembly-temperature", "interference=0.1 mm; clearance=0 mm; diameter=38 mm" + part)
                .ToString(),
            StringComparison.Ordinal
        );

    [Fact]
    public void Every_material_says_where_its_figures_are_from()
    {
        Assert.All(Material.All, one => Assert.NotEmpty(one.Origin));
        Assert.Equal(Material.All.Count, Material.All.DistinctBy(one => one.Name).Count());
        Assert.Null(Material.Find("unobtainium"));
    }

    // Callister, Table B.6, in both of its columns: 1e-6 per degree Celsius and per degree Fahrenheit. Grey iron of no grade: Elements
    // of Metric Gear Technology, p. 201, 32 to 212 degF, per degree Fahrenheit only; the other figure is 1.8 times it.
    [Theory]
    [InlineData("grey-iron-g1800", "11.4", "6.3")]
    [InlineData("grey-iron-g3000", "11.4", "6.3")]
    [InlineData("grey-iron-g4000", "11.4", "6.3")]
    [InlineData("grey-iron", "10.8", "6.0")]
    [InlineData("ductile-iron-60-40-18", "11.2", "6.2")]
    [InlineData("ductile-iron-80-55-06", "10.6", "5.9")]
    [InlineData("aluminium-356", "21.5", "11.9")]
    [InlineData("steel-1020", "11.7", "6.5")]
    [InlineData("steel-1040", "11.3", "6.3")]
    [InlineData("steel-4140", "12.3", "6.8")]
    [InlineData("stainless-304", "17.2", "9.6")]
    [InlineData("stainless-316", "15.9", "8.8")]
    [InlineData("stainless-440a", "10.2", "5.7")]
    [InlineData("nickel-200", "13.3", "7.4")]
    [InlineData("alloy-625", "12.8", "7.1")]
    [InlineData("bronze-c93200", "18.0", "10.0")]
    public void Expansions_agree_with_both_printed_columns(string name, string perCelsius, string perFahrenheit)
    {
        Exact expansion = Material.Find(name)!.Expansion!.Value;

        Known.Printed(perCelsius, expansion.In(Units.PerKelvin).ToDouble() * 1e6);
        Known.Printed(perFahrenheit, expansion.In(Units.PerFahrenheit).ToDouble() * 1e6);
    }

    // Callister, Table B.2 (modulus in GPa); Poisson's ratios 0.292, 0.305, 0.211 and 0.349 of a textbook table, 0.31 of nickel from
    // http://academics.triton.edu/faculty/fheitzman/strengthofmaterials.html. A figure from memory is no check and is left out.
    [Theory]
    [InlineData("grey-iron", "100", "0.211")]
    [InlineData("ductile-iron-60-40-18", "169", null)]
    [InlineData("ductile-iron-80-55-06", "168", null)]
    [InlineData("aluminium-356", "72.4", null)]
    [InlineData("steel-1020", "207", "0.292")]
    [InlineData("steel-1040", "207", null)]
    [InlineData("steel-4140", "207", null)]
    [InlineData("stainless-304", "193", "0.305")]
    [InlineData("stainless-316", "193", "0.305")]
    [InlineData("stainless-440a", "200", "0.305")]
    [InlineData("nickel-200", null, "0.31")]
    [InlineData("phosphor-bronze", "111", "0.349")]
    public void Moduli_are_as_printed(string name, string? modulus, string? poisson)
    {
        Material material = Material.Find(name)!;

        if (modulus is not null)
        {
            Assert.Equal(decimal.Parse(modulus, CultureInfo.InvariantCulture), material.ModulusGigapascals);
        }

        if (poisson is not null)
        {
            Assert.Equal(decimal.Parse(poisson, CultureInfo.InvariantCulture), material.Poisson);
        }
    }

    // Ranges in print, which are no one figure and stand in the note: Callister, Table B.2 (grey irons); the gear handbook above (iron
    // powder metal, 12 to 25 Mpsi); an expansion of phosphor bronze, 17 to 18, in print also as 9.4 to 10.0 per degree Fahrenheit.
    [Theory]
    [InlineData("grey-iron-g1800", "66 to 97 GPa")]
    [InlineData("grey-iron-g3000", "90 to 113 GPa")]
    [InlineData("grey-iron-g4000", "110 to 138 GPa")]
    [InlineData("phosphor-bronze", "17e-6 to 18e-6 1/K")]
    [InlineData("iron-powder-metal", "83 to 172 GPa")]
    public void Ranges_are_as_printed(string name, string range) =>
        Assert.Contains(range, Material.Find(name)!.Note, StringComparison.Ordinal);

    // The same tables print these in both units: Mpsi and GPa, 1e-6 per degree Celsius and Fahrenheit.
    [Fact]
    public void Figures_printed_in_two_units_agree()
    {
        Known.Printed("14.5", Known.Of("100 GPa").In(Units.Psi).ToDouble() / 1e6);
        Known.Printed("83", Known.Of("12000000 psi").In(Units.Gigapascal).ToDouble());
        Known.Printed("172", Known.Of("25000000 psi").In(Units.Gigapascal).ToDouble());
        Known.Printed("9.4", Known.Of("0.000017 1/K").In(Units.PerFahrenheit).ToDouble() * 1e6);
        Known.Printed("10.0", Known.Of("0.000018 1/K").In(Units.PerFahrenheit).ToDouble() * 1e6);
    }

    private static Exact Left(Exact interference, int warming, byte outer, byte inner)
    {
        Exact by = Exact.Of(new Quantity(warming, Units.KelvinDifference));
        return Known.Value(
            ThermalFit.InterferenceLeft(interference, Known.Millimetres(38), Expansion(outer), by, Expansion(inner), by)
        );
    }

    private static Exact Expansion(int millionths) => Exact.Of(new Quantity(millionths / 1_000_000m, Units.PerKelvin));
}
