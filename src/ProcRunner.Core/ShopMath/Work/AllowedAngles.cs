namespace ProcRunner.ShopMath;

/// <summary>Ranges of angles and of doubles compared with each other; each gives the fault, or null where the value is allowed.</summary>
internal static class AllowedAngles
{
    /// <summary>Of a seat, a face or a cutter: a face lies between flat and along the axis, neither end is a cone.</summary>
    public static ShopFault? OfFace(string argument, double degrees) =>
        degrees is >= Allowed.Smallest and < 90
            ? null
            : new ShopFault(
                argument,
                Allowed.Show(degrees, "deg"),
                "it must lie between 0 and 90 deg, measured from the plane square to the guide's axis"
            );

    /// <summary>Of a guide to the deck's normal: 0 to 80 deg, far beyond any head and still short of a division by 0.</summary>
    public static ShopFault? OfGuide(string argument, double degrees) =>
        Allowed.Within(argument, degrees, 0, 80, "deg");

    /// <summary>Of two doubles in a unit: both finite, and the first below the second.</summary>
    public static ShopFault? Below(string argument, double value, string other, double limit, string unit) =>
        Allowed.Finite(other, limit, unit)
        ?? Allowed.Finite(argument, value, unit)
        ?? (
            value < limit
                ? null
                : new ShopFault(
                    argument,
                    Allowed.Show(value, unit),
                    $"it must be below the {other} of {Allowed.Show(limit, unit)}"
                )
        );

    /// <summary>Of a double in a unit: finite and not below 0.</summary>
    public static ShopFault? NotBelow0(string argument, double value, string unit) =>
        value is >= 0 and <= Allowed.Largest
            ? null
            : new ShopFault(argument, Allowed.Show(value, unit), "it must not be below 0");
}
