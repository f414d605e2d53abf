using ProcRunner.Quantities;
using static ProcRunner.ShopMath.SeatWork;

namespace ProcRunner.ShopMath;

/// <summary>The table of chamber volumes and compression.</summary>
internal static class ChamberWork
{
    private const string Family = "chamber";
    private const string Definition = "definition of the compression ratio: (swept + chamber) / chamber";
    private const string Above =
        "The chamber is all that is above the piston at its top: chamber, gasket, deck clearance, dish or dome.";

    private static readonly WorkTakes Length = new WorkTakes.Amount(Units.Millimetre);
    private static readonly WorkTakes Volume = new WorkTakes.Amount(Units.CubicCentimetre);
    private static readonly WorkParameter Bore = new("bore", Length, "of the cylinder");
    private static readonly WorkParameter Stroke = new("stroke", Length, "of the piston");

    public static IReadOnlyList<WorkFunction> Table { get; } =
    [
        new()
        {
            Name = "recession-volume",
            Family = Family,
            Summary = "how much a chamber grows when valves sink",
            Details = "Exact only if the valve's head moves in a bore of its own diameter; else an estimate.",
            Parameters =
            [
                new("head-diameter", Length, "of the valve's head"),
                new("sink", Length, "change of recession"),
                new("valves", new WorkTakes.Amount(Units.One), "how many; without it 1", IsOptional: true),
            ],
            Source = "volume of a cylinder",
            Gives = WorkGives.Of(Dimension.OfVolume, "volume change"),
            Examples =
            [
                new("head-diameter=40 mm; sink=0.50 mm", "volume change=0.628318531 cm3", "pi/4 x 40^2 x 0.50 mm3"),
                new(
                    "head-diameter=40 mm; sink=0.50 mm; valves=2",
                    "volume change=1.256637061 cm3",
                    "pi/4 x 40^2 x 0.50 x 2 mm3"
                ),
                new("head-diameter=2 in; sink=0.010 in", "volume change=0.031415927 in3", "pi/4 x 2^2 x 0.010 in3"),
            ],
            Work = all =>
                ChamberVolume
                    .OfSink(Mm(all, "head-diameter"), Mm(all, "sink"), all.In("valves", Units.One, 1))
                    .Then(volume =>
                        Answer(all, ("volume change", "pi/4 x {head-diameter}^2 x {sink}" + Times(all), volume))
                    ),
        },
        new()
        {
            Name = "skim-volume",
            Family = Family,
            Summary = "how much a chamber shrinks when the deck is cut",
            Details = "Below 0: it shrinks. The area is the chamber's in the plane of the deck.",
            Parameters =
            [
                new("deck-cut", Length, "square to the deck"),
                new("area", new WorkTakes.Amount(Units.SquareCentimetre), "of the chamber in the deck's plane"),
            ],
            Source = "volume of a prism",
            Gives = WorkGives.Of(Dimension.OfVolume, "volume change"),
            Examples =
            [
                new("deck-cut=0.15 mm; area=52 cm2", "volume change=-0.78 cm3", "52 x 0.015"),
                new("deck-cut=0.010 in; area=8 in2", "volume change=-0.08 in3", "8 x 0.010"),
            ],
            Work = all =>
                ChamberVolume
                    .OfSkim(all.In("area", Units.SquareCentimetre), Mm(all, "deck-cut"))
                    .Then(volume => Answer(all, ("volume change", "-{area} x {deck-cut}", volume))),
        },
        new()
        {
            Name = "compression-ratio",
            Family = Family,
            Summary = "compression ratio from bore, stroke and chamber",
            Details = Above + " With a change of volume, the ratio after it.",
            Parameters =
            [
                Bore,
                Stroke,
                new("chamber", Volume, "above the piston at its top"),
                new("change", Volume, "of the chamber, below 0 for a skim; without it 0", IsOptional: true),
            ],
            Source = Definition,
            Gives = [.. WorkGives.Of(Dimension.OfVolume, "swept volume"), .. WorkGives.Of(Dimension.None, "ratio")],
            Examples =
            [
                new(
                    "bore=150 mm; stroke=250 mm; chamber=400 cm3",
                    "swept volume=4417.864669 cm3; ratio=12.0446616728",
                    "Rajput, I.C. Engines, ch. 3, diesel cycle (inputs)"
                ),
                new(
                    "bore=86 mm; stroke=86 mm; chamber=58.771436967 cm3; change=1.256637061 cm3",
                    "swept volume=499.557214218 cm3; ratio=9.322059675",
                    "(499.557214218 + 60.028074028) / 60.028074028"
                ),
                new(
                    "bore=86 mm; stroke=86 mm; chamber=58.771436967 cm3; change=-0.78 cm3",
                    "ratio=9.614327224",
                    "(499.557214218 + 57.991436967) / 57.991436967"
                ),
                new(
                    "bore=4 in; stroke=3 in; chamber=4 in3",
                    "swept volume=37.69911184 in3; ratio=10.42477796",
                    "pi/4 x 16 x 3 = 12 pi"
                ),
            ],
            Work = Ratio,
        },
        new()
        {
            Name = "chamber-for-ratio",
            Family = Family,
            Summary = "chamber volume that a compression ratio needs",
            Details = Above + " It is swept / (ratio - 1), not swept / ratio.",
            Parameters = [Bore, Stroke, new("ratio", new WorkTakes.Amount(Units.One), "wanted, above 1")],
            Source = Definition,
            Gives = WorkGives.Of(Dimension.OfVolume, "swept volume", "chamber"),
            Examples =
            [
                new("bore=86 mm; stroke=86 mm; ratio=9.5", "chamber=58.771436967 cm3", "499.557214218 / 8.5"),
                new("bore=4 in; stroke=3 in; ratio=10", "chamber=4.188790205 in3", "12 pi / 9"),
            ],
            Work = all =>
                ChamberVolume
                    .Swept(Mm(all, "bore"), Mm(all, "stroke"))
                    .Then(swept =>
                        ChamberVolume
                            .ForRatio(swept, all.In("ratio", Units.One))
                            .Then(chamber =>
                                Answer(
                                    all,
                                    ("swept volume", "pi/4 x {bore}^2 x {stroke}", swept),
                                    ("chamber", "{swept-volume} / ({ratio} - 1)", chamber)
                                )
                            )
                    ),
        },
        new()
        {
            Name = "chamber-spread",
            Family = Family,
            Summary = "spread of chamber volumes between cylinders, and of the ratio",
            Details = Above + " The smallest chamber has the highest ratio.",
            Parameters = [Bore, Stroke, new("chambers", new WorkTakes.Amounts(Units.CubicCentimetre, 2), "one each")],
            Source = Definition,
            Gives =
            [
                .. WorkGives.Of(Dimension.OfVolume, "swept volume", "spread"),
                .. WorkGives.Of(Dimension.None, "highest ratio", "lowest ratio"),
            ],
            Examples =
            [
                new(
                    "bore=86 mm; stroke=86 mm; chambers=58.771436967 60.028074028 57.991436967 58.5 cm3",
                    "spread=2.036637061 cm3; highest ratio=9.614327224; lowest ratio=9.322059675",
                    "the ratios of compression-ratio's examples"
                ),
                new(
                    "bore=4 in; stroke=3 in; chambers=4 4.1 in3",
                    "spread=0.1 in3; highest ratio=10.42477796",
                    "4.1 - 4"
                ),
            ],
            StemsFrom = [new("chamber", "chambers")],
            Work = Spread,
        },
    ];

    private static ShopResult<WorkAnswer> Ratio(WorkArguments all) =>
        ChamberVolume
            .Swept(Mm(all, "bore"), Mm(all, "stroke"))
            .Then(swept =>
                ChamberVolume
                    .Ratio(swept, all.In("chamber", Units.CubicCentimetre) + all.In("change", Units.CubicCentimetre, 0))
                    .Then(ratio =>
                    {
                        string chamber = all.Has("change") ? "({chamber} + {change})" : "{chamber}";
                        Working working = new(all);
                        Step(working, "swept volume", "pi/4 x {bore}^2 x {stroke}", swept);
                        working.Step(
                            "ratio",
                            $"({{swept-volume}} + {chamber}) / {chamber}",
                            ratio,
                            Units.One,
                            Units.One
                        );
                        return working.Done();
                    })
            );

    private static ShopResult<WorkAnswer> Spread(WorkArguments all)
    {
        double[] chambers = [.. all.Amounts("chambers").Select(one => one.In(Units.CubicCentimetre).ToDouble())];
        return ChamberVolume
            .Swept(Mm(all, "bore"), Mm(all, "stroke"))
            .Then(swept =>
                ChamberVolume
                    .Ratio(swept, chambers.Min())
                    .Then(high =>
                        ChamberVolume
                            .Ratio(swept, chambers.Max())
                            .Then(low =>
                            {
                                Working working = new(all);
                                Step(working, "swept volume", "pi/4 x {bore}^2 x {stroke}", swept);
                                Step(
                                    working,
                                    "spread",
                                    "largest less smallest of {chambers}",
                                    chambers.Max() - chambers.Min()
                                );
                                working.Step(
                                    "highest ratio",
                                    "of the smallest of {chambers}",
                                    high,
                                    Units.One,
                                    Units.One
                                );
                                working.Step("lowest ratio", "of the largest of {chambers}", low, Units.One, Units.One);
                                return working.Done();
                            })
                    )
            );
    }

    private static ShopResult<WorkAnswer> Answer(
        WorkArguments all,
        params ReadOnlySpan<(string Name, string Formula, double CubicCentimetres)> steps
    )
    {
        Working working = new(all);
        foreach ((string name, string formula, double volume) in steps)
        {
            Step(working, name, formula, volume);
        }

        return working.Done();
    }

    private static void Step(Working working, string name, string formula, double cubicCentimetres) =>
        working.Step(name, formula, cubicCentimetres, Units.CubicCentimetre, Units.CubicInch);

    private static string Times(WorkArguments all) => all.Has("valves") ? " x {valves}" : "";
}
