using ProcRunner.Quantities;

namespace ProcRunner.ShopMath;

/// <summary>The table of heights after work, and of what is still left to cut.</summary>
internal static class HeightWork
{
    private const string Family = "heights";
    private const string Geometry = "plane geometry: a sink is along the valve's axis, a cut square to the deck";
    private const string Hand = "by hand";

    private static readonly WorkTakes Length = new WorkTakes.Amount(Units.Millimetre);
    private static readonly WorkParameter Sink = Optional("sink", "of the valve along its axis; without it 0");
    private static readonly WorkParameter DeckCut = Optional("deck-cut", "square to the deck; without it 0");
    private static readonly WorkParameter TipGround = Optional("tip-ground", "ground off the stem's tip; without it 0");

    private static readonly WorkParameter GuideAngle = new(
        "guide-angle",
        new WorkTakes.Amount(Units.Degree),
        "guide axis to the deck's normal; without it 0",
        IsOptional: true
    );

    public static IReadOnlyList<WorkFunction> Table { get; } =
    [
        new()
        {
            Name = "recession-after",
            Family = Family,
            Summary = "recession after the valve has sunk and the deck was cut",
            Details = "Below 0 the valve stands out of the deck.",
            Parameters = [Given("recession", "measured now"), Sink, DeckCut, GuideAngle],
            Source = Geometry,
            Gives = WorkGives.Of(Dimension.OfLength, "recession after"),
            Examples =
            [
                new("recession=0.60 mm; deck-cut=0.25 mm", "recession after=0.35 mm", Hand),
                new(
                    "recession=0.60 mm; sink=0.266044 mm; deck-cut=0.25 mm; guide-angle=20 deg",
                    "recession after=0.60000 mm",
                    "0.266044 x cos 20 deg = 0.25"
                ),
                new("recession=0.030 in; sink=0.008 in; deck-cut=0.006 in", "recession after=0.032 in", Hand),
            ],
            Work = all =>
                WithCosine(
                    all,
                    cosine =>
                        SeatWork
                            .Worked(all)
                            .And(
                                "recession after",
                                "{recession}"
                                    + Term(all, " + ", "sink")
                                    + (all.Has("sink") ? Cosine(all, " x ") : "")
                                    + Term(all, " - ", "deck-cut"),
                                Heights.Recession(
                                    all.Amount("recession"),
                                    Or0(all, "sink"),
                                    Or0(all, "deck-cut"),
                                    cosine
                                )
                            )
                            .Done()
                ),
        },
        new()
        {
            Name = "sink-for-recession",
            Family = Family,
            Summary = "how far to sink a valve for a wanted recession, a deck cut to come counted in",
            Details =
                "A deck cut afterwards takes recession away one for one. Below 0 the valve is too deep already. To keep a "
                + "recession through a skim, give the same value twice.",
            Parameters =
            [
                Given("wanted", "recession wanted in the end"),
                Given("now", "recession measured now"),
                Optional("deck-cut", "still to come, square to the deck; without it 0"),
                GuideAngle,
            ],
            Source = Geometry,
            Gives = WorkGives.Of(Dimension.OfLength, "sink"),
            Examples =
            [
                new("wanted=1.00 mm; now=0.62 mm; deck-cut=0.15 mm", "sink=0.53 mm", "1.00 - 0.62 + 0.15"),
                new(
                    "wanted=0.6 mm; now=0.6 mm; deck-cut=0.25 mm; guide-angle=20 deg",
                    "sink=0.266044 mm",
                    "0.25 / cos 20 deg"
                ),
                new("wanted=0.040 in; now=0.031 in", "sink=0.009 in", Hand),
            ],
            Work = all =>
                WithCosine(
                    all,
                    cosine =>
                        SeatWork
                            .Worked(all)
                            .And(
                                "sink",
                                Over(all, "{wanted} - {now}" + Term(all, " + ", "deck-cut")),
                                Heights.SinkFor(all.Amount("wanted"), all.Amount("now"), Or0(all, "deck-cut"), cosine)
                            )
                            .Done()
                ),
        },
        Simple(
            "stem-height-after",
            "stem height after the valve has sunk and its tip was ground",
            "From the spring seat to the valve's tip.",
            [Given("stem-height", "measured now"), Sink, TipGround],
            new(
                "stem-height=40.95 mm; sink=0.30 mm; tip-ground=0.20 mm",
                "stem height after=41.05 mm",
                "40.95 + 0.30 - 0.20"
            ),
            all => Heights.StemHeight(all.Amount("stem-height"), Or0(all, "sink"), Or0(all, "tip-ground")),
            " + sink - tip-ground"
        ),
        Simple(
            "installed-height-after",
            "installed height of a spring after the valve has sunk and shims were put under it",
            "From the spring's seat to the underside of its retainer. Shims restore a height, they don't cure a weak spring.",
            [Given("installed-height", "measured now"), Sink, Optional("shim", "put under the spring; without it 0")],
            new(
                "installed-height=1.700 in; sink=0.062 in; shim=0.060 in",
                "installed height after=1.702 in",
                "1.762 - 0.060"
            ),
            all => Heights.InstalledHeight(all.Amount("installed-height"), Or0(all, "sink"), Or0(all, "shim")),
            " + sink - shim"
        ),
        Simple(
            "lash-after",
            "lash after sink, grinding of the tip, or another shim, on a directly worked valve",
            "For a cam that works the valve directly, without a rocker's ratio.",
            [
                Given("lash", "measured now"),
                Sink,
                TipGround,
                Optional("shim-added", "thickness added between cam and tip; without it 0"),
            ],
            new("lash=0.25 mm; sink=0.15 mm; tip-ground=0.10 mm", "lash after=0.20 mm", "0.25 - 0.15 + 0.10"),
            all => Heights.Lash(all.Amount("lash"), Or0(all, "sink"), Or0(all, "tip-ground"), Or0(all, "shim-added")),
            " - sink + tip-ground - shim-added"
        ),
        Simple(
            "retainer-gap-after",
            "retainer-to-seal gap after the valve has sunk or shims went under the seal",
            "Valve closed; the lift comes off it. Shims above the seal don't count.",
            [Given("gap", "valve closed, now"), Sink, Optional("shim-under-seal", "put under the seal; without it 0")],
            new("gap=0.540 in; sink=0.010 in; shim-under-seal=0.030 in", "gap after=0.520 in", Hand),
            all => Heights.RetainerGap(all.Amount("gap"), Or0(all, "sink"), Or0(all, "shim-under-seal")),
            " + sink - shim-under-seal"
        ),
        Simple(
            "protrusion-after",
            "protrusion of a pre-chamber or injector after the deck was cut",
            "It is set again after the cut, unless it is machined with the deck.",
            [Given("protrusion", "measured now"), DeckCut],
            new("protrusion=0.02 mm; deck-cut=0.15 mm", "protrusion after=0.17 mm", Hand),
            all => Heights.Protrusion(all.Amount("protrusion"), Or0(all, "deck-cut")),
            " + deck-cut"
        ),
        .. HeightLimitWork.Table,
    ];

    public static WorkParameter Given(string name, string summary) => new(name, Length, summary);

    public static WorkParameter Optional(string name, string summary) => new(name, Length, summary, IsOptional: true);

    /// <summary>A fault where one of a reading and its limit was given without the other.</summary>
    public static ShopFault? NotTogether(WorkArguments all, string reading, string limit) =>
        all.Has(reading) == all.Has(limit)
            ? null
            : new ShopFault(all.Has(reading) ? limit : reading, "nothing", $"{reading} and {limit} are given together");

    /// <summary>A length that was given, or 0.</summary>
    public static Exact Or0(WorkArguments all, string name) =>
        all.Has(name) ? all.Amount(name) : new Exact(Rational.Zero, Dimension.OfLength);

    /// <summary>Works with the cosine of the guide's angle, 1 where none was given.</summary>
    public static ShopResult<WorkAnswer> WithCosine(WorkArguments all, Func<Rational, ShopResult<WorkAnswer>> work) =>
        Heights
            .GuideCosine(all.Has("guide-angle") ? all.Amount("guide-angle").In(Units.Degree) : Rational.Zero)
            .Then(work);

    /// <summary>A term of a formula, where its value was given.</summary>
    public static string Term(WorkArguments all, string sign, string name) => all.Has(name) ? $"{sign}{{{name}}}" : "";

    /// <summary>A difference over the cosine of the guide's angle, where one was given.</summary>
    public static string Over(WorkArguments all, string difference) =>
        all.Has("guide-angle") ? $"({difference}){Cosine(all, " / ")}" : difference;

    private static string Cosine(WorkArguments all, string sign) =>
        all.Has("guide-angle") ? sign + "cos({guide-angle})" : "";

    // "X-after" from X and the terms given, in "sign name" pairs.
    private static WorkFunction Simple(
        string name,
        string summary,
        string details,
        WorkParameter[] parameters,
        WorkExample example,
        Func<WorkArguments, Exact> work,
        string terms
    )
    {
        string gives = parameters[0].Words + " after";
        string[] words = terms.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        return new WorkFunction
        {
            Name = name,
            Family = Family,
            Summary = summary,
            Details = details,
            Parameters = parameters,
            Source = Geometry,
            Gives = WorkGives.Of(Dimension.OfLength, gives),
            Examples = [example],
            Work = all =>
                SeatWork
                    .Worked(all)
                    .And(
                        gives,
                        $"{{{parameters[0].Name}}}"
                            + string.Concat(words.Chunk(2).Select(pair => Term(all, $" {pair[0]} ", pair[1]))),
                        work(all)
                    )
                    .Done(),
        };
    }
}
