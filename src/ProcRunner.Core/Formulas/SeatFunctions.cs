using ProcRunner.Quantities;
using ProcRunner.ShopMath;

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
            Work = new FormulaWork.Numbers(all => Millimetres(SeatGeometry.Sink(all[0].ToDouble(), all[1].ToDouble()))),
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
                Millimetres(SeatGeometry.Width(all[0].ToDouble(), all[1].ToDouble(), all[2].ToDouble()))
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
                Millimetres(SeatGeometry.DiameterGrowth(all[0].ToDouble(), all[1].ToDouble()))
            ),
        },
    ];

    // Base units are mm and deg, as the geometry takes them.
    private static FormulaNumber Millimetres(ShopResult<double> result) =>
        result.TryGet(out double millimetres, out ShopFault? fault)
            ? RoundedDouble.Of(millimetres)
            : FormulaNumber.Not($"{fault.Argument}: {fault.Allowed}");
}
