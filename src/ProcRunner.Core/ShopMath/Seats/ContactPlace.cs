namespace ProcRunner.ShopMath;

/// <summary>Where a seat touches the valve's face; lengths along the face.</summary>
/// <param name="FromMarginMillimetres">From the face's outer edge to the contact's outer edge.</param>
/// <param name="WidthMillimetres">Of the contact.</param>
/// <param name="ToInnerEdgeMillimetres">From the contact's inner edge to the face's.</param>
/// <param name="OffMiddleMillimetres">From the face's middle outward to the contact's middle; below 0 it lies inside.</param>
public sealed record ContactPlace(
    double FromMarginMillimetres,
    double WidthMillimetres,
    double ToInnerEdgeMillimetres,
    double OffMiddleMillimetres
)
{
    /// <summary>
    /// From four diameters, each difference divided by 2 cos(face angle): plane geometry of a cone. The contact lies on the
    /// face: face inner &lt;= contact inner &lt; contact outer &lt;= face outer; what doesn't is a fault.
    /// </summary>
    /// <param name="faceOuterMillimetres">Diameter where the face meets the margin.</param>
    /// <param name="faceInnerMillimetres">Diameter where the face ends inside, above 0.</param>
    /// <param name="contactOuterMillimetres">Outer diameter of the contact.</param>
    /// <param name="contactInnerMillimetres">Inner diameter of the contact.</param>
    /// <param name="faceAngleDegrees">From the plane square to the guide's axis, between 0 and 90.</param>
    public static ShopResult<ContactPlace> Of(
        double faceOuterMillimetres,
        double faceInnerMillimetres,
        double contactOuterMillimetres,
        double contactInnerMillimetres,
        double faceAngleDegrees
    )
    {
        ShopFault? fault =
            AllowedAngles.OfFace("face angle", faceAngleDegrees)
            ?? Allowed.Above0("face inner", faceInnerMillimetres, "mm")
            ?? AllowedAngles.Below("face inner", faceInnerMillimetres, "face outer", faceOuterMillimetres, "mm")
            ?? AllowedAngles.Below(
                "contact inner",
                contactInnerMillimetres,
                "contact outer",
                contactOuterMillimetres,
                "mm"
            )
            ?? OnFace("contact outer", contactOuterMillimetres, faceInnerMillimetres, faceOuterMillimetres)
            ?? OnFace("contact inner", contactInnerMillimetres, faceInnerMillimetres, faceOuterMillimetres);
        if (fault is not null)
        {
            return fault;
        }

        double perDiameter = 1 / (2 * SeatGeometry.Cosine(faceAngleDegrees));
        double middleOfFace = (faceOuterMillimetres + faceInnerMillimetres) / 2;
        double middleOfContact = (contactOuterMillimetres + contactInnerMillimetres) / 2;
        return new ContactPlace(
            (faceOuterMillimetres - contactOuterMillimetres) * perDiameter,
            (contactOuterMillimetres - contactInnerMillimetres) * perDiameter,
            (contactInnerMillimetres - faceInnerMillimetres) * perDiameter,
            (middleOfContact - middleOfFace) * perDiameter
        );
    }

    private static ShopFault? OnFace(string argument, double value, double low, double high) =>
        Allowed.Within(argument, value, low, high, "mm") is { } off
            ? off with
            {
                Allowed = off.Allowed + ": a contact lies on the valve's face",
            }
            : null;
}
