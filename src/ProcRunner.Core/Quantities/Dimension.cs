using System.Globalization;

namespace ProcRunner.Quantities;

/// <summary>What kind of thing is measured, as exponents of the base kinds; two amounts compare only if this is equal.</summary>
/// <param name="Length">Exponent of length (base unit mm).</param>
/// <param name="Mass">Exponent of mass (base unit kg).</param>
/// <param name="Time">Exponent of time (base unit s).</param>
/// <param name="Temperature">Exponent of temperature (base unit K).</param>
/// <param name="Angle">Exponent of plane angle (base unit deg). A turn is an angle, so rpm is no plain 1/time.</param>
/// <param name="IsTemperaturePoint">
/// A place on a temperature scale (300 degF), which is no amount: it can't be doubled, and the difference of two is a
/// temperature difference. Products and powers of it do not exist.
/// </param>
public readonly record struct Dimension(
    sbyte Length,
    sbyte Mass,
    sbyte Time,
    sbyte Temperature,
    sbyte Angle,
    bool IsTemperaturePoint
)
{
    /// <summary>Equal in every exponent.</summary>
    public bool Equals(Dimension other) =>
        Length == other.Length
        && Mass == other.Mass
        && Time == other.Time
        && Temperature == other.Temperature
        && Angle == other.Angle
        && IsTemperaturePoint == other.IsTemperaturePoint;

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Length, Mass, Time, Temperature, Angle, IsTemperaturePoint);

    /// <summary>A pure number.</summary>
    public static Dimension None => default;

    /// <summary>Length.</summary>
    public static Dimension OfLength => Of(length: 1);

    /// <summary>Area.</summary>
    public static Dimension OfArea => Of(length: 2);

    /// <summary>Volume.</summary>
    public static Dimension OfVolume => Of(length: 3);

    /// <summary>Mass.</summary>
    public static Dimension OfMass => Of(mass: 1);

    /// <summary>Time.</summary>
    public static Dimension OfTime => Of(time: 1);

    /// <summary>Plane angle.</summary>
    public static Dimension OfAngle => Of(angle: 1);

    /// <summary>A place on a temperature scale.</summary>
    public static Dimension OfTemperature => new(0, 0, 0, 1, 0, IsTemperaturePoint: true);

    /// <summary>How far apart two temperatures are.</summary>
    public static Dimension OfTemperatureDifference => Of(temperature: 1);

    /// <summary>Thermal expansion: a ratio of lengths per temperature difference.</summary>
    public static Dimension OfExpansion => Of(temperature: -1);

    /// <summary>Force.</summary>
    public static Dimension OfForce => Of(length: 1, mass: 1, time: -2);

    /// <summary>Force per length, as of a spring.</summary>
    public static Dimension OfSpringRate => Of(mass: 1, time: -2);

    /// <summary>Torque.</summary>
    public static Dimension OfTorque => Of(length: 2, mass: 1, time: -2);

    /// <summary>Pressure, stress or modulus of elasticity.</summary>
    public static Dimension OfPressure => Of(length: -1, mass: 1, time: -2);

    /// <summary>Events per time.</summary>
    public static Dimension OfFrequency => Of(time: -1);

    /// <summary>Turns per time.</summary>
    public static Dimension OfTurningSpeed => Of(time: -1, angle: 1);

    /// <summary>Length per time.</summary>
    public static Dimension OfSpeed => Of(length: 1, time: -1);

    /// <summary>Length per turn.</summary>
    public static Dimension OfFeed => Of(length: 1, angle: -1);

    /// <summary>Mass per volume.</summary>
    public static Dimension OfDensity => Of(length: -3, mass: 1);

    /// <summary>Pressure times volume per time, as of a leak.</summary>
    public static Dimension OfLeakRate => Of(length: 2, mass: 1, time: -3);

    private static readonly (Dimension Dimension, string Words)[] Named =
    [
        (None, "pure number"),
        (OfLength, "length"),
        (OfArea, "area"),
        (OfVolume, "volume"),
        (OfMass, "mass"),
        (OfTime, "time"),
        (OfAngle, "angle"),
        (OfTemperature, "temperature"),
        (OfTemperatureDifference, "temperature difference"),
        (OfExpansion, "expansion per temperature difference"),
        (OfForce, "force"),
        (OfSpringRate, "force per length"),
        (OfTorque, "torque"),
        (OfPressure, "pressure"),
        (OfFrequency, "frequency"),
        (OfTurningSpeed, "turning speed"),
        (OfSpeed, "length per time"),
        (OfFeed, "length per turn"),
        (OfDensity, "mass per volume"),
        (OfLeakRate, "pressure times volume per time"),
    ];

    /// <summary>The dimension of a product.</summary>
    /// <exception cref="ArgumentException">There is none; <see cref="TryTimes"/> says so instead.</exception>
    public Dimension Times(Dimension other) =>
        TryTimes(other, out Dimension result) ? result : throw NoSuch(nameof(other));

    /// <summary>The dimension of a quotient.</summary>
    /// <exception cref="ArgumentException">There is none; <see cref="TryOver"/> says so instead.</exception>
    public Dimension Over(Dimension other) =>
        TryOver(other, out Dimension result) ? result : throw NoSuch(nameof(other));

    /// <summary>The dimension of a whole power.</summary>
    /// <exception cref="ArgumentException">There is none; <see cref="TryPower"/> says so instead.</exception>
    public Dimension Power(int exponent) =>
        TryPower(exponent, out Dimension result) ? result : throw NoSuch(nameof(exponent));

    /// <summary>As <see cref="Times"/>; false with a temperature point, or if an exponent leaves -128 to 127.</summary>
    public bool TryTimes(Dimension other, out Dimension result) => TryCombine(other, 1, out result);

    /// <summary>As <see cref="Over"/>; false with a temperature point, or if an exponent leaves -128 to 127.</summary>
    public bool TryOver(Dimension other, out Dimension result) => TryCombine(other, -1, out result);

    /// <summary>As <see cref="Power"/>; false with a temperature point, or if an exponent leaves -128 to 127.</summary>
    public bool TryPower(int exponent, out Dimension result)
    {
        result = None;
        return !IsTemperaturePoint
            && TryMake(
                (long)Length * exponent,
                (long)Mass * exponent,
                (long)Time * exponent,
                (long)Temperature * exponent,
                (long)Angle * exponent,
                out result
            );
    }

    /// <summary>What two amounts of this lie apart: of two temperatures a temperature difference, else the same.</summary>
    public Dimension OfDifference() => IsTemperaturePoint ? OfTemperatureDifference : this;

    /// <summary>The dimension of those words, as <see cref="ToString"/> writes them; false if no named one has them.</summary>
    public static bool TryParse(string words, out Dimension dimension)
    {
        (dimension, string found) = Named.FirstOrDefault(one => one.Words == words);
        return found is not null;
    }

    /// <summary>In words for a message: <c>force</c>, <c>length per time</c>; unnamed ones as <c>length^4 time^-1</c>.</summary>
    public override string ToString()
    {
        foreach ((Dimension dimension, string words) in Named)
        {
            if (dimension == this)
            {
                return words;
            }
        }

        (string Name, sbyte Exponent)[] parts =
        [
            ("length", Length),
            ("mass", Mass),
            ("time", Time),
            ("temperature", Temperature),
            ("angle", Angle),
        ];
        return string.Join(
            ' ',
            parts
                .Where(part => part.Exponent != 0)
                .Select(part =>
                    part.Exponent == 1
                        ? part.Name
                        : string.Create(CultureInfo.InvariantCulture, $"{part.Name}^{part.Exponent}")
                )
        );
    }

    private static Dimension Of(
        sbyte length = 0,
        sbyte mass = 0,
        sbyte time = 0,
        sbyte temperature = 0,
        sbyte angle = 0
    ) => new(length, mass, time, temperature, angle, IsTemperaturePoint: false);

    private bool TryCombine(Dimension other, int sign, out Dimension result)
    {
        result = None;
        return !IsTemperaturePoint
            && !other.IsTemperaturePoint
            && TryMake(
                Length + (sign * other.Length),
                Mass + (sign * other.Mass),
                Time + (sign * other.Time),
                Temperature + (sign * other.Temperature),
                Angle + (sign * other.Angle),
                out result
            );
    }

    private static bool TryMake(long length, long mass, long time, long temperature, long angle, out Dimension result)
    {
        result = None;
        ReadOnlySpan<long> all = [length, mass, time, temperature, angle];
        foreach (long exponent in all)
        {
            if (exponent is < sbyte.MinValue or > sbyte.MaxValue)
            {
                return false;
            }
        }

        result = Of((sbyte)length, (sbyte)mass, (sbyte)time, (sbyte)temperature, (sbyte)angle);
        return true;
    }

    private ArgumentException NoSuch(string parameter) =>
        new($"No such product, quotient or power of {this}.", parameter);
}
