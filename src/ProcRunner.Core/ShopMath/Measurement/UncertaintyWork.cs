using ProcRunner.Quantities;

namespace ProcRunner.ShopMath;

/// <summary>The table of uncertainties and of readings that are intervals.</summary>
internal static class UncertaintyWork
{
    private const string Family = "measurement";
    private const int Many = 1000;
    private static readonly WorkTakes Any = new WorkTakes.Alike();

    public static IReadOnlyList<WorkFunction> Table { get; } =
    [
        new()
        {
            Name = "combined-uncertainty",
            Family = Family,
            Summary = "several uncertainties as one, with its coverage factor",
            Details =
                "Of contributions that have nothing to do with each other, each as a standard uncertainty in the unit of the "
                + "result. Two readings of u each give u x sqrt 2. Degrees of freedom are optional; the effective ones are cut to a "
                + "whole number before the factor is looked up.",
            Parameters =
            [
                new("contributions", new WorkTakes.Alike(1, Many), "standard uncertainties"),
                new(
                    "degrees-of-freedom",
                    new WorkTakes.Amounts(Units.One, 1),
                    "one for each; a very large number where nothing limits it; without them all unlimited",
                    IsOptional: true
                ),
                new(
                    "coverage",
                    new WorkTakes.Amount(Units.Percent),
                    "part covered by the expanded one; without it 95.45 %",
                    IsOptional: true
                ),
            ],
            Source = "JCGM 100:2008, 5.1.2 and G.4.1",
            Gives =
            [
                .. WorkGives.Alike("combined"),
                .. WorkGives.Of(Dimension.None, "effective degrees of freedom", "coverage factor"),
                .. WorkGives.Alike("expanded"),
            ],
            Examples =
            [
                new(
                    "contributions=25 9.7 2.9 16.6; degrees-of-freedom=18 25.6 50 2; coverage=99 %",
                    "combined=31.7; effective degrees of freedom=16.8; coverage factor=2.92; expanded=92.5",
                    "JCGM 100:2008, H.1, end gauge, in nm: 32 and, from 32, 93 there; nu 16, t 2.92; unrounded 31.7, 16.76 and 92.5"
                ),
                new(
                    "contributions=0.0001 0.0001 in",
                    "combined=0.000141421 in; coverage factor=2.00",
                    "u x sqrt 2; JCGM 100:2008, Table G.2: 2.00 for 95.45 %"
                ),
            ],
            Work = Combine,
        },
        new()
        {
            Name = "interval-uncertainty",
            Family = Family,
            Summary = "standard uncertainty of a value known only to lie within plus or minus",
            Details = "rectangular: anywhere is as likely; triangular: the middle is likeliest.",
            Parameters =
            [
                new("half-width", Any, "the plus or minus"),
                new("shape", new WorkTakes.Word(["rectangular", "triangular"]), "how likely the ends are"),
            ],
            Source = "JCGM 100:2008, 4.3.7 and 4.3.9",
            Gives = WorkGives.Alike("standard uncertainty"),
            Examples =
            [
                new("half-width=1 um; shape=rectangular", "standard uncertainty=0.5773502692 \u00B5m", "1 / sqrt 3"),
                new("half-width=1 um; shape=triangular", "standard uncertainty=0.4082482905 \u00B5m", "1 / sqrt 6"),
                new(
                    "half-width=0.0003 in; shape=rectangular",
                    "standard uncertainty=0.000173205 in",
                    "0.0003 / sqrt 3"
                ),
            ],
            Work = all =>
                Allowed.NotBelow0("half width", all.Amount("half-width")) is { } fault
                    ? fault
                    : new AlikeWorking(all)
                        .And(
                            "standard uncertainty",
                            all.Word("shape") == "triangular" ? "{half-width} / sqrt 6" : "{half-width} / sqrt 3",
                            all.Word("shape") == "triangular"
                                ? StandardUncertainty.Triangular(AlikeWorking.Value(all, "half-width"))
                                : StandardUncertainty.Rectangular(AlikeWorking.Value(all, "half-width"))
                        )
                        .Done(),
        },
        new()
        {
            Name = "step-uncertainty",
            Family = Family,
            Summary = "standard uncertainty of a display that shows steps",
            Details = "The least that a readout or digital gauge can have.",
            Parameters = [new("step", Any, "smallest step shown")],
            Source = "JCGM 100:2008, F.2.2.1: step / (2 sqrt 3)",
            Gives = WorkGives.Alike("standard uncertainty"),
            Examples =
            [
                new("step=0.005 mm", "standard uncertainty=0.0014433757 mm", "0.2886751346 x 0.005"),
                new("step=0.0005 in", "standard uncertainty=0.000144338 in", "0.2886751346 x 0.0005"),
            ],
            Work = all =>
                Allowed.Above0("step", all.Amount("step")) is { } fault
                    ? fault
                    : new AlikeWorking(all)
                        .And(
                            "standard uncertainty",
                            "{step} / (2 x sqrt 3)",
                            StandardUncertainty.OfStep(AlikeWorking.Value(all, "step"))
                        )
                        .Done(),
        },
        new()
        {
            Name = "feeler-gap",
            Family = Family,
            Summary = "what a gap felt with leaves says about its limits",
            Details =
                "The gap lies from the thickest leaf that goes in to the thinnest that does not. In or out of limits only where "
                + "that holds for all of it.",
            Parameters =
            [
                new("goes-in", Any, "thickest leaf that goes in; 0 if none does"),
                new("stays-out", Any, "thinnest leaf that does not"),
                new("low", Any, "least allowed; without it none", IsOptional: true),
                new("high", Any, "most allowed; without it none", IsOptional: true),
            ],
            Source = "an interval is in limits if both its ends are, out if all of it lies beyond one limit",
            Gives = WorkGives.Words("verdict"),
            Examples =
            [
                new(
                    "goes-in=0.0015 in; stays-out=0.0020 in; high=0.0030 in",
                    "verdict=in limits",
                    "all of 0.0015 to 0.0020 is below 0.0030"
                ),
                new(
                    "goes-in=0.04 mm; stays-out=0.06 mm; high=0.05 mm",
                    "verdict=not decided: the leaves are too coarse",
                    "0.05 lies between the leaves"
                ),
                new(
                    "goes-in=0.06 mm; stays-out=0.07 mm; high=0.05 mm",
                    "verdict=out of limits",
                    "the gap is 0.06 or more"
                ),
            ],
            Work = Feel,
        },
        new()
        {
            Name = "length-at-20",
            Family = Family,
            Summary = "length at 20 degC of a part measured at another temperature",
            Details =
                "Part and gauge at different temperatures; a gauge of the same metal at the same temperature needs none.",
            Parameters =
            [
                new("length", new WorkTakes.Amount(Units.Millimetre), "as measured"),
                new("temperature", new WorkTakes.Amount(Units.Celsius), "of the part"),
                new("expansion", new WorkTakes.Amount(Units.PerKelvin), "of its metal"),
            ],
            Source = "ISO 1, reference temperature; linear thermal expansion",
            Gives = WorkGives.Of(Dimension.OfLength, "too long by", "length at 20"),
            Examples =
            [
                new(
                    "length=127 mm; temperature=30 degC; expansion=0.0000215 1/K",
                    "too long by=0.027305 mm; length at 20=126.972695 mm",
                    "127 x 21.5e-6 x 10; 21.5e-6 for aluminium 356.0: Callister, Appendix B, Table B.6"
                ),
                new(
                    "length=5 in; temperature=86 degF; expansion=0.0000119 1/degF-diff",
                    "too long by=0.001071 in",
                    "5 x 11.9e-6 x 18 degF"
                ),
            ],
            Work = all =>
            {
                Exact twenty = Exact.Of(new Quantity(20, Units.Celsius));
                Exact length = all.Amount("length");
                Exact longer = length * all.Amount("expansion") * (all.Amount("temperature") - twenty);
                return SeatWork
                    .Worked(all)
                    .And("too long by", "{length} x {expansion} x ({temperature} - 20 degC)", longer)
                    .And("length at 20", "{length} - {too-long-by}", length - longer)
                    .Done();
            },
        },
    ];

    private static ShopResult<WorkAnswer> Combine(WorkArguments all) =>
        UncertaintyBudget
            .Of(
                AlikeWorking.Values(all, "contributions"),
                [.. all.Amounts("degrees-of-freedom").Select(one => one.Value.ToDouble())]
            )
            .Then(budget =>
                budget
                    .CoverageFactor(all.Has("coverage") ? all.Amount("coverage").Value.ToDouble() : 0.9545)
                    .Then(factor =>
                    {
                        AlikeWorking working = new AlikeWorking(all).And(
                            "combined",
                            "root of the sum of squares of {contributions}",
                            budget.Combined
                        );
                        if (double.IsFinite(budget.DegreesOfFreedom))
                        {
                            working.In(
                                Units.One,
                                "effective degrees of freedom",
                                "{combined}^4 / sum of contribution^4 / {degrees-of-freedom}",
                                budget.DegreesOfFreedom
                            );
                        }

                        return working
                            .In(
                                Units.One,
                                "coverage factor",
                                all.Has("coverage") ? "Student's t for {coverage}" : "Student's t for 95.45 %",
                                factor
                            )
                            .And("expanded", "{coverage-factor} x {combined}", factor * budget.Combined)
                            .Done();
                    })
            );

    private static ShopResult<WorkAnswer> Feel(WorkArguments all)
    {
        (Exact least, Exact most) = (all.Amount("goes-in"), all.Amount("stays-out"));
        return
            (Allowed.NotBelow0("goes in", least) ?? Allowed.NotAbove("goes in", least, "leaf that stays out", most))
                is { } fault
            ? fault
            : Tolerance
                .Of(all.Has("low") ? all.Amount("low") : null, all.Has("high") ? all.Amount("high") : null)
                .Then(tolerance =>
                {
                    bool isOut =
                        (tolerance.Low is { } low && most.CompareTo(low) < 0)
                        || (tolerance.High is { } high && least.CompareTo(high) > 0);
                    return new AlikeWorking(all)
                        .Say(
                            "verdict",
                            "{goes-in} to {stays-out} against the limits",
                            isOut ? "out of limits"
                                : tolerance.Holds(least) && tolerance.Holds(most) ? "in limits"
                                : "not decided: the leaves are too coarse"
                        )
                        .Done();
                });
    }
}
