using ProcRunner.Quantities;

namespace ProcRunner.ShopMath;

/// <summary>The table of seat geometry.</summary>
internal static class SeatWork
{
    private const string Family = "seats";
    private const string Cone = "plane geometry of a cone";
    private const string Plane =
        "Angles are measured from the plane square to the guide's axis: 30 deg is flatter than 45 deg.";

    private static readonly WorkTakes Length = new WorkTakes.Amount(Units.Millimetre);
    private static readonly WorkTakes Angle = new WorkTakes.Amount(Units.Degree);
    private static readonly WorkParameter SeatAngle = new("seat-angle", Angle, "angle of the seat");
    private static readonly WorkParameter FaceAngle = new("face-angle", Angle, "angle of the valve's face");
    private static readonly WorkParameter OuterDiameter = new("outer-diameter", Length, "where the seat ends outside");
    private static readonly WorkParameter InnerDiameter = new("inner-diameter", Length, "where the seat ends inside");

    public static IReadOnlyList<WorkFunction> Table { get; } =
    [
        new()
        {
            Name = "seat-width",
            Family = Family,
            Summary = "width of a seat along its face, from its two diameters",
            Details = "The parts square to the axis and along it are given as well. " + Plane,
            Parameters = [OuterDiameter, InnerDiameter, SeatAngle],
            Source = Cone,
            Gives = WorkGives.Of(Dimension.OfLength, "width", "radial part", "axial part"),
            Examples =
            [
                new(
                    "outer-diameter=38.0 mm; inner-diameter=35.6 mm; seat-angle=45 deg",
                    "width=1.697056275 mm; radial part=1.2 mm; axial part=1.2 mm",
                    "1.2 / cos 45 deg"
                ),
                new(
                    "outer-diameter=38.0 mm; inner-diameter=35.6 mm; seat-angle=30 deg",
                    "width=1.385640646 mm; axial part=0.692820323 mm",
                    "1.2 / cos 30 deg, 1.2 tan 30 deg"
                ),
                new(
                    "outer-diameter=1.5 in; inner-diameter=1.375 in; seat-angle=60 deg",
                    "width=0.125 in; radial part=0.0625 in",
                    "cos 60 deg is a half, so the width is the difference"
                ),
            ],
            Work = all =>
                SeatGeometry
                    .Width(Mm(all, "outer-diameter"), Mm(all, "inner-diameter"), Deg(all, "seat-angle"))
                    .Then(width =>
                        Worked(all)
                            .And("width", "({outer-diameter} - {inner-diameter}) / (2 x cos({seat-angle}))", width)
                            .And(
                                "radial part",
                                "{width} x cos({seat-angle})",
                                width * SeatGeometry.Cosine(Deg(all, "seat-angle"))
                            )
                            .And(
                                "axial part",
                                "{width} x sin({seat-angle})",
                                width * SeatGeometry.Sine(Deg(all, "seat-angle"))
                            )
                            .Done()
                    ),
        },
        new()
        {
            Name = "seat-outer-diameter",
            Family = Family,
            Summary = "outer diameter of a seat from its inner one and its width",
            Details = "Where the top cut must meet the seat for the width wanted. " + Plane,
            Parameters = [InnerDiameter, new("width", Length, "along the face"), SeatAngle],
            Source = Cone,
            Gives = WorkGives.Of(Dimension.OfLength, "outer diameter"),
            Examples =
            [
                new(
                    "inner-diameter=35.6 mm; width=1.5 mm; seat-angle=45 deg",
                    "outer diameter=37.721320344 mm",
                    "35.6 + 2 x 1.060660172"
                ),
            ],
            Work = all =>
                SeatGeometry
                    .OuterDiameter(Mm(all, "inner-diameter"), Mm(all, "width"), Deg(all, "seat-angle"))
                    .Then(outer =>
                        Worked(all)
                            .And("outer diameter", "{inner-diameter} + 2 x {width} x cos({seat-angle})", outer)
                            .Done()
                    ),
        },
        new()
        {
            Name = "seat-inner-diameter",
            Family = Family,
            Summary = "inner diameter of a seat from its outer one and its width",
            Details = "Where the throat cut must meet the seat for the width wanted. " + Plane,
            Parameters = [OuterDiameter, new("width", Length, "along the face"), SeatAngle],
            Source = Cone,
            Gives = WorkGives.Of(Dimension.OfLength, "inner diameter"),
            Examples =
            [
                new(
                    "outer-diameter=38 mm; width=1.5 mm; seat-angle=30 deg",
                    "inner diameter=35.401923789 mm",
                    "38 - 2 x 1.299038106"
                ),
                new(
                    "outer-diameter=1.5 in; width=0.125 in; seat-angle=60 deg",
                    "inner diameter=1.375 in",
                    "cos 60 deg is a half"
                ),
            ],
            Work = all =>
                SeatGeometry
                    .InnerDiameter(Mm(all, "outer-diameter"), Mm(all, "width"), Deg(all, "seat-angle"))
                    .Then(inner =>
                        Worked(all)
                            .And("inner diameter", "{outer-diameter} - 2 x {width} x cos({seat-angle})", inner)
                            .Done()
                    ),
        },
        new()
        {
            Name = "diameter-growth",
            Family = Family,
            Summary = "how much a seat's diameter grows when it is cut deeper",
            Details = "At a fixed place along the axis, for the same cone moved in by the depth. " + Plane,
            Parameters = [new("depth", Length, "cut along the axis"), SeatAngle],
            Source = Cone,
            Gives = WorkGives.Of(Dimension.OfLength, "growth"),
            Examples =
            [
                new("depth=0.10 mm; seat-angle=45 deg", "growth=0.200 mm", "2 x 0.10 / tan 45 deg"),
                new("depth=0.10 mm; seat-angle=30 deg", "growth=0.346410162 mm", "2 x 0.10 / tan 30 deg"),
                new("depth=0.010 in; seat-angle=60 deg", "growth=0.011547005 in", "1.1547005384 x 0.010"),
            ],
            Work = all =>
                SeatGeometry
                    .DiameterGrowth(Mm(all, "depth"), Deg(all, "seat-angle"))
                    .Then(growth => Worked(all).And("growth", "2 x {depth} / tan({seat-angle})", growth).Done()),
        },
        new()
        {
            Name = "depth-for-growth",
            Family = Family,
            Summary = "depth of cut that makes a seat's diameter grow by so much",
            Details = "The way back from diameter-growth. " + Plane,
            Parameters = [new("growth", Length, "of the diameter"), SeatAngle],
            Source = Cone,
            Gives = WorkGives.Of(Dimension.OfLength, "depth"),
            Examples =
            [
                new(
                    "growth=0.346410161514 mm; seat-angle=30 deg",
                    "depth=0.100000000 mm",
                    "0.346410161514 x tan 30 deg / 2"
                ),
            ],
            Work = all =>
                SeatGeometry
                    .DepthForGrowth(Mm(all, "growth"), Deg(all, "seat-angle"))
                    .Then(depth => Worked(all).And("depth", "{growth} x tan({seat-angle}) / 2", depth).Done()),
        },
        new()
        {
            Name = "narrow-from-outside",
            Family = Family,
            Summary = "how far a flatter cutter goes past first touch to bring the outer edge in",
            Details = "The cutter is flatter than the seat. First touch is at the seat's outer edge. " + Plane,
            Parameters =
            [
                new("outer-now", Length, "outer diameter now"),
                new("outer-wanted", Length, "outer diameter wanted"),
                SeatAngle,
                new("cutter-angle", Angle, "angle of the cutter, below the seat's"),
            ],
            Source = Cone,
            Gives = WorkGives.Of(Dimension.OfLength, "depth past touch"),
            Examples =
            [
                new(
                    "outer-now=38 mm; outer-wanted=36 mm; seat-angle=45 deg; cutter-angle=30 deg",
                    "depth past touch=0.4226497308 mm",
                    "tan 45 deg - tan 30 deg per mm of radius"
                ),
            ],
            Work = all =>
                SeatGeometry
                    .DepthToNarrowOutside(
                        Mm(all, "outer-now"),
                        Mm(all, "outer-wanted"),
                        Deg(all, "seat-angle"),
                        Deg(all, "cutter-angle")
                    )
                    .Then(depth =>
                        Worked(all)
                            .And(
                                "depth past touch",
                                "({outer-now} - {outer-wanted}) / 2 x (tan({seat-angle}) - tan({cutter-angle}))",
                                depth
                            )
                            .Done()
                    ),
        },
        new()
        {
            Name = "narrow-from-inside",
            Family = Family,
            Summary = "how far a steeper cutter goes past first touch to bring the inner edge out",
            Details = "The cutter is steeper than the seat. First touch is at the seat's inner edge. " + Plane,
            Parameters =
            [
                new("inner-now", Length, "inner diameter now"),
                new("inner-wanted", Length, "inner diameter wanted"),
                SeatAngle,
                new("cutter-angle", Angle, "angle of the cutter, above the seat's"),
            ],
            Source = Cone,
            Gives = WorkGives.Of(Dimension.OfLength, "depth past touch"),
            Examples =
            [
                new(
                    "inner-now=34 mm; inner-wanted=36 mm; seat-angle=45 deg; cutter-angle=60 deg",
                    "depth past touch=0.7320508076 mm",
                    "tan 60 deg - tan 45 deg per mm of radius"
                ),
                new(
                    "inner-now=34 mm; inner-wanted=36 mm; seat-angle=45 deg; cutter-angle=75 deg",
                    "depth past touch=2.7320508076 mm",
                    "tan 75 deg - tan 45 deg per mm of radius"
                ),
            ],
            Work = all =>
                SeatGeometry
                    .DepthToNarrowInside(
                        Mm(all, "inner-now"),
                        Mm(all, "inner-wanted"),
                        Deg(all, "seat-angle"),
                        Deg(all, "cutter-angle")
                    )
                    .Then(depth =>
                        Worked(all)
                            .And(
                                "depth past touch",
                                "({inner-wanted} - {inner-now}) / 2 x (tan({cutter-angle}) - tan({seat-angle}))",
                                depth
                            )
                            .Done()
                    ),
        },
        new()
        {
            Name = "sink-from-face",
            Family = Family,
            Summary = "how far a valve sinks when metal is taken square off its face or seat",
            Details = "The valve moves along its own axis by more than the metal removed. " + Plane,
            Parameters = [new("removed", Length, "square to the face"), FaceAngle],
            Source = Cone,
            Gives = WorkGives.Of(Dimension.OfLength, "sink"),
            Examples =
            [
                new("removed=0.10 mm; face-angle=45 deg", "sink=0.141421356 mm", "0.10 / cos 45 deg"),
                new("removed=0.10 mm; face-angle=30 deg", "sink=0.11547005384 mm", "0.10 / cos 30 deg"),
                new("removed=0.004 in; face-angle=60 deg", "sink=0.008 in", "0.004 / cos 60 deg"),
            ],
            Work = all =>
                SeatGeometry
                    .Sink(Mm(all, "removed"), Deg(all, "face-angle"))
                    .Then(sink => Worked(all).And("sink", "{removed} / cos({face-angle})", sink).Done()),
        },
        .. SeatContactWork.Table,
    ];

    public static double Mm(WorkArguments all, string name) => all.In(name, Units.Millimetre);

    public static double Deg(WorkArguments all, string name) => all.In(name, Units.Degree);

    public static LengthWorking Worked(WorkArguments all) => new(all);
}
