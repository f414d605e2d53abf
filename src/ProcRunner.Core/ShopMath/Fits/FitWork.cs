using ProcRunner.Quantities;

namespace ProcRunner.ShopMath;

/// <summary>The table of fits from sizes.</summary>
internal static class FitWork
{
    public const string Family = "fits";
    private static readonly WorkTakes Length = new WorkTakes.Amount(Units.Inch);

    public static IReadOnlyList<WorkFunction> Table { get; } =
    [
        new()
        {
            Name = "fit-from-limits",
            Family = Family,
            Summary = "loosest and tightest fit of two parts from their limits",
            Details =
                "Interference is on the diameter; below zero it is clearance. A press fit whose least is not above zero can be loose.",
            Parameters =
            [
                new("hole-smallest", Length, "smallest size of the hole"),
                new("hole-largest", Length, "largest size of the hole"),
                new("part-smallest", Length, "smallest size of what goes in"),
                new("part-largest", Length, "largest size of what goes in"),
            ],
            Source = "ISO 286-1:2010, interference, transition and clearance fits",
            Gives =
            [
                .. WorkGives.Of(Dimension.OfLength, "least interference", "most interference"),
                .. WorkGives.Words("kind"),
            ],
            Examples =
            [
                new(
                    "hole-smallest=1.6415 in; hole-largest=1.6425 in; part-smallest=1.6445 in; part-largest=1.6455 in",
                    "least interference=0.0020 in; most interference=0.0040 in; kind=interference",
                    "TM 5-6115-400-35, Table 2.1, intake insert"
                ),
                new(
                    "hole-smallest=60 mm; hole-largest=60.019 mm; part-smallest=60.011 mm; part-largest=60.030 mm",
                    "least interference=-0.008 mm; most interference=0.030 mm; kind=transition",
                    "shaft 60 +0.030/+0.011 in hub 60 +0.019/0, worked by hand"
                ),
            ],
            Work = OfLimits,
        },
        new()
        {
            Name = "target-bore",
            Family = Family,
            Summary = "bore to cut for a measured part and a wanted interference",
            Details =
                "Measure the part itself; a nominal size is not good enough for an interference of a few thousandths.",
            Parameters =
            [
                new("part", Length, "measured diameter of what goes in"),
                new("interference", Length, "wanted, on the diameter"),
            ],
            Source = "definition of interference, ISO 286-1:2010",
            Gives = WorkGives.Of(Dimension.OfLength, "bore"),
            Examples =
            [
                new(
                    "part=1.6445 in; interference=0.0020 in",
                    "bore=1.6425 in",
                    "TM 5-6115-400-35, Table 2.1: smallest intake insert in the largest bore, printed 0.0020"
                ),
                new("part=38.05 mm; interference=0.10 mm", "bore=37.95 mm", "worked by hand"),
            ],
            Work = all =>
                Fit.TargetBore(all.Amount("part"), all.Amount("interference"))
                    .Then(bore =>
                    {
                        Working working = new(all);
                        working.Step("bore", "{part} - {interference}", bore, Units.Millimetre, Units.Inch);
                        return working.Done();
                    }),
        },
        new()
        {
            Name = "next-oversize",
            Family = Family,
            Summary = "smallest part on offer that a worn or overcut bore can be cut for",
            Details =
                "With nothing on offer that fits, the answer is a part made to measure; locking compound or staking is no substitute.",
            Parameters =
            [
                new("bore", Length, "bore as it cleans up"),
                new("interference", Length, "wanted, on the diameter"),
                new("standard", Length, "diameter of the standard part"),
                new(
                    "oversizes",
                    new WorkTakes.Amounts(Units.Inch, 1),
                    "how much larger the others are, on the diameter"
                ),
            ],
            Source = "target bore = part - interference for each part, the smallest that is not below the bore",
            Gives = WorkGives.Of(Dimension.OfLength, "part", "bore to cut", "cut"),
            Examples =
            [
                new(
                    "bore=1.6430 in; interference=0.0030 in; standard=1.6450 in; oversizes=0.005 0.010 in",
                    "part=1.6500 in; bore to cut=1.6470 in; cut=0.0040 in",
                    "TM 5-6115-400-35, Table 2.1: middle of the 0.005 oversize intake insert and of its bore"
                ),
            ],
            StemsFrom = [new("part", "standard and oversizes")],
            Work = NextOversize,
        },
    ];

    private static ShopResult<WorkAnswer> OfLimits(WorkArguments all) =>
        Fit.OfLimits(
                all.Amount("hole-smallest"),
                all.Amount("hole-largest"),
                all.Amount("part-smallest"),
                all.Amount("part-largest")
            )
            .Then(range =>
            {
                Working working = new(all);
                Steps(working, range);
                return working.Done();
            });

    /// <summary>The steps of a range, from limits of the names that <c>fit-from-limits</c> has.</summary>
    public static void Steps(Working working, FitRange range)
    {
        working.Step(
            "least interference",
            "{part-smallest} - {hole-largest}",
            range.Least,
            Units.Millimetre,
            Units.Inch,
            rounding: Rounding.Down
        );
        working.Step(
            "most interference",
            "{part-largest} - {hole-smallest}",
            range.Most,
            Units.Millimetre,
            Units.Inch,
            rounding: Rounding.Up
        );
        working.Say("kind", "from {least-interference} to {most-interference}", Words(range.Kind));
    }

    private static ShopResult<WorkAnswer> NextOversize(WorkArguments all)
    {
        Exact standard = all.Amount("standard");
        List<Exact> parts = [standard, .. all.Amounts("oversizes").Select(more => standard + more)];
        return Fit.NextOversize(all.Amount("bore"), all.Amount("interference"), parts)
            .Then(found =>
            {
                Working working = new(all);
                if (found is null)
                {
                    working.Say("part", "the smallest with part - {interference} >= {bore}", "none: made to measure");
                    return working.Done();
                }

                working.Step(
                    "part",
                    "the smallest of {standard} and {oversizes} more with part - {interference} >= {bore}",
                    found.Part,
                    Units.Millimetre,
                    Units.Inch
                );
                working.Step("bore to cut", "{part} - {interference}", found.TargetBore, Units.Millimetre, Units.Inch);
                working.Step("cut", "{bore-to-cut} - {bore}", found.Cut, Units.Millimetre, Units.Inch);
                return working.Done();
            });
    }

    private static string Words(FitKind kind) =>
        kind switch
        {
            FitKind.Clearance => "clearance",
            FitKind.Transition => "transition",
            _ => "interference",
        };
}
