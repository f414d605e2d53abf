using ProcRunner.Quantities;

namespace ProcRunner.Formulas;

/// <summary>Geometry of valve seats and faces; angles are measured from the plane square to the guide's axis.</summary>
internal static class SeatFunctions
{
    private const string Plane =
        "The angle is measured from the plane square to the guide's axis: 30 deg is flatter than 45 deg.";
    private const string Cone = "plane geometry of a cone";
    private static readonly FormulaTakes Length = new FormulaTakes.A(Dimension.OfLength);
    private static readonly FormulaTakes Angle = new FormulaTakes.A(Dimension.OfAngle);
    private static readonly FormulaGives GivesLength = new FormulaGives.A(Dimension.OfLength);

    public static IReadOnlyList<FormulaFunction> Table { get; } =
    [
        new()
        {
            Name = "sink",
            Parameters = [new("removed", Length), new("face angle", Angle)],
            Gives = GivesLength,
            Summary = "how far a valve sinks when its face is refaced",
            Details =
                $"Metal removed square to the face lets the valve move along its own axis by more than that. {Plane}",
            Relation = "removed / cos(face angle)",
            Source = Cone,
            Examples = [new("sink('0.10 mm', '45 deg')", "0.141421356 mm"), new("sink('0.10 mm', '60 deg')", "0.2 mm")],
            Work = new FormulaWork.Numbers(all => OnSlope(all[1], cosine => all[0].ToDouble() / cosine)),
        },
        new()
        {
            Name = "seatwidth",
            Parameters = [new("outer diameter", Length), new("inner diameter", Length), new("seat angle", Angle)],
            Gives = GivesLength,
            Summary = "width of a seat along its face",
            Details = $"From the two diameters where its cuts meet it. {Plane}",
            Relation = "(outer diameter - inner diameter) / (2 cos(seat angle))",
            Source = Cone,
            Examples = [new("seatwidth('38.0 mm', '35.6 mm', '45 deg')", "1.697056275 mm")],
            Work = new FormulaWork.Numbers(all =>
                OnSlope(all[2], cosine => (all[0] - all[1]).ToDouble() / (2 * cosine))
            ),
        },
        new()
        {
            Name = "diametergrowth",
            Parameters = [new("depth", Length), new("seat angle", Angle)],
            Gives = GivesLength,
            Summary = "how much a seat's diameter grows when it is cut deeper",
            Details = $"At a fixed place along the axis, for the same cone moved in by depth. {Plane}",
            Relation = "2 depth / tan(seat angle)",
            Source = Cone,
            Examples = [new("diametergrowth('0.10 mm', '45 deg')", "0.200 mm")],
            Work = new FormulaWork.Numbers(all =>
                OnSlope(all[1], cosine => 2 * all[0].ToDouble() * cosine / AngleFunctions.Sine(all[1]))
            ),
        },
    ];

    // A face lies between flat and along the axis; neither end is a cone.
    private static FormulaNumber OnSlope(Rational angle, Func<double, double> work) =>
        angle.Sign <= 0 || angle >= Rational.FromInteger(90)
            ? FormulaNumber.Not("an angle of a seat or face lies between 0 and 90 deg")
            : RoundedDouble.Of(work(AngleFunctions.Cosine(angle)));
}
