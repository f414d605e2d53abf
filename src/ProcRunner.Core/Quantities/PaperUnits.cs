namespace ProcRunner.Quantities;

/// <summary>
/// The unit of a value that nobody gave one: that of the paper it stands on. A head whose lengths are in inches has its loads in
/// pounds-force, its spring rates in pounds-force per inch; one in millimetres has newtons. Which units go together is
/// common practice, no source; volumes are in cm3 on both, since chambers are filled from a burette.
/// </summary>
public static class PaperUnits
{
    private static readonly Unit[] WithInches =
    [
        Units.PoundForce,
        Units.PoundForcePerInch,
        Units.PoundForceFoot,
        Units.Psi,
        Units.Fahrenheit,
        Units.FahrenheitDifference,
        Units.PerFahrenheit,
        Units.SquareInch,
        Units.FootPerMinute,
        Units.InchPerTurn,
    ];

    private static readonly Unit[] WithMillimetres =
    [
        Units.Newton,
        Units.NewtonPerMillimetre,
        Units.NewtonMetre,
        Units.Kilopascal,
        Units.Celsius,
        Units.KelvinDifference,
        Units.PerKelvin,
        Units.SquareCentimetre,
        Units.MetrePerMinute,
        Units.MillimetrePerTurn,
    ];

    /// <summary>The unit for a kind of quantity; some unit must measure it.</summary>
    /// <param name="dimension">The kind of quantity.</param>
    /// <param name="length">The paper's unit of length.</param>
    public static Unit Of(Dimension dimension, Unit length)
    {
        ArgumentNullException.ThrowIfNull(length);
        bool isInches = length == Units.Inch || length == Units.Thou || length == Units.Microinch;
        return dimension == length.Dimension
            ? length
            : Array.Find(isInches ? WithInches : WithMillimetres, unit => unit.Dimension == dimension)
                ?? Units.All.First(unit => unit.Dimension == dimension);
    }
}
