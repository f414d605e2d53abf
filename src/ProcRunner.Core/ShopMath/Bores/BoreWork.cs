using ProcRunner.Quantities;

namespace ProcRunner.ShopMath;

/// <summary>The table of bores and stems.</summary>
internal static class BoreWork
{
    private const string Family = "bores and stems";
    private const string Practice = "definition, common practice";
    private static readonly string[] Depths = ["top", "middle", "bottom"];
    private static readonly WorkTakes Length = new WorkTakes.Amount(Units.Inch);
    private static readonly WorkTakes Readings = new WorkTakes.Amounts(Units.Inch, 1);

    public static IReadOnlyList<WorkFunction> Table { get; } =
    [
        new()
        {
            Name = "bore-shape",
            Family = Family,
            Summary = "size, taper and out-of-round of a bore or stem",
            Details =
                "Readings at each depth stand in one order of directions. A two-point gauge sees no three-lobed bore.",
            Parameters =
            [
                new("top", Readings, "diameters at the top, one for each direction"),
                new("middle", Readings, "diameters in the middle, same directions", IsOptional: true),
                new("bottom", Readings, "diameters at the bottom, same directions"),
            ],
            Source = Practice,
            Gives =
            [
                .. WorkGives.Of(Dimension.OfLength, "largest", "smallest", "mean", "taper", "out-of-round"),
                .. WorkGives.Words("largest at", "smallest at"),
            ],
            Examples =
            [
                new(
                    "top=0.3133 0.3136 in; middle=0.3130 0.3131 in; bottom=0.3131 0.3135 in",
                    "largest=0.3136 in; smallest=0.3130 in; taper=0.0005 in; out-of-round=0.0004 in",
                    "worked by hand"
                ),
                new(
                    "top=8.015 8.018 mm; bottom=8.010 8.012 mm",
                    "largest=8.018 mm; smallest=8.010 mm; mean=8.01375 mm; taper=0.006 mm; out-of-round=0.003 mm",
                    "worked by hand"
                ),
            ],
            StemsFrom = [new("readings", "top and bottom")],
            Work = Shape,
        },
        new()
        {
            Name = "stem-clearance",
            Family = Family,
            Summary = "smallest and largest play of a stem in its guide",
            Details =
                "From the extremes of the readings of both; below zero the stem does not go in. Each place counts against the other's worst.",
            Parameters =
            [
                new("bore-smallest", Length, "smallest reading of the guide"),
                new("bore-largest", Length, "largest reading of the guide"),
                new("stem-smallest", Length, "smallest reading of the stem"),
                new("stem-largest", Length, "largest reading of the stem"),
            ],
            Source = "clearance = bore - stem, ISO 286-1:2010",
            Gives = WorkGives.Of(Dimension.OfLength, "smallest clearance", "largest clearance"),
            Examples =
            [
                new(
                    "bore-smallest=0.4972 in; bore-largest=0.4980 in; stem-smallest=0.4945 in; stem-largest=0.4955 in",
                    "smallest clearance=0.0017 in; largest clearance=0.0035 in",
                    "TM 9-6115-604-34, Table 1-4"
                ),
                new(
                    "bore-smallest=6.000 mm; bore-largest=6.012 mm; stem-smallest=5.965 mm; stem-largest=5.980 mm",
                    "smallest clearance=0.020 mm; largest clearance=0.047 mm",
                    "a car maker's specification, printed 0.020 to 0.047"
                ),
            ],
            Work = Clearance,
        },
        new()
        {
            Name = "rock-to-clearance",
            Family = Family,
            Summary = "play of a stem from a dial rocked from side to side",
            Details =
                "Name the method and use the limit made for it. tilt: the stem leans and the dial stands out from the guide's end. "
                + "half: a maker's rule, half of the reading. straight: pushed across without leaning, the reading itself.",
            Parameters =
            [
                new("rock", Length, "full reading, side to side"),
                new("method", new WorkTakes.Word(["tilt", "half", "straight"]), "how it was taken"),
                new("guide-length", Length, "for tilt", IsOptional: true),
                new("overhang", Length, "from the guide's end to the dial, for tilt", IsOptional: true),
            ],
            Source = "plane geometry of a straight stem touching both ends of its guide",
            Gives = WorkGives.Of(Dimension.OfLength, "clearance"),
            Examples =
            [
                new(
                    "rock=0.010 in; method=tilt; guide-length=2.0 in; overhang=1.5 in",
                    "clearance=0.004 in",
                    "worked by hand: 0.010 / (1 + 2 x 1.5 / 2.0)"
                ),
                new("rock=0.16 mm; method=half", "clearance=0.08 mm", "worked by hand"),
            ],
            Work = Rock,
        },
    ];

    private static ShopResult<WorkAnswer> Shape(WorkArguments all)
    {
        List<DiameterReading> readings =
        [
            .. Depths.SelectMany(depth =>
                all.Amounts(depth)
                    .Select(
                        (size, way) =>
                            new DiameterReading(depth, FormattableString.Invariant($"direction {way + 1}"), size)
                    )
            ),
        ];
        return RoundShape
            .Of(readings)
            .Then(shape =>
            {
                Working working = new(all);
                string every = string.Join(", ", Depths.Where(all.Has).Select(depth => $"{{{depth}}}"));
                Say(working, "largest", $"the largest of {every}", shape.Largest);
                Say(working, "smallest", $"the smallest of {every}", shape.Smallest);
                Say(working, "mean", $"the mean of {every}", shape.Mean);
                Say(working, "taper", $"the most that one direction differs along {every}", shape.Taper);
                Say(working, "out-of-round", $"the most that one depth differs across, of {every}", shape.OutOfRound);
                working.Say("largest at", "where {largest} was read", Place(shape.LargestAt));
                working.Say("smallest at", "where {smallest} was read", Place(shape.SmallestAt));
                return working.Done();
            });
    }

    private static ShopResult<WorkAnswer> Clearance(WorkArguments all) =>
        StemClearance
            .Of(
                all.Amount("bore-smallest"),
                all.Amount("bore-largest"),
                all.Amount("stem-smallest"),
                all.Amount("stem-largest")
            )
            .Then(clearance =>
            {
                Working working = new(all);
                Say(working, "smallest clearance", "{bore-smallest} - {stem-largest}", clearance.Smallest);
                Say(working, "largest clearance", "{bore-largest} - {stem-smallest}", clearance.Largest);
                return working.Done();
            });

    private static ShopResult<WorkAnswer> Rock(WorkArguments all)
    {
        (RockMethod method, string formula) = all.Word("method") switch
        {
            "half" => (RockMethod.Half, "{rock} / 2"),
            "straight" => (RockMethod.Straight, "{rock}"),
            _ => (RockMethod.Tilt, "{rock} / (1 + 2 x {overhang} / {guide-length})"),
        };
        return RockReading
            .Clearance(
                all.Amount("rock"),
                method,
                all.Has("guide-length") ? all.Amount("guide-length") : null,
                all.Has("overhang") ? all.Amount("overhang") : null
            )
            .Then(clearance =>
            {
                Working working = new(all);
                Say(working, "clearance", formula, clearance);
                return working.Done();
            });
    }

    private static void Say(Working working, string name, string formula, Exact length) =>
        working.Step(name, formula, length, Units.Millimetre, Units.Inch);

    private static string Place(DiameterReading reading) => $"{reading.Depth}, {reading.Direction}";
}
