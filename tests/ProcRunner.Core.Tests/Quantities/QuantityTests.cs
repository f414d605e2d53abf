using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using ProcRunner.Quantities;

namespace ProcRunner.Tests.Quantities;

public sealed class QuantityTests
{
    [Theory]
    [InlineData("0.058 in", "1.4732 mm")] // 25.4 mm per inch, exact: NIST SP 811 (2008), appendix B.8
    [InlineData("0.002 in", "0.0508 mm")]
    [InlineData("1 in", "1000 thou")]
    [InlineData("1 in3", "16.387064 cm3")] // NIST SP 811 (2008), appendix B.8: exact
    [InlineData("1 lbf", "4.4482216152605 N")] // from lb = 0.45359237 kg and 9.80665 m/s2, exact
    [InlineData("1 lbf\u00B7ft", "1.3558179483314004 N\u00B7m")]
    [InlineData("212 degF", "100 degC")] // NIST SP 811 (2008), appendix B.9: (F - 32)/1.8
    [InlineData("-40 degF", "-40 degC")]
    [InlineData("-109.3 degF", "-78.5 degC")]
    [InlineData("18 degF-diff", "10 K")]
    [InlineData("60 arcmin", "1 deg")]
    [InlineData("1 bar", "100 kPa")]
    [InlineData("1 GPa", "1000 N/mm2")]
    [InlineData("5 %", "0.05")]
    [InlineData("0.008 in/rev", "0.2032 mm/rev")]
    public void Same_amount_in_two_units(string left, string right)
    {
        Assert.True(Read(left).SameAs(Read(right)));
        Assert.Equal(0, Read(left).CompareTo(Read(right)));
        Assert.NotEqual(Read(left), Read(right));
    }

    [Theory]
    [InlineData("29.92 inHg", "kPa", 6, "101.320748 kPa")]
    [InlineData("30 psi", "kPa", 6, "206.842719 kPa")]
    [InlineData("-188 degF-diff", "K", 6, "-104.444444 K")]
    [InlineData("2693 arcmin", "deg", 6, "44.883333 deg")] // 44 degrees 53 minutes
    public void Converts_to_the_digits_asked_for(string from, string unit, int digits, string expected)
    {
        Assert.True(Read(from).TryConvert(Units.Find(unit)!, digits, Rounding.Nearest, out Quantity result));
        Assert.Equal(expected, result.ToString());
    }

    [Fact]
    public void Rounds_a_conversion_the_way_it_is_told()
    {
        Assert.True(Read("0.058 in").TryConvert(Units.Millimetre, 3, Rounding.Up, out Quantity up));
        Assert.Equal("1.474 mm", up.ToString());
        Assert.True(Read("0.058 in").TryConvert(Units.Millimetre, 3, Rounding.Down, out Quantity down));
        Assert.Equal("1.473 mm", down.ToString());
    }

    [Fact]
    public void What_measures_something_else_neither_compares_nor_converts()
    {
        Assert.Throws<ArgumentException>(() => Read("1 in").CompareTo(Read("1 N")));
        Assert.Throws<ArgumentException>(() => Read("300 degF").CompareTo(Read("300 K")));
        Assert.Throws<ArgumentException>(() => Read("1 rpm").CompareTo(Read("1 Hz")));
        Assert.False(Read("0 in").SameAs(Read("0 N")));
        Assert.False(Read("1 in").TryConvert(Units.Newton, 3, Rounding.Nearest, out _));
        Assert.False(new Quantity(decimal.MaxValue, Units.Inch).TryConvert(Units.Thou, 0, Rounding.Up, out _));
    }

    [Fact]
    public void A_limit_in_the_other_unit_is_never_missed()
    {
        // 0.020 in is 0.508 mm
        Assert.True(Read("0.020 in").CompareTo(Read("0.5 mm")) > 0);

        // Every 0.0001 in up to 10 in, against its exact millimetres and against the step below.
        Quantity below = new(-1, Units.Millimetre);
        for (int step = 0; step <= 100_000; step++)
        {
            Quantity inches = new(step / 10000m, Units.Inch);
            Quantity millimetres = new(step * 0.00254m, Units.Millimetre);
            Assert.True(inches.CompareTo(millimetres) == 0 && millimetres.CompareTo(inches) == 0, inches.ToString());
            Assert.True(inches.CompareTo(below) > 0, inches.ToString());
            below = millimetres;
        }
    }

    [Theory]
    [InlineData("0.0520in", "0.0520 in")]
    [InlineData("-.0520 in", "-0.0520 in")]
    [InlineData("-0.000 mm", "0.000 mm")]
    [InlineData("12.50", "12.50")]
    [InlineData("0.0000117 1/K", "0.0000117 1/K")]
    [InlineData("45\u00B0", "45 deg")]
    [InlineData("5 \u03BCm", "5 \u00B5m")]
    public void Places_are_kept_and_the_unit_is_written_one_way(string text, string expected) =>
        Assert.Equal(expected, Read(text).ToString());

    [Theory]
    [InlineData("")]
    [InlineData(" 1 in")]
    [InlineData("1 in ")]
    [InlineData("in")]
    [InlineData("+1 in")]
    [InlineData("1e-3 in")]
    [InlineData("1,5 in")]
    [InlineData("1/16 in")]
    [InlineData("0.0.5 in")]
    [InlineData("--1 in")]
    [InlineData(". in")]
    [InlineData("1 furlong")]
    [InlineData("\u0661 in")] // Arabic-Indic one
    [InlineData("79228162514264337593543950336 in")] // 2^96: one more than a decimal holds
    [InlineData("0.00000000000000000000000000001 in")] // 29 places
    public void Refuses_every_other_form(string text) => Assert.False(Quantity.TryParse(text, out _));

    [Fact]
    public void Default_is_the_number_zero() => Assert.Equal(new Quantity(0, Units.One), default);

    [Theory]
    [InlineData("2693 arcmin", "44\u00B053'")]
    [InlineData("-2693.5 arcmin", "-44\u00B053.5'")]
    [InlineData("30 arcmin", "0\u00B030'")]
    [InlineData("44.5 deg", "44.5 deg")]
    [InlineData("0.0520 in", "0.0520 in")]
    public void Shows_minutes_of_angle_as_they_are_typed(string text, string expected) =>
        Assert.Equal(expected, Read(text).ToDisplay());

    [Property]
    public Property Text_reads_back_equal() =>
        Prop.ForAll(
            LengthQuantities.Of(Units.All).ToArbitrary(),
            quantity =>
                Quantity.TryParse(quantity.ToString(), out Quantity back)
                && back == quantity
                && back.Value.Scale == quantity.Value.Scale
        );

    [Property]
    public Property Order_is_total_across_units()
    {
        Gen<Quantity> one = LengthQuantities.Of(LengthQuantities.Lengths);
        return Prop.ForAll(
            Gen.Three(one).ToArbitrary(),
            three =>
            {
                (Quantity a, Quantity b, Quantity c) = three;
                bool isMirrored = Math.Sign(a.CompareTo(b)) == -Math.Sign(b.CompareTo(a));
                bool isTransitive = !(a.CompareTo(b) <= 0 && b.CompareTo(c) <= 0) || a.CompareTo(c) <= 0;
                return isMirrored && isTransitive && (a.CompareTo(b) == 0) == a.SameAs(b);
            }
        );
    }

    // A limit and its conversion rounded down must never let through what the limit itself refuses.
    [Property]
    public Property A_conversion_rounded_down_is_not_above_the_original() =>
        Prop.ForAll(
            Gen.Two(LengthQuantities.Of(LengthQuantities.Lengths)).ToArbitrary(),
            pair =>
                pair.Item1.TryConvert(pair.Item2.Unit, 4, Rounding.Down, out Quantity down)
                && pair.Item1.TryConvert(pair.Item2.Unit, 4, Rounding.Up, out Quantity up)
                && down.CompareTo(pair.Item1) <= 0
                && up.CompareTo(pair.Item1) >= 0
        );

    private static Quantity Read(string text) =>
        Quantity.TryParse(text, out Quantity quantity) ? quantity : throw new ArgumentException(text, nameof(text));
}
