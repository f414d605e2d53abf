namespace ProcRunner.Practice.Heads;

/// <summary>
/// The geometry of seats, valves, guides and decks by which a practice head answers work. Written for the practice head from
/// the figures themselves, and apart from the runner's own shop calculations, so that the one tests the other.
/// </summary>
/// <remarks>Angles of seats and faces in degrees from the plane square to the guide axis; lengths in one unit throughout.</remarks>
public static class Geometry
{
    /// <summary>How far a valve sinks along its axis when its face loses <paramref name="square"/>, square to the face: the face moves along its normal, which leans from the axis by the face angle.</summary>
    public static double Sink(double square, double faceAngle) => square / Cos(faceAngle);

    /// <summary>By how much a cone's diameter grows at a fixed height when it is cut deeper along its axis.</summary>
    public static double Widening(double deeper, double seatAngle) => 2 * deeper / Math.Tan(Radians(seatAngle));

    /// <summary>The seat's width along its face from its two diameters.</summary>
    public static double Width(double outside, double inside, double seatAngle) =>
        (outside - inside) / (2 * Cos(seatAngle));

    /// <summary>The outside diameter that gives a width.</summary>
    public static double OutsideFor(double width, double inside, double seatAngle) =>
        inside + (2 * width * Cos(seatAngle));

    /// <summary>Depth square to the deck of something that lies <paramref name="along"/> an axis leaning by phi.</summary>
    public static double SquareToDeck(double along, double phi) => along * Cos(phi);

    /// <summary>What an indicator shows over a full turn on a circle that runs off its axis: once the offset to one side, once to the other.</summary>
    public static double RunoutOf(double offAlong, double offAcross) =>
        2 * Math.Sqrt((offAlong * offAlong) + (offAcross * offAcross));

    /// <summary>
    /// By how much a sleeve's bore closes when it is pressed with an interference into a large body of the same material: the
    /// interference times bore over outside. From Lamé's equations (S. Timoshenko, Strength of Materials, part II, thick
    /// cylinders) with a body much larger than the sleeve: contact pressure p = delta E (b² - a²) / (4 b³) on diameters b and a,
    /// bore closing 2 p a b² / (E (b² - a²)) on the radius.
    /// </summary>
    public static double BoreClosing(double interference, double bore, double outside) =>
        Math.Max(0, interference) * bore / outside;

    /// <summary>
    /// By how much a hole beside a pressed-in ring shrinks toward the ring and grows across. The ring's pressure p sets up
    /// stresses -p R²/r² toward it and +p R²/r² across (Lamé, large body); a small hole in such a field changes its diameter
    /// by (3 s1 - s2) d / E (G. Kirsch 1898), here 4 p R² d / (E r²). With p from the interference on the ring's diameters.
    /// </summary>
    /// <param name="interference">On the ring's diameter.</param>
    /// <param name="outside">The ring's outside diameter.</param>
    /// <param name="inside">The ring's inside diameter.</param>
    /// <param name="hole">Diameter of the hole beside it.</param>
    /// <param name="apart">From axis to axis.</param>
    public static double Pinch(double interference, double outside, double inside, double hole, double apart)
    {
        double share = 1 - (inside * inside / (outside * outside));
        double pressure = Math.Max(0, interference) * share / (2 * outside);
        return 4 * pressure * outside * outside / 4 * hole / (apart * apart);
    }

    /// <summary>The interference left when part and hole are at other temperatures than they were measured at.</summary>
    /// <param name="part">The part's outside diameter.</param>
    /// <param name="hole">The hole's diameter.</param>
    /// <param name="partExpansion">The part's expansion, per K.</param>
    /// <param name="holeExpansion">The body's expansion, per K.</param>
    /// <param name="partWarmer">How much warmer the part is, K.</param>
    /// <param name="holeWarmer">How much warmer the body is, K.</param>
    public static double FitAt(
        double part,
        double hole,
        double partExpansion,
        double holeExpansion,
        double partWarmer,
        double holeWarmer
    ) => (part * (1 + (partExpansion * partWarmer))) - (hole * (1 + (holeExpansion * holeWarmer)));

    private static double Cos(double degrees) => Math.Cos(Radians(degrees));

    private static double Radians(double degrees) => degrees * Math.PI / 180;
}
