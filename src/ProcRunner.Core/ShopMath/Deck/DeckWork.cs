using ProcRunner.Quantities;
using static ProcRunner.ShopMath.HeightWork;

namespace ProcRunner.ShopMath;

/// <summary>The table of what a deck needs and may lose.</summary>
internal static class DeckWork
{
    private const string Family = "deck";
    private const string Hand = "by hand";
    private static readonly WorkTakes Lengths = new WorkTakes.Amounts(Units.Millimetre, 1);

    public static IReadOnlyList<WorkFunction> Table { get; } =
    [
        .. FlatnessWork.Table,
        new()
        {
            Name = "deck-wedge",
            Family = Family,
            Summary = "how far a deck is out of parallel: thickest less thinnest",
            Details =
                "Of thicknesses at the corners and the middle. With the length between the ends its slope is given too. A "
                + "cut that leaves a wedge is refused, correcting an old one is allowed.",
            Parameters =
            [
                new("thickness", new WorkTakes.Amounts(Units.Millimetre, 2), "at each place"),
                Optional("length", "over which the wedge lies; without it no slope"),
                Optional("limit", "most allowed; without it no verdict"),
            ],
            Source = "definition; the limit is inclusive",
            Gives =
            [
                .. WorkGives.Of(Dimension.OfLength, "wedge"),
                .. WorkGives.Of(Dimension.None, "slope"),
                .. WorkGives.Words("verdict"),
            ],
            Examples =
            [
                new(
                    "thickness=127.00 127.05 126.98 127.02 mm; length=400 mm; limit=0.05 mm",
                    "wedge=0.07 mm; slope=0.0175 %; verdict=over the limit",
                    "127.05 - 126.98"
                ),
                new("thickness=4.750 4.752 4.749 4.751 in; limit=0.003 in", "wedge=0.003 in; verdict=in limits", Hand),
            ],
            Work = Wedge,
        },
        new()
        {
            Name = "deck-cut-needed",
            Family = Family,
            Summary = "the cut that leaves no old surface",
            Details =
                "Readings are heights over the plane the head is set up to: they hold its tilt, so set it up well first. A pit or "
                + "groove deeper than their range decides.",
            Parameters =
            [
                new("readings", Lengths, "heights over the set-up plane"),
                new("pits", Lengths, "depths of pits and grooves; without it none", IsOptional: true),
            ],
            Source = "range over the set-up plane, or the deepest pit if that is deeper",
            Gives = WorkGives.Of(Dimension.OfLength, "cut needed"),
            Examples =
            [
                new("readings=0 0.012 0.031 0.006 mm", "cut needed=0.031 mm", "0.031 - 0"),
                new("readings=0 0.0005 0.0012 in; pits=0.002 0.004 in", "cut needed=0.004 in", "the pit is deeper"),
            ],
            Work = all =>
                DeckStock
                    .CutNeeded(all.Amounts("readings"), all.Amounts("pits"))
                    .Then(cut =>
                        SeatWork
                            .Worked(all)
                            .Need(
                                "cut needed",
                                "largest of (highest less lowest of {readings})" + Term(all, " and ", "pits"),
                                cut
                            )
                            .Done()
                    ),
        },
        new()
        {
            Name = "deck-cut-allowed",
            Family = Family,
            Summary = "the cut a deck may still lose, which limit binds, and the thickness left",
            Details =
                "Give the limits that are known. The budget of head and block loses what either has lost before; an unknown "
                + "block counts as cut. With a cut it says whether it may be made. Don't surface is an answer.",
            Parameters =
            [
                Optional("thickness", "least measured; goes with minimum"),
                Optional("minimum", "least thickness allowed"),
                Optional("budget", "what head and block may lose together"),
                Optional("block-lost", "lost by the block; without it 0"),
                Optional("head-lost", "lost by the head before; without it 0"),
                Optional("own-limit", "the maker's limit of what this cut may take"),
                Optional("recession", "of the shallowest valve; goes with recession-low"),
                Optional("recession-low", "least recession allowed after the cut"),
                Optional(
                    "protrusion",
                    "of the pre-chamber or injector that stands out furthest; goes with protrusion-high"
                ),
                Optional("protrusion-high", "most protrusion allowed after the cut"),
                Optional("cut", "the cut meant; without it no verdict"),
            ],
            Source = "several limits, the smallest wins; limits are inclusive",
            Gives =
            [
                .. WorkGives.Of(Dimension.OfLength, "cut allowed"),
                .. WorkGives.Words("binds"),
                .. WorkGives.Of(Dimension.OfLength, "thickness left"),
                .. WorkGives.Words("verdict"),
            ],
            Examples =
            [
                new(
                    "thickness=127.00 mm; minimum=126.80 mm; budget=0.5 mm",
                    "cut allowed=0.20 mm; binds=thickness",
                    "127.00 - 126.80"
                ),
                new(
                    "thickness=127.15 mm; minimum=126.80 mm; budget=0.5 mm; block-lost=0.25 mm; own-limit=0.3 mm",
                    "cut allowed=0.25 mm; binds=budget of head and block",
                    "0.5 - 0.25 is less than 0.35 and 0.3"
                ),
                new(
                    "thickness=98.95 mm; minimum=98.89 mm; cut=0.05 mm",
                    "cut allowed=0.06 mm; thickness left=98.90 mm; verdict=allowed",
                    "98.90 is not below 98.89, the least thickness of an industrial diesel head in its published critical factors"
                ),
                new(
                    "thickness=98.95 mm; minimum=98.89 mm; cut=0.07 mm",
                    "thickness left=98.88 mm; verdict=not allowed",
                    "98.88 is below 98.89, as above"
                ),
                new(
                    "thickness=4.745 in; minimum=4.715 in; cut=0.030 in",
                    "cut allowed=0.030 in; verdict=allowed",
                    "TM 9-6115-604-34, Table 1-4: new 4.745 to 4.755 in, wear limit 4.715 in; exactly on the limit passes"
                ),
                new(
                    "thickness=98.95 mm; minimum=98.80 mm; recession=0.70 mm; recession-low=0.60 mm; protrusion=0.02 mm; "
                        + "protrusion-high=0.10 mm; cut=0.09 mm",
                    "cut allowed=0.08 mm; binds=protrusion; verdict=not allowed",
                    "0.15, 0.10 and 0.08 by hand"
                ),
            ],
            Work = Stock,
        },
        .. TextureWork.Table,
    ];

    private static ShopResult<WorkAnswer> Wedge(WorkArguments all) =>
        DeckStock
            .Wedge(all.Amounts("thickness"))
            .Then(wedge =>
            {
                LengthWorking working = SeatWork
                    .Worked(all)
                    .And("wedge", "thickest less thinnest of {thickness}", wedge);
                if (all.Has("length"))
                {
                    if (Allowed.Above0("length", all.Amount("length")) is { } fault)
                    {
                        return fault;
                    }

                    working.In(
                        Units.Percent,
                        "slope",
                        "{wedge} / {length}",
                        (wedge / all.Amount("length")).In(Units.Percent).ToDouble()
                    );
                }

                return all.Has("limit")
                    ? working
                        .Say(
                            "verdict",
                            "{wedge} against {limit}",
                            wedge.CompareTo(all.Amount("limit")) <= 0 ? "in limits" : "over the limit"
                        )
                        .Done()
                    : working.Done();
            });

    private static ShopResult<WorkAnswer> Stock(WorkArguments all) =>
        (
            Allowed.NotBelow0("block lost", Or0(all, "block-lost"))
            ?? Allowed.NotBelow0("head lost", Or0(all, "head-lost"))
            ?? NotTogether(all, "thickness", "minimum")
            ?? NotTogether(all, "recession", "recession-low")
            ?? NotTogether(all, "protrusion", "protrusion-high")
        )
            is { } fault
            ? fault
            : DeckStock
                .Of(
                    Less(all, "thickness", "minimum"),
                    all.Has("budget") ? all.Amount("budget") - Or0(all, "block-lost") - Or0(all, "head-lost") : null,
                    all.Has("own-limit") ? all.Amount("own-limit") : null,
                    Less(all, "recession", "recession-low"),
                    Less(all, "protrusion-high", "protrusion")
                )
                .Then(stock => Stock(all, stock));

    private static ShopResult<WorkAnswer> Stock(WorkArguments all, DeckStock stock)
    {
        LengthWorking working = SeatWork.Worked(all);
        foreach (DeckLimit limit in stock.Limits)
        {
            working.Room($"left by {limit.Name}", FormulaOf(all, limit), limit.Cut, isResult: false);
        }

        working
            .Room("cut allowed", "least of what the limits leave", stock.Allowed)
            .Say("binds", "the limit that leaves least", stock.Binding.Name);
        if (all.Has("cut") && all.Has("thickness"))
        {
            working.Room("thickness left", "{thickness} - {cut}", all.Amount("thickness") - all.Amount("cut"));
        }

        return all.Has("cut")
            ? working
                .Say(
                    "verdict",
                    "{cut} against {cut-allowed}",
                    all.Amount("cut").CompareTo(stock.Allowed) <= 0 ? "allowed" : "not allowed"
                )
                .Done()
            : working.Done();
    }

    private static string FormulaOf(WorkArguments all, DeckLimit limit) =>
        limit.Name switch
        {
            DeckStock.Thickness => "{thickness} - {minimum}",
            DeckStock.OwnLimit => "{own-limit}",
            DeckStock.Recession => "{recession} - {recession-low}",
            DeckStock.Protrusion => "{protrusion-high} - {protrusion}",
            _ => "{budget}" + Term(all, " - ", "block-lost") + Term(all, " - ", "head-lost"),
        };

    private static Exact? Less(WorkArguments all, string from, string what) =>
        all.Has(from) ? all.Amount(from) - all.Amount(what) : null;
}
