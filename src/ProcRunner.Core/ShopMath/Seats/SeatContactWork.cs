using ProcRunner.Quantities;
using static ProcRunner.ShopMath.SeatWork;

namespace ProcRunner.ShopMath;

/// <summary>The table of how valve and seat meet.</summary>
internal static class SeatContactWork
{
    private static readonly WorkTakes Length = new WorkTakes.Amount(Units.Millimetre);
    private static readonly WorkTakes Angle = new WorkTakes.Amount(Units.Degree);

    public static IReadOnlyList<WorkFunction> Table { get; } =
    [
        new()
        {
            Name = "contact-place",
            Family = "seats",
            Summary = "where on the valve's face the seat touches",
            Details =
                "All lengths along the face. The middle of the contact outside the middle of the face is above 0. Blueing shows "
                + "the contact's two diameters.",
            Parameters =
            [
                new("face-outer", Length, "diameter where the face meets the margin"),
                new("face-inner", Length, "diameter where the face ends inside"),
                new("contact-outer", Length, "outer diameter of the contact"),
                new("contact-inner", Length, "inner diameter of the contact"),
                new("face-angle", Angle, "angle of the valve's face"),
            ],
            Source = "plane geometry of a cone",
            Gives = WorkGives.Of(
                Dimension.OfLength,
                "from the margin",
                "contact width",
                "to the inner edge",
                "off the middle"
            ),
            Examples =
            [
                new(
                    "face-outer=40 mm; face-inner=34 mm; contact-outer=38.8 mm; contact-inner=36.4 mm; face-angle=45 deg",
                    "from the margin=0.848528137 mm; contact width=1.697056275 mm; off the middle=0.424264069 mm",
                    "0.6, 1.2 and 0.3 of radius, each / cos 45 deg"
                ),
                new(
                    "face-outer=1.60 in; face-inner=1.40 in; contact-outer=1.54 in; contact-inner=1.46 in; face-angle=60 deg",
                    "from the margin=0.06 in; contact width=0.08 in; off the middle=0 in",
                    "cos 60 deg is a half; the middles are both at 1.50 in"
                ),
            ],
            Work = all =>
                ContactPlace
                    .Of(
                        Mm(all, "face-outer"),
                        Mm(all, "face-inner"),
                        Mm(all, "contact-outer"),
                        Mm(all, "contact-inner"),
                        Deg(all, "face-angle")
                    )
                    .Then(place =>
                        Worked(all)
                            .And(
                                "from the margin",
                                "({face-outer} - {contact-outer}) / (2 x cos({face-angle}))",
                                place.FromMarginMillimetres
                            )
                            .And(
                                "contact width",
                                "({contact-outer} - {contact-inner}) / (2 x cos({face-angle}))",
                                place.WidthMillimetres
                            )
                            .And(
                                "to the inner edge",
                                "({contact-inner} - {face-inner}) / (2 x cos({face-angle}))",
                                place.ToInnerEdgeMillimetres
                            )
                            .And(
                                "off the middle",
                                "({contact-outer} + {contact-inner} - {face-outer} - {face-inner}) / (4 x cos({face-angle}))",
                                place.OffMiddleMillimetres
                            )
                            .Done()
                    ),
        },
        new()
        {
            Name = "angle-difference",
            Family = "seats",
            Summary = "whether seat and face differ on the right side, and the gap that opens",
            Details =
                "A valve a little flatter than its seat touches at the chamber edge: the right side. How much is the maker's "
                + "matter. With both diameters of the seat, the open gap at the other edge is given.",
            Parameters =
            [
                new("seat-angle", Angle, "angle of the seat"),
                new("face-angle", Angle, "angle of the valve's face"),
                new("outer-diameter", Length, "where the seat ends outside; without it no gap", IsOptional: true),
                new("inner-diameter", Length, "where the seat ends inside; without it no gap", IsOptional: true),
            ],
            Source = "plane geometry of two cones",
            Gives =
            [
                .. WorkGives.Of(Dimension.OfAngle, "difference"),
                .. WorkGives.Words("side"),
                .. WorkGives.Of(Dimension.OfLength, "gap along the axis", "gap square to the face"),
            ],
            Examples =
            [
                new(
                    "seat-angle=45 deg; face-angle=44 deg; outer-diameter=38.0 mm; inner-diameter=35.6 mm",
                    "difference=1 deg; gap along the axis=0.041173470 mm; gap square to the face=0.029617716 mm",
                    "1.2 x (tan 45 deg - tan 44 deg)"
                ),
                new(
                    "seat-angle=45 deg; face-angle=45.5 deg",
                    "side=wrong side: the valve is steeper, contact begins at the port edge",
                    "a steeper valve reaches the inner edge first"
                ),
            ],
            Work = all =>
                AngleDifference
                    .Of(Deg(all, "seat-angle"), Deg(all, "face-angle"))
                    .Then(difference =>
                    {
                        LengthWorking working = Worked(all)
                            .In(Units.Degree, "difference", "{seat-angle} - {face-angle}", difference.DifferenceDegrees)
                            .Say("side", "{difference} against 0", difference.Side);
                        return all.Has("outer-diameter") && all.Has("inner-diameter")
                            ? Gaps(all, working)
                            : working.Done();
                    }),
        },
    ];

    private static ShopResult<WorkAnswer> Gaps(WorkArguments all, LengthWorking working) =>
        AngleDifference
            .GapAlongAxisMillimetres(
                Mm(all, "outer-diameter"),
                Mm(all, "inner-diameter"),
                Deg(all, "seat-angle"),
                Deg(all, "face-angle")
            )
            .Then(gap =>
                working
                    .And(
                        "gap along the axis",
                        "({outer-diameter} - {inner-diameter}) / 2 x |tan({seat-angle}) - tan({face-angle})|",
                        gap
                    )
                    .And(
                        "gap square to the face",
                        "{gap-along-the-axis} x cos({face-angle})",
                        gap * SeatGeometry.Cosine(Deg(all, "face-angle"))
                    )
                    .Done()
            );
}
