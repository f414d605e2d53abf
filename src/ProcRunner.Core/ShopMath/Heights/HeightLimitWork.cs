using ProcRunner.Quantities;
using static ProcRunner.ShopMath.HeightWork;

namespace ProcRunner.ShopMath;

/// <summary>The table of what limits leave of a valve's sink, margin and lash.</summary>
internal static class HeightLimitWork
{
    private const string Family = "heights";

    private static readonly WorkParameter GuideAngle = new(
        "guide-angle",
        new WorkTakes.Amount(Units.Degree),
        "guide axis to the deck's normal; without it 0",
        IsOptional: true
    );

    // Reading, limit, and whether it is a high one. Margin is lost by refacing alone.
    private static readonly (string Reading, string Limit, bool IsHigh)[] Pairs =
    [
        ("recession", "recession-high", true),
        ("stem-height", "stem-height-high", true),
        ("installed-height", "installed-height-high", true),
        ("lash", "lash-low", false),
    ];

    private static readonly (string Reading, string Limit, bool IsHigh)[] PairsOfFace =
    [
        ("margin", "margin-low", false),
        .. Pairs,
    ];

    public static IReadOnlyList<WorkFunction> Table { get; } =
    [
        new()
        {
            Name = "margin-after",
            Family = Family,
            Summary = "margin of a valve after its face was refaced",
            Details = "Metal is taken square off the face; the margin loses more than that. The limit is the maker's.",
            Parameters =
            [
                Given("margin", "measured now"),
                Given("removed", "square to the face"),
                new("face-angle", new WorkTakes.Amount(Units.Degree), "angle of the valve's face"),
            ],
            Source = "plane geometry of a cone",
            Gives = WorkGives.Of(Dimension.OfLength, "margin lost", "margin after"),
            Examples =
            [
                new(
                    "margin=1.50 mm; removed=0.10 mm; face-angle=45 deg",
                    "margin lost=0.14142135624 mm; margin after=1.358578644 mm",
                    "1.4142135624 x 0.10"
                ),
                new(
                    "margin=0.060 in; removed=0.005 in; face-angle=60 deg",
                    "margin after=0.050 in",
                    "0.005 / cos 60 deg"
                ),
            ],
            Work = all =>
                SeatGeometry
                    .Sink(SeatWork.Mm(all, "removed"), SeatWork.Deg(all, "face-angle"))
                    .Then(lost =>
                        SeatWork
                            .Worked(all)
                            .And("margin lost", "{removed} / cos({face-angle})", lost)
                            .And("margin after", "{margin} - {margin-lost}", SeatWork.Mm(all, "margin") - lost)
                            .Done()
                    ),
        },
        new()
        {
            Name = "sink-window",
            Family = Family,
            Summary = "how far a valve must and may sink so that its recession is in limits after a deck cut",
            Details =
                "Low and high hold after the cut. Where the maker lowers the high limit by the skim, give the lowered one.",
            Parameters =
            [
                Given("recession", "before the cut"),
                Given("deck-cut", "square to the deck"),
                Given("low", "least recession allowed after the cut"),
                Given("high", "most recession allowed after the cut"),
                GuideAngle,
            ],
            Source = "plane geometry; limits are inclusive",
            Gives =
            [
                .. WorkGives.Of(Dimension.OfLength, "recession after cut", "least sink", "most sink"),
                .. WorkGives.Words("verdict"),
            ],
            Examples =
            [
                new(
                    "recession=0.60 mm; deck-cut=0.25 mm; low=0.45 mm; high=0.90 mm",
                    "recession after cut=0.35 mm; least sink=0.10 mm; most sink=0.55 mm; verdict=sink it",
                    "0.60 - 0.25 = 0.35, under 0.45 by 0.10 and under 0.90 by 0.55"
                ),
                new(
                    "recession=0.050 in; deck-cut=0.005 in; low=0.035 in; high=0.051 in",
                    "least sink=0 in; most sink=0.006 in; verdict=in limits as it is",
                    "0.045 lies between"
                ),
            ],
            Work = all =>
                WithCosine(
                    all,
                    cosine =>
                        SinkWindow
                            .Of(
                                all.Amount("recession"),
                                all.Amount("deck-cut"),
                                all.Amount("low"),
                                all.Amount("high"),
                                cosine
                            )
                            .Then(window => Window(all, window))
                ),
        },
        new()
        {
            Name = "sink-left",
            Family = Family,
            Summary = "how far a valve may still sink, and which limit binds",
            Details =
                "Give the readings whose limits are known, each with its limit. The one that leaves least binds; below 0 it is "
                + "passed already.",
            Parameters =
            [
                .. Pairs.SelectMany(pair =>
                    new[]
                    {
                        Optional(pair.Reading, "measured now"),
                        Optional(pair.Limit, pair.IsHigh ? "most allowed" : "least allowed"),
                    }
                ),
                GuideAngle,
            ],
            Source = "several limits, the smallest wins",
            Gives = [.. WorkGives.Of(Dimension.OfLength, "sink left"), .. WorkGives.Words("binds")],
            Examples =
            [
                new(
                    "recession=0.70 mm; recession-high=1.20 mm; stem-height=40.95 mm; stem-height-high=41.45 mm; lash=0.35 mm; lash-low=0.05 mm",
                    "sink left=0.30 mm; binds=lash",
                    "0.50, 0.50 and 0.30 by hand"
                ),
                new(
                    "recession=0.030 in; recession-high=0.044 in; installed-height=1.75 in; installed-height-high=1.78 in",
                    "sink left=0.014 in; binds=recession",
                    "0.014 and 0.030 by hand"
                ),
            ],
            Work = SinkLeft,
        },
        new()
        {
            Name = "reface-left",
            Family = Family,
            Summary = "how much may still be taken off a valve's face, and which limit binds",
            Details =
                "Metal square to the face. The margin loses it over the cosine of the face's angle and the valve sinks by as "
                + "much; give the readings whose limits are known, each with its limit. Below 0 a limit is passed already.",
            Parameters =
            [
                new("face-angle", new WorkTakes.Amount(Units.Degree), "angle of the valve's face"),
                .. PairsOfFace.SelectMany(pair =>
                    new[]
                    {
                        Optional(pair.Reading, "measured now"),
                        Optional(pair.Limit, pair.IsHigh ? "most allowed" : "least allowed"),
                    }
                ),
                GuideAngle,
            ],
            Source = "plane geometry of a cone; several limits, the smallest wins",
            Gives = [.. WorkGives.Of(Dimension.OfLength, "sink left", "reface left"), .. WorkGives.Words("binds")],
            Examples =
            [
                new(
                    "face-angle=45 deg; margin=1.50 mm; margin-low=1.00 mm; recession=0.70 mm; recession-high=0.90 mm",
                    "sink left=0.20 mm; reface left=0.141421356 mm; binds=recession",
                    "0.50 and 0.20 by hand; 0.20 x cos 45 deg"
                ),
                new(
                    "face-angle=60 deg; margin=0.060 in; margin-low=0.050 in; recession=0.030 in; recession-high=0.044 in",
                    "reface left=0.005 in; binds=margin",
                    "0.010 and 0.014 by hand; 0.010 x cos 60 deg"
                ),
            ],
            Work = RefaceLeft,
        },
        new()
        {
            Name = "lash-shim",
            Family = Family,
            Summary = "shim for a wanted lash that was felt with leaves",
            Details =
                "A lash felt with leaves lies between the leaf that slides and the one that refuses. Any shim from the thinnest "
                + "to the thickest is right for all of it. For a lash measured exactly give the same value twice.",
            Parameters =
            [
                Given("fitted", "shim in place, measured"),
                Given("slides", "thickest leaf that slides in"),
                Given("refuses", "thinnest leaf that does not"),
                Given("wanted-least", "least lash allowed"),
                Given("wanted-most", "most lash allowed"),
            ],
            Source = "new shim = old shim + lash measured - lash wanted, at both ends of the interval",
            Gives = [.. WorkGives.Of(Dimension.OfLength, "thinnest", "thickest"), .. WorkGives.Words("verdict")],
            Examples =
            [
                new(
                    "fitted=2.50 mm; slides=0.15 mm; refuses=0.20 mm; wanted-least=0.20 mm; wanted-most=0.30 mm",
                    "thinnest=2.40 mm; thickest=2.45 mm; verdict=fit one from the thinnest to the thickest",
                    "2.50 + 0.20 - 0.30 and 2.50 + 0.15 - 0.20"
                ),
                new(
                    "fitted=0.100 in; slides=0.006 in; refuses=0.010 in; wanted-least=0.008 in; wanted-most=0.010 in",
                    "verdict=fit a thinner trial shim and measure again: the leaves are too coarse for this lash",
                    "0.100 + 0.010 - 0.010 = 0.100 is above 0.100 + 0.006 - 0.008 = 0.098"
                ),
            ],
            Work = all =>
                LashShim
                    .Of(
                        all.Amount("fitted"),
                        all.Amount("slides"),
                        all.Amount("refuses"),
                        all.Amount("wanted-least"),
                        all.Amount("wanted-most")
                    )
                    .Then(shim =>
                        SeatWork
                            .Worked(all)
                            .Need("thinnest", "{fitted} + {refuses} - {wanted-most}", shim.Thinnest)
                            .Room("thickest", "{fitted} + {slides} - {wanted-least}", shim.Thickest)
                            .Say(
                                "verdict",
                                "{thinnest} against {thickest}",
                                shim.IsDecided
                                    ? "fit one from the thinnest to the thickest"
                                    : "fit a thinner trial shim and measure again: the leaves are too coarse for this lash"
                            )
                            .Done()
                    ),
        },
    ];

    private static ShopResult<WorkAnswer> Window(WorkArguments all, SinkWindow window) =>
        SeatWork
            .Worked(all)
            .And("recession after cut", "{recession} - {deck-cut}", window.RecessionAfterCut)
            .Need("least sink", Over(all, "{low} - {recession-after-cut}") + ", not below 0", window.Least)
            .Room("most sink", Over(all, "{high} - {recession-after-cut}"), window.Most)
            .Say(
                "verdict",
                "{recession-after-cut} between {low} and {high}",
                window.HoldsNow ? "in limits as it is"
                    : window.Most.Value.Sign < 0 ? "too deep: no sink helps"
                    : "sink it"
            )
            .Done();

    private static ShopResult<WorkAnswer> SinkLeft(WorkArguments all) =>
        Left(all, Pairs, (working, _) => working.Done());

    private static ShopResult<WorkAnswer> RefaceLeft(WorkArguments all) =>
        Left(
            all,
            PairsOfFace,
            (working, left) =>
                SeatGeometry
                    .RemovedForSink(left.Left.In(Units.Millimetre).ToDouble(), SeatWork.Deg(all, "face-angle"))
                    .Then(removed => working.Room("reface left", "{sink-left} x cos({face-angle})", removed).Done())
        );

    private static ShopResult<WorkAnswer> Left(
        WorkArguments all,
        (string Reading, string Limit, bool IsHigh)[] pairs,
        Func<LengthWorking, SinkLimit, ShopResult<WorkAnswer>> then
    ) =>
        WithCosine(
            all,
            cosine =>
            {
                List<SinkLimit> limits = [];
                LengthWorking working = SeatWork.Worked(all);
                foreach ((string reading, string limit, bool isHigh) in pairs)
                {
                    if (NotTogether(all, reading, limit) is { } fault)
                    {
                        return fault;
                    }

                    if (all.Has(reading))
                    {
                        (string high, string low) = isHigh ? (limit, reading) : (reading, limit);
                        Exact room = all.Amount(high) - all.Amount(low);
                        bool leans = reading == "recession";
                        string formula = $"{{{high}}} - {{{low}}}";
                        string words = reading.Replace('-', ' ');
                        limits.Add(new SinkLimit(words, leans ? Heights.Scaled(room, Rational.One / cosine) : room));
                        working.Room($"left by {words}", leans ? Over(all, formula) : formula, limits[^1].Left, false);
                    }
                }

                return SinkLimit.Binding(limits) is { } least
                    ? then(
                        working
                            .Room("sink left", "least of what the limits leave", least.Left)
                            .Say("binds", "the limit that leaves least", least.Name),
                        least
                    )
                    : new ShopFault(pairs[0].Reading, "nothing", "give at least one reading with its limit");
            }
        );
}
