using System.Globalization;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using ProcRunner.Formulas;
using ProcRunner.Quantities;
using Referee = UnitsNet;

namespace ProcRunner.Tests.Quantities;

public sealed class UnitsTests
{
    // Typed a second time, independent of the table: how many of the reference unit are in one unit, as a ratio.
    // Sources: NIST SP 811 (2008), appendices B.8 and B.9 (inch, foot, pound 0.453 592 37 kg, gravity 9.806 65 m/s2,
    // bar, minute of angle, degree Fahrenheit); SI Brochure, 9th edition (2019) for prefixes, minute and newton.
    public static TheoryData<string, string, string, string> Factors =>
        new()
        {
            { "", "1", "1", "" },
            { "%", "1", "100", "" },
            { "in", "25.4", "1", "mm" },
            { "thou", "0.0254", "1", "mm" },
            { "\u00B5in", "0.0254", "1000", "mm" },
            { "mm", "1", "1", "mm" },
            { "\u00B5m", "1", "1000", "mm" },
            { "deg", "1", "1", "deg" },
            { "arcmin", "1", "60", "deg" },
            { "rpm", "360", "60", "deg/s" },
            { "Hz", "1", "1", "Hz" },
            { "s", "1", "1", "s" },
            { "min", "60", "1", "s" },
            { "N", "1", "1", "N" },
            { "lbf", "4.4482216152605", "1", "N" },
            { "N/mm", "1", "1", "N/mm" },
            { "lbf/in", "4.4482216152605", "25.4", "N/mm" },
            { "N\u00B7m", "1", "1", "N\u00B7m" },
            { "lbf\u00B7ft", "1.3558179483314004", "1", "N\u00B7m" },
            { "lbf\u00B7in", "0.1129848290276167", "1", "N\u00B7m" },
            { "Pa", "1", "1", "Pa" },
            { "kPa", "1000", "1", "Pa" },
            { "MPa", "1000000", "1", "Pa" },
            { "GPa", "1000000000", "1", "Pa" },
            { "bar", "100000", "1", "Pa" },
            { "mbar", "100", "1", "Pa" },
            { "atm", "101325", "1", "Pa" },
            { "psi", "4.4482216152605", "0.00064516", "Pa" },
            { "inHg", "3386.388640341", "1", "Pa" },
            { "mmHg", "133.322387415", "1", "Pa" },
            { "degC", "1", "1", "K" },
            { "degF", "1", "1.8", "K" },
            { "K", "1", "1", "K" },
            { "degF-diff", "1", "1.8", "K" },
            { "1/K", "1", "1", "1/K" },
            { "1/degF-diff", "1.8", "1", "1/K" },
            { "cm2", "100", "1", "mm2" },
            { "in2", "645.16", "1", "mm2" },
            { "cm3", "1", "1", "cm3" },
            { "in3", "16.387064", "1", "cm3" },
            { "ft/min", "304.8", "60", "mm/s" },
            { "m/min", "1000", "60", "mm/s" },
            { "mm/rev", "1", "360", "mm/deg" },
            { "in/rev", "25.4", "360", "mm/deg" },
            { "kg", "1", "1", "kg" },
            { "kg/m3", "1", "1000000000", "kg/mm3" },
            { "Pa\u00B7m3/s", "1", "1", "W" },
        };

    [Theory]
    [MemberData(nameof(Factors))]
    public void A_factor_is_what_its_source_says(string symbol, string above, string below, string reference)
    {
        Rational expected = Rational.FromDecimal(Number(above)) / Rational.FromDecimal(Number(below));
        Assert.Equal(expected * BaseUnitsIn(reference), Units.Find(symbol)!.Factor);
    }

    // 1 N = 1 kg m/s2 = 1000 kg mm/s2 and so on: mm, kg, s, K and deg are the base.
    private static Rational BaseUnitsIn(string reference) =>
        reference switch
        {
            "N" or "N/mm" or "cm3" => Rational.FromInteger(1000),
            "N\u00B7m" or "W" => Rational.FromInteger(1000000),
            "Pa" => Rational.FromRatio(1, 1000),
            _ => Rational.One,
        };

    [Fact]
    public void Every_unit_has_a_second_opinion_and_says_where_its_factor_is_from()
    {
        Assert.Equal(Units.All.Select(unit => unit.Symbol), Factors.Select(row => (string)row[0]));
        Assert.All(
            Units.All,
            unit => Assert.True(unit.Factor.Sign > 0 && unit.Source.Length > 0 && unit.Name.Length > 0)
        );
    }

    // The rounded figures as printed in NIST SP 811 (2008), appendix B.8.
    [Theory]
    [InlineData("psi", "Pa", "6894.757", 3)]
    [InlineData("inHg", "Pa", "3386.389", 3)]
    [InlineData("lbf", "N", "4.448222", 6)]
    [InlineData("lbf\u00B7ft", "N\u00B7m", "1.355818", 6)]
    [InlineData("lbf\u00B7in", "N\u00B7m", "0.1129848", 7)]
    [InlineData("mmHg", "Pa", "133.3224", 4)]
    [InlineData("atm", "Pa", "101325", 0)]
    [InlineData("in3", "cm3", "16.38706", 5)]
    [InlineData("ft/min", "m/min", "0.3048", 4)]
    public void Rounds_to_the_printed_figure(string from, string to, string printed, int digits)
    {
        Assert.True(
            new Quantity(1, Units.Find(from)!).TryConvert(
                Units.Find(to)!,
                digits,
                Rounding.Nearest,
                out Quantity result
            )
        );
        Assert.Equal(Number(printed), result.Value);
    }

    // Exact or to all digits that double precision has: from the pound (0.45359237 kg), 9.80665 m/s2 and the inch; mercury of
    // 13595.1 kg/m3. Atmosphere, bar and the conventional columns: NIST SP 811 (2008), appendix B.8; degrees: appendix B.9.
    [Theory]
    [InlineData("1 in", "25.4 mm")]
    [InlineData("1 ft/min", "0.3048 m/min")]
    [InlineData("1 \u00B5in", "0.0254 \u00B5m")]
    [InlineData("1 in3", "16.387064 cm3")]
    [InlineData("1 lbf", "4.4482216152605 N")]
    [InlineData("1 psi", "6894.757293168361 Pa")]
    [InlineData("1 lbf\u00B7ft", "1.3558179483314004 N\u00B7m")]
    [InlineData("1 lbf\u00B7in", "0.1129848290276167 N\u00B7m")]
    [InlineData("1 lbf/in", "0.1751268352464764 N/mm")]
    [InlineData("1 inHg", "3386.388640341 Pa")]
    [InlineData("1 inHg", "3386.389 Pa")]
    [InlineData("1 mmHg", "133.322387415 Pa")]
    [InlineData("1 atm", "101325 Pa")]
    [InlineData("1 bar", "100000 Pa")]
    [InlineData("1 degF-diff", "0.5555555555555556 K")]
    [InlineData("1.8 degF-diff", "1.0 K")]
    [InlineData("0 degC", "32 degF")]
    [InlineData("-188 degF-diff", "-104.444444 K")]
    [InlineData("29.92 inHg", "101.320748 kPa")]
    [InlineData("30 psi", "206.842719 kPa")]
    [InlineData("0.002 in", "0.0508 mm")]
    [InlineData("-109.3 degF", "-78.5 degC")]
    [InlineData("212 degF", "100 degC")]
    [InlineData("-40 degF", "-40 degC")]
    public void Converts_to_every_digit_known(string from, string to)
    {
        Assert.True(Quantity.TryParse(from, out Quantity amount));
        Assert.True(Quantity.TryParse(to, out Quantity wanted));
        Assert.True(
            amount.TryConvert(wanted.Unit, wanted.Value.Scale, Rounding.Nearest, out Quantity found),
            $"{from} {to}"
        );
        Assert.Equal(wanted, found);
    }

    // 3386.388640341 is mercury of 13595.1 kg/m3 under 9.80665 m/s2, an inch of it; the pound per square inch from its parts.
    [Fact]
    public void Factors_follow_from_their_parts()
    {
        Assert.Equal(3386.388640341m, 13595.1m * 9.80665m * 0.0254m);
        Assert.Equal(133.322387415m, 13595.1m * 9.80665m * 0.001m);
        Assert.Equal(4.4482216152605m, 0.45359237m * 9.80665m);
        Assert.Equal(1.3558179483314004m, 0.45359237m * 9.80665m * 0.3048m);
        Assert.Equal(0.1129848290276167m, 0.45359237m * 9.80665m * 0.0254m);
    }

    // From 80 to -108 degF is -188 degrees Fahrenheit, -104.444444 K (A. Kaw, notes on a shrink fit); 0 degC is 273.15 K.
    [Fact]
    public void Differences_of_temperatures_leave_their_zero_out()
    {
        Exact cooled = Exact.Of(Of("-108 degF")) - Exact.Of(Of("80 degF"));
        Assert.Equal(Exact.Of(Of("-188 degF-diff")), cooled);
        Assert.Equal(-104.444444, cooled.In(Units.Find("K")!).ToDouble(), 6);
        Exact frozen = Exact.Of(Of("0 degC")) - Exact.Of(Of("-273.15 degC"));
        Assert.Equal(Exact.Of(Of("273.15 K")), frozen);
    }

    // A degree is pi/180 rad: its sine is that less a sixth of its cube, and so on.
    [Fact]
    public void A_degree_is_a_180th_of_pi()
    {
        double radian = Math.PI / 180;
        double sine = radian - (Math.Pow(radian, 3) / 6) + (Math.Pow(radian, 5) / 120);
        Assert.Equal(sine, AngleFunctions.Sine(Rational.One), 15);
        Assert.Equal(1, AngleFunctions.Sine(Rational.FromInteger(90)), 15);
        Assert.Equal(sine, AngleFunctions.Cosine(Rational.FromInteger(89)), 14);
    }

    // In doubles 12462 of these steps come back with another last bit; here none does.
    [Fact]
    public void Every_ten_thousandth_of_an_inch_comes_back_from_millimetres()
    {
        int inDoubles = 0;
        for (int step = 1; step <= 100_000; step++)
        {
            Quantity inches = new(step / 10_000m, Units.Inch);
            Rational millimetres = Exact.Of(inches).In(Units.Millimetre);
            Exact back = new(millimetres, Dimension.OfLength);
            Assert.Equal(Rational.FromRatio(step, 10_000), back.In(Units.Inch));
            double x = step * 0.0001;
            inDoubles += x * 25.4 / 25.4 == x ? 0 : 1;
        }

        Assert.NotEqual(0, inDoubles);
    }

    public static TheoryData<string, string, double> Referees =>
        new()
        {
            { "in", "mm", Referee.Length.FromInches(1).Millimeters },
            { "thou", "mm", Referee.Length.FromMils(1).Millimeters },
            { "\u00B5in", "mm", Referee.Length.FromMicroinches(1).Millimeters },
            { "\u00B5m", "mm", Referee.Length.FromMicrometers(1).Millimeters },
            { "arcmin", "deg", Referee.Angle.FromArcminutes(1).Degrees },
            { "lbf", "N", Referee.Force.FromPoundsForce(1).Newtons },
            { "lbf\u00B7ft", "N\u00B7m", Referee.Torque.FromPoundForceFeet(1).NewtonMeters },
            { "psi", "kPa", Referee.Pressure.FromPoundsForcePerSquareInch(1).Kilopascals },
            { "bar", "psi", Referee.Pressure.FromBars(1).PoundsForcePerSquareInch },
            { "GPa", "MPa", Referee.Pressure.FromGigapascals(1).Megapascals },
            { "min", "s", Referee.Duration.FromMinutes(1).Seconds },
            { "in2", "cm2", Referee.Area.FromSquareInches(1).SquareCentimeters },
            { "in3", "cm3", Referee.Volume.FromCubicInches(1).CubicCentimeters },
            { "ft/min", "m/min", Referee.Speed.FromFeetPerMinute(1).MetersPerMinutes },
            { "degF", "degC", Referee.Temperature.FromDegreesFahrenheit(1).DegreesCelsius },
            { "degF-diff", "K", Referee.TemperatureDelta.FromDegreesFahrenheit(1).Kelvins },
            { "1/degF-diff", "1/K", Referee.CoefficientOfThermalExpansion.FromPerDegreeFahrenheit(1).PerKelvin },
            { "%", "", Referee.Ratio.FromPercent(1).DecimalFractions },
        };

    [Theory]
    [MemberData(nameof(Referees))]
    public void Agrees_with_a_general_library(string from, string to, double expected)
    {
        double ours = Exact.Of(new Quantity(1, Units.Find(from)!)).In(Units.Find(to)!).ToDouble();
        Assert.InRange(ours / expected, 1 - 1e-12, 1 + 1e-12);
    }

    private const string Base = "base";

    // Any amount, there and back. Which of the library's units is ours is typed here; where its factor is rounded, less is asked.
    private static readonly (string From, string To, Func<double, double> Theirs, double Within)[] Conversions =
    [
        ("in", "mm", x => Referee.Length.FromInches(x).Millimeters, 1e-12),
        ("mm", "in", x => Referee.Length.FromMillimeters(x).Inches, 1e-12),
        ("thou", "\u00B5m", x => Referee.Length.FromMils(x).Micrometers, 1e-12),
        ("\u00B5in", "\u00B5m", x => Referee.Length.FromMicroinches(x).Micrometers, 1e-12),
        ("arcmin", "deg", x => Referee.Angle.FromArcminutes(x).Degrees, 1e-12),
        ("min", "s", x => Referee.Duration.FromMinutes(x).Seconds, 1e-12),
        ("lbf", "N", x => Referee.Force.FromPoundsForce(x).Newtons, 1e-12),
        ("lbf/in", "N/mm", x => Referee.ForcePerLength.FromPoundsForcePerInch(x).NewtonsPerMillimeter, 5e-9),
        ("lbf\u00B7ft", "N\u00B7m", x => Referee.Torque.FromPoundForceFeet(x).NewtonMeters, 1e-12),
        ("lbf\u00B7in", "N\u00B7m", x => Referee.Torque.FromPoundForceInches(x).NewtonMeters, 1e-12),
        ("mbar", "psi", x => Referee.Pressure.FromMillibars(x).PoundsForcePerSquareInch, 1e-12),
        ("atm", "kPa", x => Referee.Pressure.FromAtmospheres(x).Kilopascals, 1e-12),
        ("mmHg", "kPa", x => Referee.Pressure.FromMillimetersOfMercury(x).Kilopascals, 1e-6),
        // The library has no feed: a length for each turn.
        ("in/rev", "mm/rev", x => Referee.Length.FromInches(x).Millimeters, 1e-12),
        // Alone of their kind here, so held against the base: deg and s, kg and mm. A leak rate has nothing to convert to.
        ("rpm", Base, x => Referee.RotationalSpeed.FromRevolutionsPerMinute(x).DegreesPerSecond, 1e-11),
        ("kg/m3", Base, x => Referee.Density.FromKilogramsPerCubicMeter(x).KilogramsPerCubicMillimeter, 1e-12),
        ("psi", "kPa", x => Referee.Pressure.FromPoundsForcePerSquareInch(x).Kilopascals, 1e-12),
        ("MPa", "psi", x => Referee.Pressure.FromMegapascals(x).PoundsForcePerSquareInch, 1e-12),
        ("GPa", "Pa", x => Referee.Pressure.FromGigapascals(x).Pascals, 1e-12),
        ("bar", "psi", x => Referee.Pressure.FromBars(x).PoundsForcePerSquareInch, 1e-12),
        ("inHg", "kPa", x => Referee.Pressure.FromInchesOfMercury(x).Kilopascals, 5e-6),
        ("degF", "degC", x => Referee.Temperature.FromDegreesFahrenheit(x).DegreesCelsius, 1e-12),
        ("degC", "degF", x => Referee.Temperature.FromDegreesCelsius(x).DegreesFahrenheit, 1e-12),
        ("degF-diff", "K", x => Referee.TemperatureDelta.FromDegreesFahrenheit(x).Kelvins, 1e-12),
        ("1/degF-diff", "1/K", x => Referee.CoefficientOfThermalExpansion.FromPerDegreeFahrenheit(x).PerKelvin, 1e-12),
        ("in2", "cm2", x => Referee.Area.FromSquareInches(x).SquareCentimeters, 1e-12),
        ("in3", "cm3", x => Referee.Volume.FromCubicInches(x).CubicCentimeters, 1e-12),
        ("ft/min", "m/min", x => Referee.Speed.FromFeetPerMinute(x).MetersPerMinutes, 1e-12),
        ("%", "", x => Referee.Ratio.FromPercent(x).DecimalFractions, 1e-12),
    ];

    [Property(MaxTest = 1000)]
    public Property Any_amount_converts_as_in_a_general_library() =>
        Prop.ForAll(
            Gen.Elements(Conversions).Zip(Gen.Choose(1, 1_000_000_000)).Zip(Gen.Choose(0, 8)).ToArbitrary(),
            one =>
            {
                ((var (from, to, theirs, within), int digits), int scale) = one;
                decimal value = new(digits, 0, 0, false, (byte)scale);
                Exact amount = Exact.Of(new Quantity(value, Units.Find(from)!));
                double ours = (to == Base ? amount.Value : amount.In(Units.Find(to)!)).ToDouble();
                double referee = theirs((double)value);

                // A temperature near 0 is the difference of two large numbers in the library's doubles.
                double slack =
                    (within * Math.Abs(referee))
                    + (from.StartsWith("deg", StringComparison.Ordinal) ? 1e-12 * (500 + (double)value) : 0);
                Assert.InRange(ours, referee - slack, referee + slack);
            }
        );

    // No unit is left out, but for those with nothing to convert to: of a number, per second, of mass, of a leak.
    [Fact]
    public void Every_unit_that_converts_is_refereed()
    {
        string[] refereed = [.. Conversions.SelectMany(one => new[] { one.From, one.To })];
        string[] alone =
        [
            .. Units
                .All.GroupBy(unit => unit.Dimension)
                .Where(all => all.Count() == 1)
                .Select(all => all.Single().Symbol),
        ];
        Assert.Equal([], Units.All.Select(unit => unit.Symbol).Except(refereed).Except(alone));
    }

    // The library itself works with factors rounded to so many digits here.
    [Fact]
    public void Agrees_with_a_general_library_as_far_as_its_digits_go()
    {
        double mercury = Exact.Of(new Quantity(1, Units.InchOfMercury)).In(Units.Pascal).ToDouble();
        Assert.InRange(mercury / Referee.Pressure.FromInchesOfMercury(1).Pascals, 1 - 5e-6, 1 + 5e-6);
        double spring = Exact.Of(new Quantity(1, Units.PoundForcePerInch)).In(Units.NewtonPerMillimetre).ToDouble();
        double theirs = Referee.ForcePerLength.FromPoundsForcePerInch(1).NewtonsPerMillimeter;
        Assert.InRange(spring / theirs, 1 - 5e-9, 1 + 5e-9);
    }

    [Fact]
    public void A_text_names_one_unit()
    {
        string[] texts = [.. Units.All.SelectMany(unit => unit.Aliases.Prepend(unit.Symbol))];
        Assert.Equal(texts.Length, texts.Distinct(StringComparer.Ordinal).Count());
        Assert.All(
            Units.All,
            unit => Assert.All(unit.Aliases.Prepend(unit.Symbol), text => Assert.Same(unit, Units.Find(text)))
        );
    }

    [Theory]
    [InlineData("\u00B5m", "\u03BCm")] // micro sign, Greek small mu
    [InlineData("\u00B5m", "um")]
    [InlineData("\u00B5in", "\u03BCin")]
    [InlineData("in", "\"")]
    [InlineData("deg", "\u00B0")]
    [InlineData("cm3", "cc")]
    public void Has_the_usual_aliases(string symbol, string alias) =>
        Assert.Same(Units.Find(symbol), Units.Find(alias));

    [Theory]
    [InlineData("mil")] // a thousandth of an inch to some, a millimetre to others
    [InlineData("mPa")]
    [InlineData("Mm")]
    [InlineData("kn")]
    [InlineData(" in")]
    public void Knows_no_unit_that_could_be_another(string text) => Assert.Null(Units.Find(text));

    private static Quantity Of(string text)
    {
        Assert.True(Quantity.TryParse(text, out Quantity quantity), text);
        return quantity;
    }

    private static decimal Number(string text) => decimal.Parse(text, CultureInfo.InvariantCulture);
}
