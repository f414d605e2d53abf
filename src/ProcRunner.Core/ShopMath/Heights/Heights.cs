using ProcRunner.Quantities;

namespace ProcRunner.ShopMath;

/// <summary>
/// What work on valve, seat and deck does to the heights that are measured afterwards. Depths are positive into the head;
/// a sink is along the valve's axis, a deck cut is square to the deck, and the guide leans from the deck's normal by an angle.
/// </summary>
/// <remarks>
/// Plane geometry. Exact but for cos of a guide angle other than 0, which is rounded to 12 significant digits. A sink or cut
/// below 0 means metal put back (a new insert, a welded deck) and is allowed.
/// </remarks>
public static class Heights
{
    /// <summary>cos of the angle between guide axis and deck normal, 0 to 80 deg.</summary>
    public static ShopResult<Rational> GuideCosine(Rational guideAngleDegrees)
    {
        double degrees = guideAngleDegrees.ToDouble();
        if (AllowedAngles.OfGuide("guide angle", degrees) is { } fault)
        {
            return fault;
        }

        return guideAngleDegrees.IsZero || !TwelveDigits.TryRound(SeatGeometry.Cosine(degrees), out Rational cosine)
            ? Rational.One
            : cosine;
    }

    /// <summary>Recession after: recession + sink x cos(guide angle) - deck cut.</summary>
    public static Exact Recession(Exact recession, Exact sink, Exact deckCut, Rational guideCosine) =>
        recession + Scaled(sink, guideCosine) - deckCut;

    /// <summary>The sink that brings a recession to a wanted one: (wanted - now + deck cut to come) / cos(guide angle).</summary>
    public static Exact SinkFor(Exact wanted, Exact now, Exact deckCutToCome, Rational guideCosine) =>
        Scaled(wanted - now + deckCutToCome, Rational.One / guideCosine);

    /// <summary>Stem height after: stem height + sink - ground off the tip.</summary>
    public static Exact StemHeight(Exact stemHeight, Exact sink, Exact tipGround) => stemHeight + sink - tipGround;

    /// <summary>Installed height after: installed height + sink - shim put under the spring.</summary>
    public static Exact InstalledHeight(Exact installedHeight, Exact sink, Exact shim) => installedHeight + sink - shim;

    /// <summary>
    /// Lash after, on a valve that the cam works directly: lash - sink + ground off the tip - shim added between cam and tip.
    /// </summary>
    public static Exact Lash(Exact lash, Exact sink, Exact tipGround, Exact shimAdded) =>
        lash - sink + tipGround - shimAdded;

    /// <summary>Retainer-to-seal gap after: gap + sink - shim put under the seal.</summary>
    public static Exact RetainerGap(Exact gap, Exact sink, Exact shimUnderSeal) => gap + sink - shimUnderSeal;

    /// <summary>Protrusion of a pre-chamber or injector after: protrusion + deck cut.</summary>
    public static Exact Protrusion(Exact protrusion, Exact deckCut) => protrusion + deckCut;

    /// <summary>A length times a number.</summary>
    internal static Exact Scaled(Exact length, Rational by) => length with { Value = length.Value * by };
}
