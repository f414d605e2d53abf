namespace ProcRunner.ShopMath;

/// <summary>
/// Geometry of seats and faces. Diameters and lengths in mm; angles in deg, measured from the plane square to the guide's
/// axis (30 deg is flatter than 45 deg), between 0 and 90. On a seat of angle a the radius changes by 1/tan(a) per depth;
/// all else follows by plane geometry of a cone.
/// </summary>
/// <remarks>What is out of the range named at an argument, or no finite number, is a fault that names the argument.</remarks>
public static class SeatGeometry
{
    private const string Millimetre = "mm";

    /// <summary>How far a valve sinks along its axis when metal is taken square off a seat or face, mm: removed / cos(angle).</summary>
    /// <param name="removedMillimetres">Square to the face; below 0 for metal put back.</param>
    /// <param name="faceAngleDegrees">From the plane square to the guide's axis, between 0 and 90.</param>
    public static ShopResult<double> Sink(double removedMillimetres, double faceAngleDegrees) =>
        OnFace("removed", removedMillimetres, "face angle", faceAngleDegrees)
        ?? removedMillimetres / Cosine(faceAngleDegrees);

    /// <summary>The metal square off the face that a sink along the axis means, mm: sink x cos(angle).</summary>
    /// <param name="sinkMillimetres">Along the axis; below 0 the valve comes up.</param>
    /// <param name="faceAngleDegrees">From the plane square to the guide's axis, between 0 and 90.</param>
    public static ShopResult<double> RemovedForSink(double sinkMillimetres, double faceAngleDegrees) =>
        OnFace("sink", sinkMillimetres, "face angle", faceAngleDegrees) ?? sinkMillimetres * Cosine(faceAngleDegrees);

    /// <summary>Width along the face between two diameters, mm: (outer - inner) / (2 cos(angle)).</summary>
    /// <param name="outerDiameterMillimetres">Above the inner one.</param>
    /// <param name="innerDiameterMillimetres">Above 0.</param>
    /// <param name="seatAngleDegrees">From the plane square to the guide's axis, between 0 and 90.</param>
    public static ShopResult<double> Width(
        double outerDiameterMillimetres,
        double innerDiameterMillimetres,
        double seatAngleDegrees
    ) =>
        RightWayRound(innerDiameterMillimetres, outerDiameterMillimetres)
        ?? OnFace("outer diameter", outerDiameterMillimetres, "seat angle", seatAngleDegrees)
        ?? (outerDiameterMillimetres - innerDiameterMillimetres) / (2 * Cosine(seatAngleDegrees));

    /// <summary>Outer diameter of a seat from its inner one, mm: inner + 2 width cos(angle).</summary>
    /// <param name="innerDiameterMillimetres">Above 0.</param>
    /// <param name="widthMillimetres">Along the face, above 0.</param>
    /// <param name="seatAngleDegrees">From the plane square to the guide's axis, between 0 and 90.</param>
    public static ShopResult<double> OuterDiameter(
        double innerDiameterMillimetres,
        double widthMillimetres,
        double seatAngleDegrees
    ) =>
        (
            Allowed.Above0("inner diameter", innerDiameterMillimetres, Millimetre)
            ?? Allowed.Above0("width", widthMillimetres, Millimetre)
            ?? AllowedAngles.OfFace("seat angle", seatAngleDegrees)
        )
            is { } fault
            ? fault
            : innerDiameterMillimetres + (2 * widthMillimetres * Cosine(seatAngleDegrees));

    /// <summary>Inner diameter of a seat from its outer one, mm: outer - 2 width cos(angle); it must come out above 0.</summary>
    /// <param name="outerDiameterMillimetres">Above 0.</param>
    /// <param name="widthMillimetres">Along the face, above 0; so wide that nothing is left open is a fault.</param>
    /// <param name="seatAngleDegrees">From the plane square to the guide's axis, between 0 and 90.</param>
    public static ShopResult<double> InnerDiameter(
        double outerDiameterMillimetres,
        double widthMillimetres,
        double seatAngleDegrees
    )
    {
        double taken = 2 * widthMillimetres * Cosine(seatAngleDegrees);
        return
            (
                Allowed.Above0("outer diameter", outerDiameterMillimetres, Millimetre)
                ?? Allowed.Above0("width", widthMillimetres, Millimetre)
                ?? AllowedAngles.OfFace("seat angle", seatAngleDegrees)
                ?? (
                    taken < outerDiameterMillimetres
                        ? null
                        : new ShopFault(
                            "width",
                            Allowed.Show(widthMillimetres, Millimetre),
                            "a seat that wide leaves no opening inside its outer diameter"
                        )
                )
            )
                is { } fault
            ? fault
            : outerDiameterMillimetres - taken;
    }

    /// <summary>
    /// What a seat's diameter grows by at one depth when the same cone is cut deeper, mm: 2 depth / tan(angle).
    /// </summary>
    /// <param name="depthMillimetres">Along the axis.</param>
    /// <param name="seatAngleDegrees">From the plane square to the guide's axis, between 0 and 90.</param>
    public static ShopResult<double> DiameterGrowth(double depthMillimetres, double seatAngleDegrees) =>
        OnFace("depth", depthMillimetres, "seat angle", seatAngleDegrees)
        ?? 2 * depthMillimetres / Tangent(seatAngleDegrees);

    /// <summary>The depth that makes a seat's diameter grow by so much, mm: growth x tan(angle) / 2.</summary>
    /// <param name="growthMillimetres">On the diameter.</param>
    /// <param name="seatAngleDegrees">From the plane square to the guide's axis, between 0 and 90.</param>
    public static ShopResult<double> DepthForGrowth(double growthMillimetres, double seatAngleDegrees) =>
        OnFace("growth", growthMillimetres, "seat angle", seatAngleDegrees)
        ?? growthMillimetres * Tangent(seatAngleDegrees) / 2;

    /// <summary>
    /// How far past first touch a flatter cutter goes to bring a seat's outer edge in:
    /// (outer now - outer wanted) / 2 x (tan(seat angle) - tan(cutter angle)), mm.
    /// </summary>
    /// <param name="outerNowMillimetres">Outer diameter of the seat.</param>
    /// <param name="outerWantedMillimetres">Above 0, below the one now.</param>
    /// <param name="seatAngleDegrees">From the plane square to the guide's axis, between 0 and 90.</param>
    /// <param name="cutterAngleDegrees">Above 0, below the seat's.</param>
    public static ShopResult<double> DepthToNarrowOutside(
        double outerNowMillimetres,
        double outerWantedMillimetres,
        double seatAngleDegrees,
        double cutterAngleDegrees
    ) =>
        (
            Angles(seatAngleDegrees, cutterAngleDegrees)
            ?? Allowed.Above0("outer wanted", outerWantedMillimetres, Millimetre)
            ?? AllowedAngles.Below("outer wanted", outerWantedMillimetres, "outer now", outerNowMillimetres, Millimetre)
            ?? AllowedAngles.Below("cutter angle", cutterAngleDegrees, "seat angle", seatAngleDegrees, "deg")
        )
            is { } fault
            ? fault
            : (outerNowMillimetres - outerWantedMillimetres)
                / 2
                * (Tangent(seatAngleDegrees) - Tangent(cutterAngleDegrees));

    /// <summary>
    /// How far past first touch a steeper cutter goes to bring a seat's inner edge out:
    /// (inner wanted - inner now) / 2 x (tan(cutter angle) - tan(seat angle)), mm.
    /// </summary>
    /// <param name="innerNowMillimetres">Inner diameter of the seat, above 0.</param>
    /// <param name="innerWantedMillimetres">Above the one now.</param>
    /// <param name="seatAngleDegrees">Below the cutter's.</param>
    /// <param name="cutterAngleDegrees">From the plane square to the guide's axis, below 90.</param>
    public static ShopResult<double> DepthToNarrowInside(
        double innerNowMillimetres,
        double innerWantedMillimetres,
        double seatAngleDegrees,
        double cutterAngleDegrees
    ) =>
        (
            Angles(seatAngleDegrees, cutterAngleDegrees)
            ?? Allowed.Above0("inner now", innerNowMillimetres, Millimetre)
            ?? AllowedAngles.Below("inner now", innerNowMillimetres, "inner wanted", innerWantedMillimetres, Millimetre)
            ?? AllowedAngles.Below("seat angle", seatAngleDegrees, "cutter angle", cutterAngleDegrees, "deg")
        )
            is { } fault
            ? fault
            : (innerWantedMillimetres - innerNowMillimetres)
                / 2
                * (Tangent(cutterAngleDegrees) - Tangent(seatAngleDegrees));

    private static ShopFault? Angles(double seatAngleDegrees, double cutterAngleDegrees) =>
        AllowedAngles.OfFace("seat angle", seatAngleDegrees)
        ?? AllowedAngles.OfFace("cutter angle", cutterAngleDegrees);

    private static ShopResult<double>? OnFace(string length, double millimetres, string angle, double degrees) =>
        (AllowedAngles.OfFace(angle, degrees) ?? Allowed.Finite(length, millimetres, Millimetre)) is { } fault
            ? new ShopResult<double>?(fault)
            : null;

    private static ShopResult<double>? RightWayRound(double innerMillimetres, double outerMillimetres) =>
        (
            Allowed.Above0("inner diameter", innerMillimetres, Millimetre)
            ?? AllowedAngles.Below("inner diameter", innerMillimetres, "outer diameter", outerMillimetres, Millimetre)
        )
            is { } fault
            ? new ShopResult<double>?(fault)
            : null;

    internal static double Cosine(double degrees) => Math.Cos(double.DegreesToRadians(degrees));

    internal static double Sine(double degrees) => Math.Sin(double.DegreesToRadians(degrees));

    internal static double Tangent(double degrees) => Math.Tan(double.DegreesToRadians(degrees));
}
