using ProcRunner.Quantities;

namespace ProcRunner.ShopMath;

/// <summary>The table of capability and gauge studies.</summary>
internal static class ProcessWork
{
    private const string Family = "statistics";
    private const int Many = 100_000;
    private const int MostOfAKind = 1000;

    // AIAG, Measurement Systems Analysis: 3 appraisers x 3 trials x 10 parts.
    private const string Study =
        "readings="
        + "0.29 -0.56 1.34 0.47 -0.80 0.02 0.59 -0.31 2.26 -1.36 "
        + "0.41 -0.68 1.17 0.50 -0.92 -0.11 0.75 -0.20 1.99 -1.25 "
        + "0.64 -0.58 1.27 0.64 -0.84 -0.21 0.66 -0.17 2.01 -1.31 "
        + "0.08 -0.47 1.19 0.01 -0.56 -0.20 0.47 -0.63 1.80 -1.68 "
        + "0.25 -1.22 0.94 1.03 -1.20 0.22 0.55 0.08 2.12 -1.62 "
        + "0.07 -0.68 1.34 0.20 -1.28 0.06 0.83 -0.34 2.19 -1.50 "
        + "0.04 -1.38 0.88 0.14 -1.46 -0.29 0.02 -0.46 1.77 -1.49 "
        + "-0.11 -1.13 1.09 0.20 -1.07 -0.67 0.01 -0.56 1.45 -1.77 "
        + "-0.15 -0.96 0.67 0.11 -1.45 -0.49 0.21 -0.49 1.87 -2.16; "
        + "appraisers=3; trials=3; parts=10; method=";

    private static readonly WorkTakes Any = new WorkTakes.Alike();
    private static readonly WorkTakes Number = new WorkTakes.Amount(Units.One);

    public static IReadOnlyList<WorkFunction> Table { get; } =
    [
        new()
        {
            Name = "capability",
            Family = Family,
            Summary = "how well a process fits its limits: Cp and Cpk",
            Details =
                "With one limit, as for runout, only the side of that limit counts. Sigma as the control chart gives it.",
            Parameters =
            [
                new("mean", Any, "of the process"),
                new("sigma", Any, "its standard deviation"),
                new("low", Any, "least allowed; without it none", IsOptional: true),
                new("high", Any, "most allowed; without it none", IsOptional: true),
            ],
            Source = "NIST/SEMATECH e-Handbook 6.1.6",
            Gives = WorkGives.Of(Dimension.None, "Cp", "upper", "lower", "Cpk", "off centre"),
            Examples =
            [
                new(
                    "mean=16; sigma=2; low=8; high=20",
                    "Cp=1; upper=0.6667; lower=1.3333; Cpk=0.6667; off centre=0.3333",
                    "NIST/SEMATECH e-Handbook 6.1.6"
                ),
                new(
                    "mean=10.991; sigma=0.0035; low=10.98; high=11.01",
                    "Cp=1.428571429; Cpk=1.047619048",
                    "Miller & Freund, Probability and Statistics for Engineers, p. 470"
                ),
                new("mean=0.0008 in; sigma=0.0002 in; high=0.002 in", "Cpk=2", "one limit: 0.0012 / 0.0006"),
            ],
            Work = Capable,
        },
        new()
        {
            Name = "gauge-study",
            Family = Family,
            Summary = "how much of the spread of readings is the gauge and the people",
            Details =
                "Readings of all parts by all appraisers: the first appraiser's trials in turn, each part by part, then the next "
                + "appraiser. Under 10 % of all spread is good, 10 to 30 % may do, over 30 % does not; 5 classes or more (rule of "
                + "thumb, from memory).",
            Parameters =
            [
                new("readings", new WorkTakes.Alike(8, Many), "appraiser by appraiser, trial by trial, part by part"),
                new("appraisers", Number, "how many"),
                new("trials", Number, "how often each read each part"),
                new("parts", Number, "how many"),
                new("method", new WorkTakes.Word(["range", "variance"]), "average and range, or analysis of variance"),
            ],
            Source = "AIAG, Measurement Systems Analysis (its worked example's data and factors are published)",
            Gives =
            [
                .. WorkGives.Alike("equipment", "appraiser", "gauge", "part", "total"),
                .. WorkGives.Of(Dimension.None, "gauge share", "classes"),
            ],
            Examples =
            [
                new(
                    Study + "range",
                    "equipment=0.2018566667; appraiser=0.2296670291; gauge=0.3057663457; part=1.1045955556; total=1.1461345469; gauge share=26.67804984 %; classes=5",
                    "AIAG, Measurement Systems Analysis, worked example: 0.2019, 0.2297, 0.3058, 1.1046, 1.1461, 26.7 %, 5"
                ),
                new(
                    Study + "variance",
                    "gauge=0.3023715223; total=1.0852995632; gauge share=27.86065088 %; classes=4",
                    "the same data by analysis of variance, worked out outside this program"
                ),
            ],
            Work = StudyOf,
        },
    ];

    private static ShopResult<WorkAnswer> Capable(WorkArguments all) =>
        Capability
            .Of(
                AlikeWorking.Value(all, "mean"),
                AlikeWorking.Value(all, "sigma"),
                all.Has("low") ? AlikeWorking.Value(all, "low") : null,
                all.Has("high") ? AlikeWorking.Value(all, "high") : null
            )
            .Then(capability =>
            {
                AlikeWorking working = new(all);
                void Add(string name, string formula, double? value)
                {
                    if (value is { } known)
                    {
                        working.In(Units.One, name, formula, known);
                    }
                }

                Add("Cp", "({high} - {low}) / (6 x {sigma})", capability.Cp);
                Add("upper", "({high} - {mean}) / (3 x {sigma})", capability.Upper);
                Add("lower", "({mean} - {low}) / (3 x {sigma})", capability.Lower);
                Add("Cpk", "the smaller of what the limits give", capability.Cpk);
                Add("off centre", "|({high} + {low}) / 2 - {mean}| / (({high} - {low}) / 2)", capability.OffCentre);
                return working.Done();
            });

    private static ShopResult<WorkAnswer> StudyOf(WorkArguments all) =>
        Count(all, "appraisers")
            .Then(appraisers =>
                Count(all, "trials")
                    .Then(trials =>
                        Count(all, "parts")
                            .Then(parts =>
                                GaugeReadings.Of(AlikeWorking.Values(all, "readings"), appraisers, trials, parts)
                            )
                    )
            )
            .Then(readings =>
                all.Word("method") == "range" ? GaugeStudy.ByRange(readings) : GaugeStudy.ByVariance(readings)
            )
            .Then(study =>
                new AlikeWorking(all)
                    .And("equipment", "spread of one person's readings of one part", study.Equipment)
                    .And("appraiser", "spread between people", study.Appraiser)
                    .And("gauge", "root of ({equipment}^2 + {appraiser}^2)", study.Gauge)
                    .And("part", "spread between parts", study.Part)
                    .And("total", "root of ({gauge}^2 + {part}^2)", study.Total)
                    .In(Units.Percent, "gauge share", "{gauge} / {total}", 100 * study.GaugeShare)
                    .In(
                        Units.One,
                        "classes",
                        "1.41 x {part} / {gauge}, cut to a whole number",
                        Math.Floor(study.Categories)
                    )
                    .Done()
            );

    private static ShopResult<int> Count(WorkArguments all, string name)
    {
        double count = all.In(name, Units.One);
        return count is >= 2 and <= MostOfAKind && count == Math.Floor(count)
            ? (int)count
            : new ShopFault(name, Allowed.Show(count, ""), $"it must be a whole number from 2 to {MostOfAKind}");
    }
}
