using ProcRunner.Quantities;

namespace ProcRunner.ShopMath;

/// <summary>The table of statistics of many readings.</summary>
internal static class SpcWork
{
    private const string Family = "statistics";
    private const int Many = 100_000;
    private const string Individuals = "49.6 47.6 49.9 51.3 47.8 51.2 52.6 52.4 53.6 52.1";

    private static readonly WorkTakes Any = new WorkTakes.Alike();
    private static readonly WorkTakes Row = new WorkTakes.Alike(2, Many);
    private static readonly WorkTakes Number = new WorkTakes.Amount(Units.One);

    public static IReadOnlyList<WorkFunction> Table { get; } =
    [
        new()
        {
            Name = "statistics",
            Family = Family,
            Summary = "mean, standard deviation and likeness of neighbours of readings",
            Details = "In the order they were taken. No digit is lost on readings that agree in many leading digits.",
            Parameters = [new("readings", Row, "in order")],
            Source = "definitions; NIST StRD univariate statistics",
            Gives =
            [
                .. WorkGives.Alike("mean", "standard deviation"),
                .. WorkGives.Of(Dimension.None, "lag-1 autocorrelation"),
            ],
            Examples =
            [
                new(
                    "readings=10000001 10000003 10000002",
                    "mean=10000002; standard deviation=1; lag-1 autocorrelation=-0.5",
                    "NIST StRD, NumAcc1, certified"
                ),
                new(
                    $"readings={Individuals}",
                    "mean=50.81; standard deviation=2.033852393",
                    "data of NIST/SEMATECH e-Handbook 6.3.2.2"
                ),
                new("readings=0.001 0.002 0.003 in", "mean=0.002 in; standard deviation=0.001 in", "by hand"),
                new(
                    "readings=0.94 0.96 0.98 mm",
                    "mean=0.96 mm; standard deviation=0.02 mm; lag-1 autocorrelation=0",
                    "by hand: deviations -0.02, 0, 0.02"
                ),
            ],
            Work = all =>
                Univariate
                    .Of([.. all.Amounts("readings").Select(one => one.In(all.AlikeUnit))])
                    .Then(found =>
                        new AlikeWorking(all)
                            .And("mean", "sum of {readings} / how many", found.Mean)
                            .And(
                                "standard deviation",
                                "root of the sum of (reading - {mean}) squared / (how many - 1)",
                                found.Deviation
                            )
                            .In(
                                Units.One,
                                "lag-1 autocorrelation",
                                "sum of products of neighbours' deviations / sum of squared deviations",
                                found.Lag1
                            )
                            .Done()
                    ),
        },
        new()
        {
            Name = "individuals-chart",
            Family = Family,
            Summary = "control limits of single readings and their moving ranges",
            Details = "Three-sigma limits from neighbours' differences. A reading outside asks for its cause.",
            Parameters = [new("readings", Row, "in the order they were taken")],
            Source = "NIST/SEMATECH e-Handbook 6.3.2.2: mean +- 3 x mean moving range / 1.128",
            Gives = WorkGives.Alike("mean", "mean moving range", "upper limit", "lower limit", "upper limit of ranges"),
            Examples =
            [
                new(
                    $"readings={Individuals}",
                    "mean=50.81; upper limit=55.80408983; lower limit=45.81591017; mean moving range=1.877777778; upper limit of ranges=6.1347",
                    "NIST/SEMATECH e-Handbook 6.3.2.2: 55.8041 and 45.8159; 3.267 x 1.8778"
                ),
                new("readings=0.010 0.012 0.010 0.012 in", "mean=0.011 in; mean moving range=0.002 in", "by hand"),
                new("readings=0.25 0.30 0.25 0.30 mm", "mean=0.275 mm; mean moving range=0.05 mm", "by hand"),
            ],
            Work = all =>
                ControlLimits
                    .OfIndividuals(AlikeWorking.Values(all, "readings"))
                    .Then(limits =>
                        new AlikeWorking(all)
                            .And("mean", "sum of {readings} / how many", limits.Mean)
                            .And("mean moving range", "mean of neighbours' differences", limits.MeanRange)
                            .And("upper limit", "{mean} + 3 x {mean-moving-range} / 1.128", limits.High)
                            .And("lower limit", "{mean} - 3 x {mean-moving-range} / 1.128", limits.Low)
                            .And("upper limit of ranges", "3.267 x {mean-moving-range}", limits.RangeHigh)
                            .Done()
                    ),
        },
        new()
        {
            Name = "subgroup-chart",
            Family = Family,
            Summary = "control limits of subgroups' means and ranges",
            Details = "Subgroups of 2 to 10 readings each.",
            Parameters =
            [
                new("means", new WorkTakes.Alike(1, Many), "one for each subgroup"),
                new("ranges", new WorkTakes.Alike(1, Many), "one for each subgroup"),
                new("size", Number, "readings in a subgroup"),
            ],
            Source = "factors A2, D3, D4, d2 as textbooks print them",
            Gives = WorkGives.Alike(
                "mean",
                "mean range",
                "upper limit",
                "lower limit",
                "upper limit of ranges",
                "lower limit of ranges",
                "sigma"
            ),
            Examples =
            [
                new(
                    "means=4.4296 in; ranges=0.103 in; size=5",
                    "upper limit=4.489031 in; lower limit=4.370169 in; upper limit of ranges=0.217845 in; sigma=0.04428202923 in",
                    "Kalpakjian & Schmid, Manufacturing Engineering, Ex. 36.2, from its sums"
                ),
                new(
                    "means=11.274 11.246 11.204 11.294 11.252 11.238 11.230 11.276 11.208 11.266; ranges=.15 .20 .33 .46 .10 .15 .20 .23 .50 .30; size=5",
                    "mean=11.2488; mean range=0.262; upper limit=11.399974; lower limit=11.097626; upper limit of ranges=0.55413",
                    "Sharma, Production Engineering, ch. 21: 11.40, 11.10, 0.554"
                ),
            ],
            Work = all =>
                ControlLimits
                    .OfSubgroups(
                        AlikeWorking.Values(all, "means"),
                        AlikeWorking.Values(all, "ranges"),
                        all.In("size", Units.One)
                    )
                    .Then(limits =>
                        new AlikeWorking(all)
                            .And("mean", "mean of {means}", limits.Mean)
                            .And("mean range", "mean of {ranges}", limits.MeanRange)
                            .And("upper limit", "{mean} + A2 of {size} x {mean-range}", limits.High)
                            .And("lower limit", "{mean} - A2 of {size} x {mean-range}", limits.Low)
                            .And("upper limit of ranges", "D4 of {size} x {mean-range}", limits.RangeHigh)
                            .And("lower limit of ranges", "D3 of {size} x {mean-range}", limits.RangeLow)
                            .And("sigma", "{mean-range} / d2 of {size}", limits.Sigma)
                            .Done()
                    ),
        },
        new()
        {
            Name = "ewma",
            Family = Family,
            Summary = "weighted moving average of readings with its limits",
            Details =
                "Finds a small drift sooner than single readings do. The last value is given, the others in the steps.",
            Parameters =
            [
                new("readings", new WorkTakes.Alike(1, Many), "in the order they were taken"),
                new("weight", Number, "of the newest, above 0 up to 1"),
                new("start", Any, "target, or mean of earlier readings"),
                new("sigma", Any, "standard deviation of earlier readings"),
            ],
            Source = "NIST/SEMATECH e-Handbook 6.3.2.4",
            Gives = [.. WorkGives.Alike("last", "upper limit", "lower limit"), .. WorkGives.Words("outside")],
            Examples =
            [
                new(
                    "readings=52.0 47.0 53.0 49.3 50.1 47.0 51.0 50.1 51.2 50.5 49.6 47.6 49.9 51.3 47.8 51.2 52.6 52.4 53.6 52.1; weight=0.3; start=50; sigma=2.0539",
                    "last=51.99; upper limit=52.5884; lower limit=47.4116; outside=none",
                    "NIST/SEMATECH e-Handbook 6.3.2.4"
                ),
                new(
                    "readings=0.010 0.020 in; weight=0.5; start=0.010 in; sigma=0.001 in",
                    "last=0.015 in; outside=2",
                    "by hand; limits 0.010 +- 3 x 0.001 x sqrt(1/3)"
                ),
            ],
            Work = Average,
        },
        .. ProcessWork.Table,
    ];

    private static ShopResult<WorkAnswer> Average(WorkArguments all) =>
        Ewma.Of(
                AlikeWorking.Values(all, "readings"),
                all.In("weight", Units.One),
                AlikeWorking.Value(all, "start"),
                AlikeWorking.Value(all, "sigma")
            )
            .Then(ewma =>
            {
                AlikeWorking working = new(all);
                for (int i = 0; i < ewma.Values.Count; i++)
                {
                    working.And(
                        FormattableString.Invariant($"after {i + 1}"),
                        "{weight} x reading + (1 - {weight}) x value before",
                        ewma.Values[i],
                        isResult: false
                    );
                }

                string outside = string.Join(
                    ' ',
                    ewma.Values.Select((value, at) => (value, at))
                        .Where(one => one.value > ewma.High || one.value < ewma.Low)
                        .Select(one => FormattableString.Invariant($"{one.at + 1}"))
                );
                return working
                    .And("last", "value after the last reading", ewma.Values[^1])
                    .And("upper limit", "{start} + 3 x {sigma} x sqrt({weight} / (2 - {weight}))", ewma.High)
                    .And("lower limit", "{start} - 3 x {sigma} x sqrt({weight} / (2 - {weight}))", ewma.Low)
                    .Say("outside", "values beyond a limit, counted from 1", outside.Length > 0 ? outside : "none")
                    .Done();
            });
}
