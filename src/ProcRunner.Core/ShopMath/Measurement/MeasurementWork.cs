using ProcRunner.Quantities;

namespace ProcRunner.ShopMath;

/// <summary>The table of decisions on measured values.</summary>
internal static class MeasurementWork
{
    private const string Family = "measurement";
    private static readonly WorkTakes Any = new WorkTakes.Alike();
    private static readonly WorkParameter Low = new("low", Any, "least allowed; without it none", IsOptional: true);
    private static readonly WorkParameter High = new("high", Any, "most allowed; without it none", IsOptional: true);

    public static IReadOnlyList<WorkFunction> Table { get; } =
    [
        new()
        {
            Name = "conformity",
            Family = Family,
            Summary = "whether a measured value proves that it is in its limits",
            Details =
                "Inside the limits by the uncertainty it is proved, outside them by more it is disproved, between neither. The "
                + "uncertainty counts against whoever has to prove.",
            Parameters = [new("value", Any, "measured"), Low, High, new("uncertainty", Any, "expanded, U")],
            Source = "ISO 14253-1 (from memory)",
            Gives = [.. WorkGives.Alike("accept to"), .. WorkGives.Words("verdict")],
            Examples =
            [
                new(
                    "value=0.045 mm; high=0.050 mm; uncertainty=0.005 mm",
                    "accept to=0.045 mm; verdict=proved in limits",
                    "0.050 - 0.005; the end belongs to the zone"
                ),
                new(
                    "value=0.046 mm; high=0.050 mm; uncertainty=0.005 mm",
                    "verdict=not decided: nearer to a limit than the uncertainty",
                    "0.046 is above 0.045 and not above 0.055"
                ),
                new(
                    "value=0.0022 in; high=0.0020 in; uncertainty=0.0001 in",
                    "verdict=proved out of limits",
                    "0.0022 is above 0.0021"
                ),
                new(
                    "value=0.005 mm; low=0 mm; high=0.010 mm; uncertainty=0.006 mm",
                    "verdict=not decided: nearer to a limit than the uncertainty, and between limits less than twice the uncertainty apart "
                        + "nothing is proved in limits",
                    "0 + 0.006 lies above 0.010 - 0.006"
                ),
            ],
            Work = Conform,
        },
        new()
        {
            Name = "gauge-ratio",
            Family = Family,
            Summary = "whether a gauge can tell: how often its uncertainty fits the zone",
            Details = "A gauge too coarse for the zone is refused for it. Without a ratio 4:1 is asked for.",
            Parameters =
            [
                new("low", Any, "least allowed"),
                new("high", Any, "most allowed"),
                new("uncertainty", Any, "expanded, U, of the gauge"),
                new("ratio", new WorkTakes.Amount(Units.One), "asked for; without it 4", IsOptional: true),
            ],
            Source = "ASME B89.7.3.1, N:1 rule: zone >= N x 2U",
            Gives =
            [
                .. WorkGives.Of(Dimension.None, "ratio is"),
                .. WorkGives.Alike("most uncertainty"),
                .. WorkGives.Words("verdict"),
            ],
            Examples =
            [
                new(
                    "low=0 mm; high=0.025 mm; uncertainty=0.003 mm",
                    "ratio is=4.1667; verdict=the gauge can tell",
                    "0.025 / 0.006"
                ),
                new(
                    "low=0 mm; high=0.025 mm; uncertainty=0.0035 mm",
                    "ratio is=3.5714; verdict=too coarse for this zone",
                    "0.025 / 0.007"
                ),
                new(
                    "low=0.001 in; high=0.002 in; uncertainty=0.000125 in",
                    "most uncertainty=0.000125 in; verdict=the gauge can tell",
                    "0.001 / 8; exactly enough is enough"
                ),
            ],
            Work = Ratio,
        },
        new()
        {
            Name = "guard-band",
            Family = Family,
            Summary = "limits of acceptance for a one-sided probability",
            Details =
                "Accepted up to here, a thing is in the limit with that probability or more. Holds where the uncertainty is small "
                + "against the zone.",
            Parameters =
            [
                Low,
                High,
                new("standard-uncertainty", Any, "u, not expanded"),
                new(
                    "probability",
                    new WorkTakes.Amount(Units.Percent),
                    "of conforming, at least; without it 95 %",
                    IsOptional: true
                ),
            ],
            Source = "ISO 14253-1:2017 default, JCGM 106:2012; quantile of the normal distribution",
            Gives = [.. WorkGives.Of(Dimension.None, "factor"), .. WorkGives.Alike("accept to", "accept from")],
            Examples =
            [
                new(
                    "high=0.050 mm; standard-uncertainty=0.0025 mm",
                    "factor=1.6448536270; accept to=0.045887866 mm",
                    "0.050 - 1.6448536270 x 0.0025"
                ),
                new(
                    "low=0.0010 in; high=0.0030 in; standard-uncertainty=0.0001 in; probability=97.72498681 %",
                    "accept from=0.0012 in; accept to=0.0028 in",
                    "97.72498681 % is 2 standard uncertainties"
                ),
            ],
            Work = Guard,
        },
        new()
        {
            Name = "conformance-probability",
            Family = Family,
            Summary = "how probable it is that a measured thing is in its limits",
            Details = "The true value is taken as normally distributed about the reading.",
            Parameters =
            [
                new("value", Any, "measured"),
                new("standard-uncertainty", Any, "u, not expanded"),
                Low,
                High,
            ],
            Source = "JCGM 106:2012, 7.4",
            Gives = WorkGives.Of(Dimension.None, "probability"),
            Examples =
            [
                new(
                    "value=-5.47; standard-uncertainty=0.05; high=-5.40",
                    "probability=91.92433408 %",
                    "JCGM 106:2012, 7.4, a diode's breakdown voltage (inputs from memory); Phi(1.4)"
                ),
                new(
                    "value=509.7 kPa; standard-uncertainty=8.6 kPa; low=490 kPa",
                    "probability=98.90095474 %",
                    "JCGM 106:2012, 7.4, a burst pressure (inputs from memory); Phi(2.2906977)"
                ),
                new(
                    "value=13.6; standard-uncertainty=1.8; low=12.5; high=16.3",
                    "probability=66.26297865 %",
                    "JCGM 106:2012, 7.4, an oil's viscosity in mm2/s (inputs from memory)"
                ),
                new(
                    "value=0.046 mm; standard-uncertainty=0.0025 mm; high=0.050 mm",
                    "probability=94.5200708 %",
                    "Phi(1.6)"
                ),
                new("value=0.0020 in; standard-uncertainty=0.0001 in; high=0.0020 in", "probability=50 %", "Phi(0)"),
            ],
            StemsFrom = [new("uncertainty", "standard-uncertainty")],
            Work = all =>
                ConformanceProbability
                    .Of(
                        AlikeWorking.Value(all, "value"),
                        AlikeWorking.Value(all, "standard-uncertainty"),
                        AlikeWorking.Value(all, "low", double.NegativeInfinity),
                        AlikeWorking.Value(all, "high", double.PositiveInfinity)
                    )
                    .Then(probability =>
                        new AlikeWorking(all)
                            .In(Units.Percent, "probability", ProbabilityFormula(all), 100 * probability)
                            .Done()
                    ),
        },
        new()
        {
            Name = "decision-risks",
            Family = Family,
            Summary = "over many alike: how many are bad and accepted, good and rejected",
            Details =
                "For a process that is known: mean and standard deviation of what is made, and the uncertainty of one reading. All "
                + "normally distributed. Each is a part of all that are made.",
            Parameters =
            [
                new("mean", Any, "of what is made"),
                new("spread", Any, "standard deviation of what is made"),
                new("uncertainty", Any, "standard uncertainty of a reading"),
                new("low", Any, "least allowed"),
                new("high", Any, "most allowed"),
                new("accept-low", Any, "least reading accepted; without it low", IsOptional: true),
                new("accept-high", Any, "most reading accepted; without it high", IsOptional: true),
            ],
            Source = "JCGM 106:2012, 9.5, global risks",
            Gives = WorkGives.Of(Dimension.None, "conforming", "bad and accepted", "good and rejected"),
            Examples =
            [
                new(
                    "mean=1500; spread=0.12; uncertainty=0.04; low=1499.8; high=1500.2; accept-low=1499.82; accept-high=1500.18",
                    "conforming=90.44192955 %; bad and accepted=0.98782915 %; good and rejected=6.90265105 %",
                    "JCGM 106:2012, 9.5.4, resistors in ohm: 90 %, 1 %, 7 % there"
                ),
                new(
                    "mean=1500; spread=0.12; uncertainty=0.04; low=1499.8; high=1500.2",
                    "bad and accepted=1.89422067 %; good and rejected=3.72078002 %",
                    "the same accepted to the limits, integrated outside this program"
                ),
            ],
            Work = RisksOf,
        },
        .. UncertaintyWork.Table,
    ];

    private static bool IsTooNarrow(Tolerance tolerance, Exact uncertainty) =>
        tolerance is { Low: { } low, High: { } high } && (low + uncertainty).CompareTo(high - uncertainty) > 0;

    private static ShopResult<WorkAnswer> Conform(WorkArguments all) =>
        ToleranceOf(all)
            .Then(tolerance =>
                Acceptance
                    .Prove(all.Amount("value"), tolerance, all.Amount("uncertainty"))
                    .Then(verdict =>
                    {
                        AlikeWorking working = new(all);
                        if (IsTooNarrow(tolerance, all.Amount("uncertainty")))
                        {
                            return working
                                .Say(
                                    "verdict",
                                    "{value} against {low} and {high}",
                                    $"{Words(verdict)}, and between limits less than twice the uncertainty apart nothing is proved in limits"
                                )
                                .Done();
                        }

                        if (tolerance.Low is { } low)
                        {
                            working.End(
                                "accept from",
                                "{low} + {uncertainty}",
                                low + all.Amount("uncertainty"),
                                isHigh: false
                            );
                        }

                        if (tolerance.High is { } high)
                        {
                            working.End(
                                "accept to",
                                "{high} - {uncertainty}",
                                high - all.Amount("uncertainty"),
                                isHigh: true
                            );
                        }

                        return working.Say("verdict", "{value} against these", Words(verdict)).Done();
                    })
            );

    private static string Words(Conformity verdict) =>
        verdict switch
        {
            Conformity.Proved => "proved in limits",
            Conformity.Disproved => "proved out of limits",
            _ => "not decided: nearer to a limit than the uncertainty",
        };

    private static ShopResult<WorkAnswer> Ratio(WorkArguments all)
    {
        Rational wanted = all.Has("ratio") ? all.Amount("ratio").Value : Rational.FromInteger(4);
        (Exact low, Exact high, Exact uncertainty) = (all.Amount("low"), all.Amount("high"), all.Amount("uncertainty"));
        return Acceptance
            .Ratio(low, high, uncertainty)
            .Then(ratio =>
                Acceptance
                    .MostUncertainty(low, high, wanted)
                    .Then(most =>
                        new AlikeWorking(all)
                            .In(Units.One, "ratio is", "({high} - {low}) / (2 x {uncertainty})", ratio.ToDouble())
                            .End(
                                "most uncertainty",
                                all.Has("ratio") ? "({high} - {low}) / (2 x {ratio})" : "({high} - {low}) / (2 x 4)",
                                most,
                                isHigh: true
                            )
                            .Say(
                                "verdict",
                                "{uncertainty} against {most-uncertainty}",
                                ratio >= wanted ? "the gauge can tell" : "too coarse for this zone"
                            )
                            .Done()
                    )
            );
    }

    private static ShopResult<WorkAnswer> Guard(WorkArguments all) =>
        ToleranceOf(all)
            .Then(tolerance =>
                Distributions
                    .NormalQuantile(all.Has("probability") ? all.Amount("probability").Value.ToDouble() : 0.95)
                    .Then(factor =>
                    {
                        if (Allowed.Above0("standard uncertainty", all.Amount("standard-uncertainty")) is { } fault)
                        {
                            return fault;
                        }

                        double band = factor * AlikeWorking.Value(all, "standard-uncertainty");
                        AlikeWorking working = new AlikeWorking(all)
                            .In(
                                Units.One,
                                "factor",
                                all.Has("probability") ? "normal quantile of {probability}" : "normal quantile of 95 %",
                                factor
                            )
                            .And("guard band", "{factor} x {standard-uncertainty}", band, isResult: false);
                        if (all.Has("low"))
                        {
                            working.End(
                                "accept from",
                                "{low} + {guard-band}",
                                AlikeWorking.Value(all, "low") + band,
                                isHigh: false
                            );
                        }

                        if (all.Has("high"))
                        {
                            working.End(
                                "accept to",
                                "{high} - {guard-band}",
                                AlikeWorking.Value(all, "high") - band,
                                isHigh: true
                            );
                        }

                        return working.Done();
                    })
            );

    private static ShopResult<WorkAnswer> RisksOf(WorkArguments all)
    {
        double low = AlikeWorking.Value(all, "low");
        double high = AlikeWorking.Value(all, "high");
        return ConformanceProbability
            .Global(
                AlikeWorking.Value(all, "mean"),
                AlikeWorking.Value(all, "spread"),
                AlikeWorking.Value(all, "uncertainty"),
                low,
                high,
                AlikeWorking.Value(all, "accept-low", low),
                AlikeWorking.Value(all, "accept-high", high)
            )
            .Then(risks =>
                new AlikeWorking(all)
                    .In(
                        Units.Percent,
                        "conforming",
                        "Phi(({high} - {mean}) / {spread}) - Phi(({low} - {mean}) / {spread})",
                        100 * risks.Conforming
                    )
                    .In(
                        Units.Percent,
                        "bad and accepted",
                        "integral, outside the limits, of made x accepted",
                        100 * risks.Consumer
                    )
                    .In(
                        Units.Percent,
                        "good and rejected",
                        "integral, inside the limits, of made x (1 - accepted)",
                        100 * risks.Producer
                    )
                    .Done()
            );
    }

    private static ShopResult<Tolerance> ToleranceOf(WorkArguments all) =>
        Tolerance.Of(all.Has("low") ? all.Amount("low") : null, all.Has("high") ? all.Amount("high") : null);

    private static string ProbabilityFormula(WorkArguments all) =>
        (all.Has("high") ? "Phi(({high} - {value}) / {standard-uncertainty})" : "1")
        + (all.Has("low") ? " - Phi(({low} - {value}) / {standard-uncertainty})" : "");
}
