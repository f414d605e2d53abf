using ProcRunner.Quantities;

namespace ProcRunner.ShopMath;

/// <summary>The table of cutting.</summary>
internal static class CuttingWork
{
    private const string Family = "cutting";
    private const string Jones = "F. D. Jones, Turning and Boring, rules for calculating cutting speeds";
    private const string Circles = "geometry of circles a feed apart (from memory)";
    private static readonly WorkTakes Length = new WorkTakes.Amount(Units.Millimetre);
    private static readonly WorkTakes Turning = new WorkTakes.Amount(Units.Rpm);
    private static readonly WorkTakes Feed = new WorkTakes.Amount(Units.MillimetrePerTurn);

    public static IReadOnlyList<WorkFunction> Table { get; } =
    [
        new()
        {
            Name = "spindle-speed",
            Family = Family,
            Summary = "spindle speed for a cutting speed, within the machine's range",
            Details =
                "The cutting speed is a shop setting for material and cutter; take the largest diameter that cuts. n = 12 V / (pi D) in "
                + "ft/min and in, 1000 v / (pi D) in m/min and mm. With the range outside, the cutting speed that is left is shown.",
            Parameters =
            [
                new("speed", new WorkTakes.Amount(Units.MetrePerMinute), "cutting speed"),
                new("diameter", Length, "the largest that cuts"),
                new("slowest", Turning, "of the machine; with fastest", IsOptional: true),
                new("fastest", Turning, "of the machine; with slowest", IsOptional: true),
            ],
            Source = Jones,
            Gives =
            [
                .. WorkGives.Of(Dimension.OfTurningSpeed, "spindle"),
                .. WorkGives.Of(Dimension.OfSpeed, "speed left"),
            ],
            Examples =
            [
                new("speed=60 ft/min; diameter=5 in", "spindle=45.8366236105 rpm", Jones + ", printed 46"),
                new(
                    "speed=25 m/min; diameter=12 mm",
                    "spindle=663.14559622 rpm",
                    "https://www.phantom.eu/en-us/information-advice/tips-tricks/87/freessnelheidberekenen, printed 663"
                ),
                new(
                    "speed=30 m/min; diameter=10 mm; slowest=40 rpm; fastest=600 rpm",
                    "spindle=600 rpm; speed left=18.85 m/min",
                    "954.93 rpm (P. C. Sharma, Production Engineering, ch. 22, printed 954) held to 600: pi x 10 x 600 / 1000"
                ),
            ],
            Work = SpindleSpeed,
        },
        new()
        {
            Name = "surface-speed",
            Family = Family,
            Summary = "cutting speed of a spindle speed",
            Details = "How fast the metal passes the cutting edge at that diameter.",
            Parameters = [new("spindle", Turning, "spindle speed"), new("diameter", Length, "where it cuts")],
            Source = Jones,
            Gives = WorkGives.Of(Dimension.OfSpeed, "speed"),
            Examples =
            [
                new("spindle=45.8366236105 rpm; diameter=5 in", "speed=60.00000000 ft/min", Jones),
                new("spindle=663.14559622 rpm; diameter=12 mm", "speed=25.00000000 m/min", Jones),
            ],
            Work = all =>
                Working.OneStep(
                    all,
                    CuttingSpeed.SurfaceSpeed(all.Amount("spindle"), all.Amount("diameter")),
                    "speed",
                    "pi x {diameter} x {spindle}",
                    Units.MetrePerMinute,
                    Units.FootPerMinute
                ),
        },
        new()
        {
            Name = "feed-speed",
            Family = Family,
            Summary = "how fast a tool goes into the work",
            Details = "Feed per turn times turns per minute.",
            Parameters = [new("feed", Feed, "per turn"), new("spindle", Turning, "spindle speed")],
            Source = "definition",
            Gives = WorkGives.Of(Dimension.OfSpeed, "feed speed"),
            Examples =
            [
                new("feed=0.1 mm/rev; spindle=200 rpm", "feed speed=0.02 m/min", "worked by hand"),
                new("feed=0.004 in/rev; spindle=150 rpm", "feed speed=0.05 ft/min", "worked by hand: 0.6 in/min"),
            ],
            Work = all =>
                Working.OneStep(
                    all,
                    CuttingSpeed.FeedSpeed(all.Amount("feed"), all.Amount("spindle")),
                    "feed speed",
                    "{feed} x {spindle}",
                    Units.MetrePerMinute,
                    Units.FootPerMinute
                ),
        },
        new()
        {
            Name = "ideal-roughness",
            Family = Family,
            Summary = "best peak-to-valley roughness a feed and nose radius can leave",
            Details = "A real surface is rougher. Peak to valley is no Ra: don't hold it against an Ra limit.",
            Parameters = [new("feed", Feed, "per turn"), new("nose", Length, "radius of the tool's nose")],
            Source = Circles,
            Gives = WorkGives.Of(Dimension.OfLength, "roughness"),
            Examples = [new("feed=0.1 mm/rev; nose=0.8 mm", "roughness=1.5625 \u00B5m", "f\u00B2 / (8 r) by hand")],
            Work = all =>
                Working.OneStep(
                    all,
                    CuttingSpeed.IdealRoughness(all.Amount("feed"), all.Amount("nose")),
                    "roughness",
                    "{feed}\u00B2 / (8 x {nose})",
                    Units.Micrometre,
                    Units.Microinch
                ),
        },
        new()
        {
            Name = "feed-for-roughness",
            Family = Family,
            Summary = "feed that leaves an ideal peak-to-valley roughness",
            Details = "An upper bound of the feed: a real surface is rougher.",
            Parameters =
            [
                new("roughness", new WorkTakes.Amount(Units.Micrometre), "peak to valley"),
                new("nose", Length, "radius of the tool's nose"),
            ],
            Source = Circles,
            Gives = WorkGives.Of(Dimension.OfFeed, "feed"),
            Examples = [new("roughness=1.5625 \u00B5m; nose=0.8 mm", "feed=0.1 mm/rev", "root(8 r R) by hand")],
            Work = all =>
                Working.OneStep(
                    all,
                    CuttingSpeed.FeedForRoughness(all.Amount("roughness"), all.Amount("nose")),
                    "feed",
                    "root(8 x {nose} x {roughness})",
                    Units.MillimetrePerTurn,
                    Units.InchPerTurn,
                    Rounding.Down
                ),
        },
    ];

    private static ShopResult<WorkAnswer> SpindleSpeed(WorkArguments all) =>
        CuttingSpeed
            .SpindleSpeed(all.Amount("speed"), all.Amount("diameter"))
            .Then(wanted =>
            {
                Working working = new(all);
                bool hasRange = all.Has("slowest") || all.Has("fastest");
                working.Step(
                    hasRange ? "wanted spindle" : "spindle",
                    "{speed} / (pi x {diameter})",
                    wanted,
                    Units.Rpm,
                    Units.Rpm,
                    isResult: !hasRange
                );
                return hasRange ? InRange(working, all, wanted) : working.Done();
            });

    private static ShopResult<WorkAnswer> InRange(Working working, WorkArguments all, Exact wanted)
    {
        if (!all.Has("slowest") || !all.Has("fastest"))
        {
            return new ShopFault(
                all.Has("slowest") ? "fastest" : "slowest",
                "nothing",
                "slowest and fastest go together"
            );
        }

        return CuttingSpeed
            .WithinRange(wanted, all.Amount("slowest"), all.Amount("fastest"))
            .Then(given =>
                CuttingSpeed
                    .SurfaceSpeed(given, all.Amount("diameter"))
                    .Then(left =>
                    {
                        working.Step(
                            "spindle",
                            "{wanted-spindle}, held to {slowest} to {fastest}",
                            given,
                            Units.Rpm,
                            Units.Rpm
                        );
                        working.Step(
                            "speed left",
                            "pi x {diameter} x {spindle}",
                            left,
                            Units.MetrePerMinute,
                            Units.FootPerMinute
                        );
                        return working.Done();
                    })
            );
    }
}
