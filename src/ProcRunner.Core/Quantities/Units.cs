using System.Collections.Frozen;

namespace ProcRunner.Quantities;

/// <summary>The table of units: the one place that says which there are, how they are typed, and what each is worth.</summary>
/// <remarks>
/// A unit is in the table only if its name means one thing in a head shop: <c>mil</c> is left out (a thousandth of an inch to
/// some, a millimetre to others). <c>lb</c> is a force, as on a spring tester; a mass is in kg alone.
/// </remarks>
public static class Units
{
    private const string Sp811 = "NIST SP 811 (2008), appendix B.8, exact";
    private const string Si = "SI Brochure, 9th edition (2019), exact";
    private const string Prefix = "SI prefix, exact";
    private const string FromPound =
        "from the pound (0.45359237 kg), standard gravity (9.80665 m/s2) and the inch, NIST SP 811 (2008), appendix B.8, exact";

    // 1 N = 1 kg m/s2 = 1000 kg mm/s2; 1 Pa = 1 N/m2 = 1/1000 kg/(mm s2).
    private static readonly Rational OneInch = Of(25.4m);
    private static readonly Rational OneNewton = Of(1000m);
    private static readonly Rational OnePascal = Of(0.001m);
    private static readonly Rational OnePoundForce = Of(0.45359237m) * Of(9.80665m) * OneNewton;
    private static readonly Rational OneFahrenheit = Rational.FromRatio(5, 9);

    /// <summary>A pure number; its symbol is empty.</summary>
    public static Unit One { get; } = new("", "pure number", Dimension.None, Rational.One, "1, exact", []);

    /// <summary>Hundredth of a pure number.</summary>
    public static Unit Percent { get; } = new("%", "percent", Dimension.None, Of(0.01m), "1/100, exact", ["percent"]);

    /// <summary>Inch.</summary>
    public static Unit Inch { get; } =
        new("in", "inch", Dimension.OfLength, OneInch, Sp811, ["inch", "inches", "\"", "\u2033", "IN", "INCH"]);

    /// <summary>Thousandth of an inch.</summary>
    public static Unit Thou { get; } =
        new("thou", "thousandth of an inch", Dimension.OfLength, OneInch * Of(0.001m), "1/1000 in, exact", ["thous"]);

    /// <summary>Microinch.</summary>
    public static Unit Microinch { get; } =
        new(
            "\u00B5in",
            "microinch",
            Dimension.OfLength,
            OneInch * Of(0.000001m),
            Prefix,
            ["\u03BCin", "uin", "microinch", "microinches"]
        );

    /// <summary>Millimetre.</summary>
    public static Unit Millimetre { get; } =
        new(
            "mm",
            "millimetre",
            Dimension.OfLength,
            Rational.One,
            Si,
            ["MM", "millimetre", "millimetres", "millimeter", "millimeters"]
        );

    /// <summary>Micrometre.</summary>
    public static Unit Micrometre { get; } =
        new(
            "\u00B5m",
            "micrometre",
            Dimension.OfLength,
            Of(0.001m),
            Prefix,
            ["\u03BCm", "um", "micron", "microns", "micrometre", "micrometres"]
        );

    /// <summary>Degree of angle.</summary>
    public static Unit Degree { get; } =
        new("deg", "degree", Dimension.OfAngle, Rational.One, Si, ["\u00B0", "degree", "degrees"]);

    /// <summary>Minute of angle.</summary>
    public static Unit ArcMinute { get; } =
        new(
            "arcmin",
            "minute of angle",
            Dimension.OfAngle,
            Rational.FromRatio(1, 60),
            "1/60 deg, " + Si,
            ["'", "\u2032"]
        );

    /// <summary>Turns per minute.</summary>
    public static Unit Rpm { get; } =
        new(
            "rpm",
            "turn per minute",
            Dimension.OfTurningSpeed,
            Of(6m),
            "360 deg / 60 s, exact",
            ["RPM", "rev/min", "r/min"]
        );

    /// <summary>Hertz.</summary>
    public static Unit Hertz { get; } = new("Hz", "hertz", Dimension.OfFrequency, Rational.One, Si, ["1/s"]);

    /// <summary>Second.</summary>
    public static Unit Second { get; } =
        new("s", "second", Dimension.OfTime, Rational.One, Si, ["sec", "second", "seconds"]);

    /// <summary>Minute of time.</summary>
    public static Unit Minute { get; } = new("min", "minute", Dimension.OfTime, Of(60m), Si, ["minute", "minutes"]);

    /// <summary>Newton.</summary>
    public static Unit Newton { get; } = new("N", "newton", Dimension.OfForce, OneNewton, Si, ["newton", "newtons"]);

    /// <summary>Pound-force.</summary>
    public static Unit PoundForce { get; } =
        new("lbf", "pound-force", Dimension.OfForce, OnePoundForce, FromPound, ["lb", "lbs"]);

    /// <summary>Newton per millimetre.</summary>
    public static Unit NewtonPerMillimetre { get; } =
        new("N/mm", "newton per millimetre", Dimension.OfSpringRate, OneNewton, Si, []);

    /// <summary>Pound-force per inch.</summary>
    public static Unit PoundForcePerInch { get; } =
        new("lbf/in", "pound-force per inch", Dimension.OfSpringRate, OnePoundForce / OneInch, FromPound, ["lb/in"]);

    /// <summary>Newton metre.</summary>
    public static Unit NewtonMetre { get; } =
        new(
            "N\u00B7m",
            "newton metre",
            Dimension.OfTorque,
            OneNewton * Of(1000m),
            Si,
            ["Nm", "N*m", "N-m", "N\u22C5m"]
        );

    /// <summary>Pound-force foot.</summary>
    public static Unit PoundForceFoot { get; } =
        new(
            "lbf\u00B7ft",
            "pound-force foot",
            Dimension.OfTorque,
            OnePoundForce * OneInch * Of(12m),
            FromPound,
            ["lbf*ft", "lbf-ft", "lb-ft", "ft\u00B7lbf", "ft*lbf", "ft-lbf", "ft-lb", "lbf\u22C5ft"]
        );

    /// <summary>Pound-force inch.</summary>
    public static Unit PoundForceInch { get; } =
        new(
            "lbf\u00B7in",
            "pound-force inch",
            Dimension.OfTorque,
            OnePoundForce * OneInch,
            FromPound,
            ["lbf*in", "lbf-in", "lb-in", "in\u00B7lbf", "in*lbf", "in-lbf", "in-lb", "lbf\u22C5in"]
        );

    /// <summary>Pascal.</summary>
    public static Unit Pascal { get; } = new("Pa", "pascal", Dimension.OfPressure, OnePascal, Si, []);

    /// <summary>Kilopascal.</summary>
    public static Unit Kilopascal { get; } =
        new("kPa", "kilopascal", Dimension.OfPressure, OnePascal * Of(1000m), Prefix, []);

    /// <summary>Megapascal, also N/mm2.</summary>
    public static Unit Megapascal { get; } =
        new("MPa", "megapascal", Dimension.OfPressure, OnePascal * Of(1000000m), Prefix, ["N/mm2", "N/mm\u00B2"]);

    /// <summary>Gigapascal.</summary>
    public static Unit Gigapascal { get; } =
        new("GPa", "gigapascal", Dimension.OfPressure, OnePascal * Of(1000000000m), Prefix, ["kN/mm2", "kN/mm\u00B2"]);

    /// <summary>Bar.</summary>
    public static Unit Bar { get; } = new("bar", "bar", Dimension.OfPressure, OnePascal * Of(100000m), Sp811, []);

    /// <summary>Millibar.</summary>
    public static Unit Millibar { get; } =
        new("mbar", "millibar", Dimension.OfPressure, OnePascal * Of(100m), Sp811, ["hPa"]);

    /// <summary>Standard atmosphere.</summary>
    public static Unit Atmosphere { get; } =
        new("atm", "standard atmosphere", Dimension.OfPressure, OnePascal * Of(101325m), Sp811, []);

    /// <summary>Pound-force per square inch.</summary>
    public static Unit Psi { get; } =
        new(
            "psi",
            "pound-force per square inch",
            Dimension.OfPressure,
            OnePoundForce / OneInch.Pow(2),
            FromPound,
            ["PSI", "lbf/in2", "lbf/in\u00B2"]
        );

    /// <summary>Conventional inch of mercury.</summary>
    public static Unit InchOfMercury { get; } =
        new(
            "inHg",
            "inch of mercury (conventional)",
            Dimension.OfPressure,
            Of(13595.1m) * Of(9.80665m) * Of(0.0254m) * OnePascal,
            "conventional mercury of 13595.1 kg/m3 under standard gravity; NIST SP 811 (2008), appendix B.8 prints 3.386 389 E+03 Pa, rounded",
            ["inchHg"]
        );

    /// <summary>Conventional millimetre of mercury.</summary>
    public static Unit MillimetreOfMercury { get; } =
        new(
            "mmHg",
            "millimetre of mercury (conventional)",
            Dimension.OfPressure,
            Of(13595.1m) * Of(9.80665m) * Of(0.001m) * OnePascal,
            "conventional mercury of 13595.1 kg/m3 under standard gravity; NIST SP 811 (2008), appendix B.8 prints 1.333 224 E+02 Pa, rounded",
            []
        );

    /// <summary>Degree Celsius as a place on the scale.</summary>
    public static Unit Celsius { get; } =
        new("degC", "degree Celsius", Dimension.OfTemperature, Rational.One, Si, ["\u00B0C", "C"], offset: Of(273.15m));

    /// <summary>Degree Fahrenheit as a place on the scale.</summary>
    public static Unit Fahrenheit { get; } =
        new(
            "degF",
            "degree Fahrenheit",
            Dimension.OfTemperature,
            OneFahrenheit,
            Sp811,
            ["\u00B0F", "F"],
            offset: Of(459.67m) * OneFahrenheit
        );

    /// <summary>Kelvin as a temperature difference; the same as a difference of degrees Celsius.</summary>
    public static Unit KelvinDifference { get; } =
        new("K", "kelvin of difference", Dimension.OfTemperatureDifference, Rational.One, Si, ["degC-diff", "C\u00B0"]);

    /// <summary>Degree Fahrenheit as a temperature difference.</summary>
    public static Unit FahrenheitDifference { get; } =
        new(
            "degF-diff",
            "degree Fahrenheit of difference",
            Dimension.OfTemperatureDifference,
            OneFahrenheit,
            Sp811,
            ["F\u00B0"]
        );

    /// <summary>Expansion per kelvin.</summary>
    public static Unit PerKelvin { get; } =
        new("1/K", "per kelvin", Dimension.OfExpansion, Rational.One, Si, ["1/degC-diff", "1/C\u00B0"]);

    /// <summary>Expansion per degree Fahrenheit.</summary>
    public static Unit PerFahrenheit { get; } =
        new("1/degF-diff", "per degree Fahrenheit", Dimension.OfExpansion, OneFahrenheit.Pow(-1), Sp811, ["1/F\u00B0"]);

    /// <summary>Square centimetre.</summary>
    public static Unit SquareCentimetre { get; } =
        new("cm2", "square centimetre", Dimension.OfArea, Of(100m), Si, ["cm\u00B2"]);

    /// <summary>Square inch.</summary>
    public static Unit SquareInch { get; } =
        new("in2", "square inch", Dimension.OfArea, OneInch.Pow(2), Sp811, ["in\u00B2", "sq.in."]);

    /// <summary>Cubic centimetre.</summary>
    public static Unit CubicCentimetre { get; } =
        new("cm3", "cubic centimetre", Dimension.OfVolume, Of(1000m), Si, ["cm\u00B3", "cc"]);

    /// <summary>Cubic inch.</summary>
    public static Unit CubicInch { get; } =
        new("in3", "cubic inch", Dimension.OfVolume, OneInch.Pow(3), Sp811, ["in\u00B3", "cu.in."]);

    /// <summary>Foot per minute, as of cutting speed.</summary>
    public static Unit FootPerMinute { get; } =
        new("ft/min", "foot per minute", Dimension.OfSpeed, OneInch * Rational.FromRatio(12, 60), Sp811, ["sfm"]);

    /// <summary>Metre per minute, as of cutting speed.</summary>
    public static Unit MetrePerMinute { get; } =
        new("m/min", "metre per minute", Dimension.OfSpeed, Rational.FromRatio(1000, 60), Si, []);

    /// <summary>Millimetre per turn, as of feed.</summary>
    public static Unit MillimetrePerTurn { get; } =
        new("mm/rev", "millimetre per turn", Dimension.OfFeed, Rational.FromRatio(1, 360), Si, ["mm/r"]);

    /// <summary>Inch per turn, as of feed.</summary>
    public static Unit InchPerTurn { get; } =
        new("in/rev", "inch per turn", Dimension.OfFeed, OneInch / Of(360m), Sp811, ["in/r", "ipr"]);

    /// <summary>Kilogram.</summary>
    public static Unit Kilogram { get; } = new("kg", "kilogram", Dimension.OfMass, Rational.One, Si, []);

    /// <summary>Kilogram per cubic metre.</summary>
    public static Unit KilogramPerCubicMetre { get; } =
        new(
            "kg/m3",
            "kilogram per cubic metre",
            Dimension.OfDensity,
            Rational.FromRatio(1, 1000000000),
            Si,
            ["kg/m\u00B3"]
        );

    /// <summary>Pascal cubic metre per second, as of a leak; the same as a watt.</summary>
    public static Unit PascalCubicMetrePerSecond { get; } =
        new(
            "Pa\u00B7m3/s",
            "pascal cubic metre per second",
            Dimension.OfLeakRate,
            OnePascal * Of(1000000000m),
            Si,
            ["Pa*m3/s", "Pa\u00B7m\u00B3/s", "Pa\u22C5m\u00B3/s"]
        );

    /// <summary>Every unit, in the order a list shows them.</summary>
    public static IReadOnlyList<Unit> All { get; } =
    [
        One,
        Percent,
        Inch,
        Thou,
        Microinch,
        Millimetre,
        Micrometre,
        Degree,
        ArcMinute,
        Rpm,
        Hertz,
        Second,
        Minute,
        Newton,
        PoundForce,
        NewtonPerMillimetre,
        PoundForcePerInch,
        NewtonMetre,
        PoundForceFoot,
        PoundForceInch,
        Pascal,
        Kilopascal,
        Megapascal,
        Gigapascal,
        Bar,
        Millibar,
        Atmosphere,
        Psi,
        InchOfMercury,
        MillimetreOfMercury,
        Celsius,
        Fahrenheit,
        KelvinDifference,
        FahrenheitDifference,
        PerKelvin,
        PerFahrenheit,
        SquareCentimetre,
        SquareInch,
        CubicCentimetre,
        CubicInch,
        FootPerMinute,
        MetrePerMinute,
        MillimetrePerTurn,
        InchPerTurn,
        Kilogram,
        KilogramPerCubicMetre,
        PascalCubicMetrePerSecond,
    ];

    private static readonly FrozenDictionary<string, Unit> ByText = All.SelectMany(unit =>
            unit.Aliases.Prepend(unit.Symbol).Select(text => KeyValuePair.Create(text, unit))
        )
        .ToFrozenDictionary(StringComparer.Ordinal);

    private static readonly FrozenDictionary<string, Unit>.AlternateLookup<ReadOnlySpan<char>> BySpan =
        ByText.GetAlternateLookup<ReadOnlySpan<char>>();

    /// <summary>The unit of a symbol or alias, exactly as written (MPa is not mPa); null if there is none.</summary>
    public static Unit? Find(string text) => ByText.GetValueOrDefault(text);

    /// <summary>The same for a part of a text.</summary>
    internal static Unit? Find(ReadOnlySpan<char> text) => BySpan.TryGetValue(text, out Unit? unit) ? unit : null;

    private static Rational Of(decimal value) => Rational.FromDecimal(value);
}
