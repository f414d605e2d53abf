using ProcRunner.Quantities;

namespace ProcRunner.ShopMath;

/// <summary>The table of fits by standards.</summary>
internal static class StandardFitWork
{
    private const string Iso = "ISO 286-1:2010, Tables 1 and 5";
    private static readonly WorkTakes Length = new WorkTakes.Amount(Units.Millimetre);

    private static readonly WorkTakes Grades = new WorkTakes.Word([
        "IT4",
        "IT5",
        "IT6",
        "IT7",
        "IT8",
        "IT9",
        "IT10",
        "IT11",
    ]);

    public static IReadOnlyList<WorkFunction> Table { get; } =
    [
        new()
        {
            Name = "iso-tolerance",
            Family = FitWork.Family,
            Summary = "standard tolerance of a grade at a size",
            Details = "Steps are over one size up to and including the next: 30 mm belongs to 18 to 30.",
            Parameters =
            [
                new("nominal", Length, "nominal size, up to 180 mm"),
                new("grade", Grades, "tolerance grade"),
            ],
            Source = "ISO 286-1:2010, Table 1",
            Gives = WorkGives.Of(Dimension.OfLength, "tolerance"),
            Examples =
            [
                new("nominal=40 mm; grade=IT7", "tolerance=25 \u00B5m", "ISO 286-1:2010, Table 1, 30 to 50 mm"),
                new("nominal=30 mm; grade=IT6", "tolerance=13 \u00B5m", "ISO 286-1:2010, Table 1, 18 to 30 mm"),
            ],
            Work = Tolerance,
        },
        new()
        {
            Name = "iso-limits",
            Family = FitWork.Family,
            Summary = "limits of a hole or shaft class at a size",
            Details = "Holes H, shafts h, k, n, p, r and s, grades 4 to 11, up to 120 mm.",
            Parameters =
            [
                new("nominal", Length, "nominal size, up to 120 mm"),
                new("class", new WorkTakes.Word([.. IsoDeviation.Holes, .. IsoDeviation.Shafts]), "tolerance class"),
            ],
            Source = Iso,
            Gives = WorkGives.Of(Dimension.OfLength, "lower deviation", "upper deviation", "smallest", "largest"),
            Examples =
            [
                new(
                    "nominal=25 mm; class=p6",
                    "lower deviation=22 \u00B5m; upper deviation=35 \u00B5m; smallest=25.022 mm; largest=25.035 mm",
                    "25 p6 as printed in public tables after ISO 286-2"
                ),
            ],
            Work = all =>
                IsoDeviation
                    .Limits(all.Amount("nominal"), all.Word("class"))
                    .Then(limits =>
                    {
                        Working working = new(all);
                        Limits(working, "", "{class}", limits, isResult: true);
                        return working.Done();
                    }),
        },
        new()
        {
            Name = "iso-fit",
            Family = FitWork.Family,
            Summary = "range of a fit such as H7/p6",
            Details = "Basic hole. Below zero is clearance. The job's fit comes from measured sizes, not from this.",
            Parameters =
            [
                new("nominal", Length, "nominal size, up to 120 mm"),
                new("hole", new WorkTakes.Word(IsoDeviation.Holes), "class of the hole"),
                new("shaft", new WorkTakes.Word(IsoDeviation.Shafts), "class of what goes in"),
            ],
            Source = Iso,
            Gives =
            [
                .. WorkGives.Of(Dimension.OfLength, "least interference", "most interference"),
                .. WorkGives.Words("kind"),
            ],
            Examples =
            [
                new(
                    "nominal=40 mm; hole=H7; shaft=r6",
                    "least interference=0.009 mm; most interference=0.050 mm; kind=interference",
                    "a printed exam question: 40 H7/r6, IT7 = 25, IT6 = 16, ei = 34: least 9, most 50 micrometre"
                ),
                new(
                    "nominal=25 mm; hole=H7; shaft=r6",
                    "least interference=0.007 mm; most interference=0.041 mm",
                    "Jindal, Machine Design, ch. 4: hole +21/0, shaft +41/+28"
                ),
            ],
            Work = IsoFit,
        },
        new()
        {
            Name = "ansi-fit",
            Family = FitWork.Family,
            Summary = "inch force or locational fit of a class at a size",
            Details =
                "FN1 suits thin sections or cast-iron outer parts; FN2 is about the tightest for high-grade cast-iron outer parts. "
                + "Only the printed sizes: 0.40 to 2.56 in, FN3 from 0.95, LN2 and LN3 from 1.19 to 1.97.",
            Parameters =
            [
                new("nominal", new WorkTakes.Amount(Units.Inch), "nominal size"),
                new("class", new WorkTakes.Word(AnsiFit.Classes), "class of fit"),
            ],
            Source =
                "ANSI B4.1, as printed in Machinery's Handbook, 27th edition p. 663 and 31st edition pp. 658 to 660",
            Gives =
            [
                .. WorkGives.Of(Dimension.OfLength, "least interference", "most interference"),
                .. WorkGives.Words("kind"),
            ],
            Examples =
            [
                new(
                    "nominal=1.5 in; class=FN2",
                    "least interference=0.0008 in; most interference=0.0024 in",
                    "Machinery's Handbook, 27th edition, p. 663, Table 11, 1.19 to 1.58 in"
                ),
                new(
                    "nominal=38 mm; class=FN4",
                    "least interference=1.5 thou; most interference=3.1 thou",
                    "the same table; 38 mm is 1.496 in"
                ),
            ],
            Work = Ansi,
        },
    ];

    private static ShopResult<WorkAnswer> Tolerance(WorkArguments all)
    {
        int grade = IsoTolerance.FinestGrade + ((WorkTakes.Word)Grades).Choices.ToList().IndexOf(all.Word("grade"));
        return IsoTolerance
            .Micrometres(all.Amount("nominal"), grade)
            .Then(width =>
            {
                Working working = new(all);
                working.Step(
                    "tolerance",
                    "{grade} of ISO 286-1, Table 1, at {nominal}",
                    Exact.Of(new Quantity(width, Units.Micrometre)),
                    Units.Micrometre,
                    Units.Inch
                );
                return working.Done();
            });
    }

    private static ShopResult<WorkAnswer> IsoFit(WorkArguments all) =>
        IsoDeviation
            .Limits(all.Amount("nominal"), all.Word("hole"))
            .Then(hole =>
                IsoDeviation
                    .Limits(all.Amount("nominal"), all.Word("shaft"))
                    .Then(shaft =>
                        shaft.Smallest.Value.Sign <= 0
                            ? new ShopFault("nominal", all.Texts["nominal"], "no shaft of that class is left of it")
                            : Fit.OfLimits(hole.Smallest, hole.Largest, shaft.Smallest, shaft.Largest)
                                .Then(range =>
                                {
                                    Working working = new(all);
                                    Limits(working, "hole ", "{hole}", hole, isResult: false);
                                    Limits(working, "part ", "{shaft}", shaft, isResult: false);
                                    FitWork.Steps(working, range);
                                    return working.Done();
                                })
                    )
            );

    private static ShopResult<WorkAnswer> Ansi(WorkArguments all) =>
        AnsiFit
            .Find(all.Amount("nominal"), all.Word("class"))
            .Then(fit =>
            {
                Working working = new(all);
                Limits(working, "hole ", "{class}", fit.Hole, isResult: false);
                Limits(working, "part ", "{class}", fit.Shaft, isResult: false);
                FitWork.Steps(working, fit.Range);
                return working.Done();
            });

    private static void Limits(Working working, string part, string @class, SizeLimits limits, bool isResult)
    {
        string dash = part.Replace(' ', '-');
        Unit inch = Units.Inch;
        working.Step(
            $"{part}lower deviation",
            $"{@class} at {{nominal}}, from the table",
            limits.Lower,
            Units.Micrometre,
            inch,
            isResult
        );
        working.Step(
            $"{part}upper deviation",
            $"{@class} at {{nominal}}, from the table",
            limits.Upper,
            Units.Micrometre,
            inch,
            isResult
        );
        working.Step(
            $"{part}smallest",
            $"{{nominal}} + {{{dash}lower-deviation}}",
            limits.Smallest,
            Units.Millimetre,
            inch,
            isResult
        );
        working.Step(
            $"{part}largest",
            $"{{nominal}} + {{{dash}upper-deviation}}",
            limits.Largest,
            Units.Millimetre,
            inch,
            isResult
        );
    }
}
