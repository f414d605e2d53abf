using System.Globalization;
using ProcRunner.Quantities;

namespace ProcRunner.ShopMath;

/// <summary>Ranges of arguments; each gives the fault, or null where the value is allowed.</summary>
internal static class Allowed
{
    // Far beyond any size of a shop in any unit, and short of where squares and quotients of doubles lose their range.
    internal const double Smallest = 1e-60;
    internal const double Largest = 1e60;

    public static ShopFault? Above0(string argument, Exact value) =>
        value.Value.Sign > 0 ? null : new ShopFault(argument, Show(value), "it must be above 0");

    public static ShopFault? NotBelow0(string argument, Exact value) =>
        value.Value.Sign >= 0 ? null : new ShopFault(argument, Show(value), "it must not be below 0");

    public static ShopFault? NotAbove(string argument, Exact value, string most, Exact limit) =>
        value.CompareTo(limit) <= 0
            ? null
            : new ShopFault(argument, Show(value), $"it must not be above the {most} of {Both(limit)}");

    public static ShopFault? Below(string argument, Exact value, string most, Exact limit) =>
        value.CompareTo(limit) < 0
            ? null
            : new ShopFault(argument, Show(value), $"it must be below the {most} of {Both(limit)}");

    /// <summary>Of a double in a unit: a number above 0, of a size to be reckoned with.</summary>
    public static ShopFault? Above0(string argument, double value, string unit) =>
        value is >= Smallest and <= Largest ? null
        : value > 0 ? new ShopFault(argument, Show(value, unit), "it must be above 0 and of a size met in a shop")
        : new ShopFault(argument, Show(value, unit), "it must be above 0");

    /// <summary>Of a double in a unit: any finite number of a size to be reckoned with.</summary>
    public static ShopFault? Finite(string argument, double value, string unit) =>
        Math.Abs(value) <= Largest
            ? null
            : new ShopFault(argument, Show(value, unit), "it must be a finite number of a size met in a shop");

    /// <summary>Of several doubles in a unit: each a finite number; the first that is none is named.</summary>
    public static ShopFault? Finite(string argument, IReadOnlyList<double> values, string unit) =>
        values.Select(one => Finite(argument, one, unit)).FirstOrDefault(one => one is not null);

    /// <summary>Of a double in a unit: finite and within both ends.</summary>
    public static ShopFault? Within(string argument, double value, double low, double high, string unit) =>
        value >= low && value <= Math.Min(high, Largest) ? null
        : value > Largest
            ? new ShopFault(argument, Show(value, unit), "it must be a finite number of a size met in a shop")
        : high == double.MaxValue
            ? new ShopFault(argument, Show(value, unit), $"it must not be below {Show(low, unit)}")
        : new ShopFault(argument, Show(value, unit), $"it must be from {Show(low, unit)} to {Show(high, unit)}");

    // Whichever unit the shop works in.
    private static string Both(Exact limit) =>
        limit.Dimension == Dimension.OfLength
        && limit.Value.Sign != 0
        && WorkFigure.Of("", limit, Units.Inch) is { } inches
            ? $"{Show(limit)} ({inches.Text})"
            : Show(limit);

    public static string Show(Exact value) =>
        Units.All.FirstOrDefault(unit => unit.Dimension == value.Dimension && unit.Factor == Rational.One) is { } plain
        && WorkFigure.Of("", value, plain) is { } figure
            ? figure.Text
        : Units.All.FirstOrDefault(unit => unit.Dimension == value.Dimension) is { } any
        && WorkFigure.Of("", value, any) is { } other
            ? other.Text
        : value.Value.ToDouble().ToString("G6", CultureInfo.InvariantCulture);

    public static string Show(double value, string unit) =>
        string.Create(CultureInfo.InvariantCulture, $"{value:G9} {unit}").TrimEnd();
}
