using ProcRunner.Quantities;

namespace ProcRunner.ShopMath;

/// <summary>
/// Cutting speed, spindle speed and feed. n = 12 V / (pi D) in ft/min, in and rpm, n = 1000 v / (pi D) in m/min, mm and rpm: F. D.
/// Jones, Turning and Boring, rules for calculating cutting speeds. Rounded to 12 digits where pi or a root comes in.
/// </summary>
public static class CuttingSpeed
{
    private const double SecondsPerMinute = 60;

    /// <summary>Spindle speed for a cutting speed: speed / (pi x diameter).</summary>
    /// <param name="speed">Of the metal past the edge, not below 0; a shop setting for material and cutter.</param>
    /// <param name="diameter">The largest that cuts, above 0.</param>
    public static ShopResult<Exact> SpindleSpeed(Exact speed, Exact diameter)
    {
        if ((Allowed.NotBelow0("speed", speed) ?? Allowed.Above0("diameter", diameter)) is { } fault)
        {
            return fault;
        }

        double turnsPerMinute = (speed / diameter).Value.ToDouble() * SecondsPerMinute / Math.PI;
        return Rounded("speed", speed, turnsPerMinute, Units.Rpm);
    }

    /// <summary>Cutting speed of a spindle speed: pi x diameter x spindle.</summary>
    /// <param name="spindle">Not below 0.</param>
    /// <param name="diameter">Above 0.</param>
    public static ShopResult<Exact> SurfaceSpeed(Exact spindle, Exact diameter)
    {
        if ((Allowed.NotBelow0("spindle", spindle) ?? Allowed.Above0("diameter", diameter)) is { } fault)
        {
            return fault;
        }

        double turnsPerMinute = spindle.In(Units.Rpm).ToDouble();
        double metresPerMinute = Math.PI * diameter.In(Units.Millimetre).ToDouble() * turnsPerMinute / 1000;
        return Rounded("spindle", spindle, metresPerMinute, Units.MetrePerMinute);
    }

    /// <summary>A spindle speed as the machine can give it: the nearest end of its range if it is outside.</summary>
    /// <param name="wanted">Not below 0.</param>
    /// <param name="slowest">Above 0, not above the fastest.</param>
    /// <param name="fastest">Of the machine as it is geared.</param>
    public static ShopResult<Exact> WithinRange(Exact wanted, Exact slowest, Exact fastest) =>
        (
            Allowed.NotBelow0("spindle", wanted)
            ?? Allowed.Above0("slowest", slowest)
            ?? Allowed.NotAbove("slowest", slowest, "fastest", fastest)
        )
            is { } fault
            ? fault
        : wanted.CompareTo(slowest) < 0 ? slowest
        : wanted.CompareTo(fastest) > 0 ? fastest
        : wanted;

    /// <summary>How fast a tool goes into the work: feed x spindle; exact.</summary>
    /// <param name="feed">Per turn, not below 0.</param>
    /// <param name="spindle">Not below 0.</param>
    public static ShopResult<Exact> FeedSpeed(Exact feed, Exact spindle) =>
        (Allowed.NotBelow0("feed", feed) ?? Allowed.NotBelow0("spindle", spindle)) is { } fault
            ? fault
            : feed * spindle;

    /// <summary>
    /// Ideal peak-to-valley roughness behind a round-nosed tool: f² / (8 r); exact. From the geometry of circles a feed apart,
    /// for a feed small against the nose; a real surface is rougher. It is no Ra.
    /// </summary>
    /// <param name="feed">Per turn, above 0 and not above the nose radius in a turn.</param>
    /// <param name="nose">Radius of the tool's nose, above 0.</param>
    public static ShopResult<Exact> IdealRoughness(Exact feed, Exact nose)
    {
        Exact perTurn = feed * OneTurn;
        return
            (
                Allowed.Above0("nose", nose)
                ?? Allowed.Above0("feed", feed)
                ?? Allowed.NotAbove("feed", perTurn, "nose radius", nose)
            )
                is { } fault
            ? fault
            : perTurn * perTurn / (nose with { Value = nose.Value * Rational.FromInteger(8) });
    }

    /// <summary>Feed for an ideal roughness: root(8 r R) per turn.</summary>
    /// <param name="roughness">Peak to valley, above 0 and not above an eighth of the nose radius.</param>
    /// <param name="nose">Radius of the tool's nose, above 0.</param>
    public static ShopResult<Exact> FeedForRoughness(Exact roughness, Exact nose)
    {
        ShopFault? fault =
            Allowed.Above0("nose", nose)
            ?? Allowed.Above0("roughness", roughness)
            ?? Allowed.NotAbove(
                "roughness",
                roughness,
                "eighth of the nose radius",
                nose with
                {
                    Value = nose.Value / Rational.FromInteger(8),
                }
            );
        if (fault is not null)
        {
            return fault;
        }

        double millimetres = Math.Sqrt(8 * nose.Value.ToDouble() * roughness.Value.ToDouble());
        return Rounded("roughness", roughness, millimetres, Units.MillimetrePerTurn);
    }

    private static Exact OneTurn => new(Rational.FromInteger(360), Dimension.OfAngle);

    private static ShopResult<Exact> Rounded(string argument, Exact read, double value, Unit unit) =>
        TwelveDigits.TryRound(value, out Rational rounded)
            ? new Exact(unit.ToBase(rounded), unit.Dimension)
            : new ShopFault(argument, Allowed.Show(read), "the number is too large");
}
