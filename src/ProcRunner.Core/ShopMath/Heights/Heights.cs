using ProcRunner.Quantities;

namespace ProcRunner.ShopMath;

/// <summary>
/// What work on valve, seat and deck does to the heights that are measured afterwards. Depths are positive into the head;
/// a sink is along the valve's axis, a deck cut is square to the deck, and the guide leans from the deck's normal by an angle.
/// </summary>
/// <remarks>
/// Plane geometry; all lengths in any unit. Exact but for cos of a guide angle other than 0, which is rounded to 12 significant digits. A sink or cut
/// below 0 means metal put back (a new insert, a welded deck) and is allowed.
/// </remarks>
public static class Heights
{
    /// <summary>cos of the angle between guide axis and deck normal.</summary>
    /// <param name="guideAngleDegrees">0 to 80; beyond is a fault.</param>
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
    /// <param name="recession">Square to the deck; below 0 the valve stands out.</param>
    /// <param name="sink">Along the valve's axis.</param>
    /// <param name="deckCut">Square to the deck.</param>
    /// <param name="guideCosine">Of <see cref="GuideCosine"/>.</param>
    public static Exact Recession(Exact recession, Exact sink, Exact deckCut, Rational guideCosine) =>
        recession + Scaled(sink, guideCosine) - deckCut;

    /// <summary>The sink that brings a recession to a wanted one: (wanted - now + deck cut to come) / cos(guide angle); below 0 it is too deep already.</summary>
    /// <param name="wanted">Recession in the end.</param>
    /// <param name="now">Recession measured.</param>
    /// <param name="deckCutToCome">Square to the deck; a cut takes recession away one for one.</param>
    /// <param name="guideCosine">Of <see cref="GuideCosine"/>, above 0.</param>
    public static Exact SinkFor(Exact wanted, Exact now, Exact deckCutToCome, Rational guideCosine) =>
        Scaled(wanted - now + deckCutToCome, Rational.One / guideCosine);

    /// <summary>Stem height after: stem height + sink - ground off the tip.</summary>
    /// <param name="stemHeight">From the spring's seat to the tip.</param>
    /// <param name="sink">Along the valve's axis.</param>
    /// <param name="tipGround">Off the tip.</param>
    public static Exact StemHeight(Exact stemHeight, Exact sink, Exact tipGround) => stemHeight + sink - tipGround;

    /// <summary>Installed height after: installed height + sink - shim put under the spring.</summary>
    /// <param name="installedHeight">From the spring's seat to its retainer, valve closed.</param>
    /// <param name="sink">Along the valve's axis.</param>
    /// <param name="shim">Thickness put under the spring.</param>
    public static Exact InstalledHeight(Exact installedHeight, Exact sink, Exact shim) => installedHeight + sink - shim;

    /// <summary>
    /// Lash after, on a valve that the cam works directly: lash - sink + ground off the tip - shim added between cam and tip.
    /// </summary>
    /// <param name="lash">Measured with the valve closed; below 0 it is held open.</param>
    /// <param name="sink">Along the valve's axis.</param>
    /// <param name="tipGround">Off the tip.</param>
    /// <param name="shimAdded">Thickness more than before.</param>
    public static Exact Lash(Exact lash, Exact sink, Exact tipGround, Exact shimAdded) =>
        lash - sink + tipGround - shimAdded;

    /// <summary>Retainer-to-seal gap after: gap + sink - shim put under the seal.</summary>
    /// <param name="gap">Valve closed.</param>
    /// <param name="sink">Along the valve's axis.</param>
    /// <param name="shimUnderSeal">Thickness put under the seal.</param>
    public static Exact RetainerGap(Exact gap, Exact sink, Exact shimUnderSeal) => gap + sink - shimUnderSeal;

    /// <summary>Protrusion of a pre-chamber or injector after: protrusion + deck cut.</summary>
    /// <param name="protrusion">Out of the deck; below 0 it lies under it.</param>
    /// <param name="deckCut">Square to the deck.</param>
    public static Exact Protrusion(Exact protrusion, Exact deckCut) => protrusion + deckCut;

    /// <summary>A length times a number.</summary>
    internal static Exact Scaled(Exact length, Rational by) => length with { Value = length.Value * by };
}
