namespace ProcRunner.ShopMath;

/// <summary>Seat and face cut to angles that differ on purpose.</summary>
/// <param name="DifferenceDegrees">Seat angle less face angle.</param>
public sealed record AngleDifference(double DifferenceDegrees)
{
    /// <summary>
    /// Whether the valve is flatter than its seat, so that the two touch at the chamber edge (the right side), or the same.
    /// </summary>
    public bool IsRightSide => DifferenceDegrees >= 0;

    /// <summary>In words.</summary>
    public string Side =>
        DifferenceDegrees switch
        {
            > 0 => "right side: the valve is flatter, contact begins at the chamber edge",
            < 0 => "wrong side: the valve is steeper, contact begins at the port edge",
            _ => "none: the angles are the same",
        };

    /// <summary>Of two angles, in deg from the plane square to the guide's axis; outside of 0 to 90 is a fault.</summary>
    /// <param name="seatAngleDegrees">Between 0 and 90.</param>
    /// <param name="faceAngleDegrees">Of the valve, between 0 and 90.</param>
    public static ShopResult<AngleDifference> Of(double seatAngleDegrees, double faceAngleDegrees) =>
        (AllowedAngles.OfFace("seat angle", seatAngleDegrees) ?? AllowedAngles.OfFace("face angle", faceAngleDegrees))
            is { } fault
            ? fault
            : new AngleDifference(seatAngleDegrees - faceAngleDegrees);

    /// <summary>
    /// The open gap at one edge of a seat when the two touch at the other, along the axis:
    /// (outer - inner) / 2 x |tan(seat angle) - tan(face angle)|, mm; x cos(face angle) square to the face. Plane geometry of two cones.
    /// </summary>
    /// <param name="outerDiameterMillimetres">Where the seat ends outside, above the inner one.</param>
    /// <param name="innerDiameterMillimetres">Where it ends inside, above 0.</param>
    /// <param name="seatAngleDegrees">Between 0 and 90.</param>
    /// <param name="faceAngleDegrees">Of the valve, between 0 and 90.</param>
    public static ShopResult<double> GapAlongAxisMillimetres(
        double outerDiameterMillimetres,
        double innerDiameterMillimetres,
        double seatAngleDegrees,
        double faceAngleDegrees
    ) =>
        SeatGeometry
            .Width(outerDiameterMillimetres, innerDiameterMillimetres, seatAngleDegrees)
            .Then(_ => Of(seatAngleDegrees, faceAngleDegrees))
            .Then<double>(_ =>
                (outerDiameterMillimetres - innerDiameterMillimetres)
                / 2
                * Math.Abs(SeatGeometry.Tangent(seatAngleDegrees) - SeatGeometry.Tangent(faceAngleDegrees))
            );
}
