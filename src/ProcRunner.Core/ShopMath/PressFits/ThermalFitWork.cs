using ProcRunner.Quantities;

namespace ProcRunner.ShopMath;

/// <summary>The table of fits under heat and cold.</summary>
internal static class ThermalFitWork
{
    private const string Linear = "linear thermal expansion";
    private const string Kaw =
        "A. Kaw, University of South Florida, notes on underestimating contraction for a shrink fit";
    private const string Callister =
        "expansions of Callister, Materials Science and Engineering, Table B.6; the rest worked by hand";
    private const string KawTable =
        "temperatures=80 0 -80 -100 -160 -180 -260 -280 -300 -340 degF; expansions=0.00000647 0.00000600 0.00000543 "
        + "0.00000528 0.00000472 0.00000452 0.00000358 0.00000333 0.00000307 0.00000245 1/degF-diff";
    private static readonly WorkTakes Length = new WorkTakes.Amount(Units.Millimetre);
    private static readonly WorkTakes Temperature = new WorkTakes.Amount(Units.Celsius);

    private static readonly WorkParameter[] Curve =
    [
        new("temperatures", new WorkTakes.Amounts(Units.Celsius, 1), "of the table of expansions"),
        new("expansions", new WorkTakes.Amounts(Units.PerKelvin, 1), "at those temperatures, in the same order"),
    ];

    public static IReadOnlyList<WorkFunction> Table { get; } =
    [
        new()
        {
            Name = "fit-at-temperature",
            Family = PressFitWork.Family,
            Summary = "interference left when head and insert are hot or cold, each at its own temperature",
            Details =
                "A head that expands more than its insert lets go of it. Not above zero, the fit is nothing there.",
            Parameters =
            [
                new("interference", Length, "on the diameter, as measured"),
                new("diameter", Length, "where the parts touch"),
                new("measured-at", Temperature, "temperature of both parts when measured"),
                new("outer-at", Temperature, "temperature of the outer part"),
                new("inner-at", Temperature, "temperature of the inner part"),
                .. MaterialArguments.Expanding("outer"),
                .. MaterialArguments.Expanding("inner"),
            ],
            Source = Linear,
            Gives = WorkGives.Of(Dimension.OfLength, "interference left"),
            Examples =
            [
                new(
                    "interference=0.10 mm; diameter=38 mm; measured-at=20 degC; outer-at=120 degC; inner-at=120 degC; "
                        + "outer-material=aluminium-356; inner-material=steel-1020",
                    "interference left=0.06276 mm",
                    Callister
                ),
                new(
                    "interference=0.10 mm; diameter=38 mm; measured-at=20 degC; outer-at=120 degC; inner-at=120 degC; "
                        + "outer-material=grey-iron-g3000; inner-material=steel-1020",
                    "interference left=0.10114 mm",
                    Callister
                ),
            ],
            Work = InterferenceLeft,
        },
        new()
        {
            Name = "assembly-temperature",
            Family = PressFitWork.Family,
            Summary = "how much warmer the head, or colder the part, must be to go together",
            Details =
                "A constant expansion overstates shrinkage in the cold by up to a tenth at dry-ice temperature: use "
                + "assembly-temperature-by-table there. A head has its own limit of heat.",
            Parameters =
            [
                new("interference", Length, "on the diameter"),
                new("clearance", Length, "wanted to drop it in, on the diameter"),
                new("diameter", Length, "where the parts touch"),
                .. MaterialArguments.Expanding("part"),
            ],
            Source = Linear,
            Gives = WorkGives.Of(Dimension.OfTemperatureDifference, "difference"),
            Examples =
            [
                new(
                    "interference=0.144 mm; clearance=0.050 mm; diameter=50 mm; part-expansion=0.0000117 1/K",
                    "difference=331.62393162 K",
                    "Boresi and Schmidt, Advanced Mechanics of Materials, Ex. 11.3, p. 398, printed 331.62"
                ),
                new(
                    "interference=0.10 mm; clearance=0.02 mm; diameter=38 mm; part-material=aluminium-356",
                    "difference=146.878825 K",
                    Callister
                ),
            ],
            StemsFrom = [new("expansion", "part-expansion")],
            Work = Difference,
        },
        new()
        {
            Name = "length-change",
            Family = PressFitWork.Family,
            Summary = "how much a length grows or shrinks with temperature",
            Details = "With a constant expansion, so an upper bound in the cold.",
            Parameters =
            [
                new("length", Length, "at the first temperature"),
                new("start", Temperature, "first temperature"),
                new("end", Temperature, "second temperature"),
                .. MaterialArguments.Expanding("part"),
            ],
            Source = Linear,
            Gives = WorkGives.Of(Dimension.OfLength, "change"),
            Examples =
            [
                new(
                    "length=12.363 in; start=80 degF; end=-108 degF; part-expansion=0.00000647 1/degF-diff",
                    "change=-0.01503785868 in",
                    Kaw
                ),
                new(
                    "length=127 mm; start=20 degC; end=30 degC; part-material=aluminium-356",
                    "change=0.027305 mm",
                    Callister
                ),
            ],
            StemsFrom = [new("expansion", "part-expansion")],
            Work = Change,
        },
        new()
        {
            Name = "length-change-by-table",
            Family = PressFitWork.Family,
            Summary = "how much a length grows or shrinks when the expansion depends on temperature",
            Details =
                "The quadratic through the table by least squares, integrated. Nothing is said outside the table.",
            Parameters =
            [
                new("length", Length, "at the first temperature"),
                new("start", Temperature, "first temperature, within the table"),
                new("end", Temperature, "second temperature, within the table"),
                .. Curve,
            ],
            Source = Kaw,
            Gives = WorkGives.Of(Dimension.OfLength, "change"),
            Examples =
            [
                new(
                    $"length=12.363 in; start=80 degF; end=-108 degF; {KawTable}",
                    "change=-0.0137166664 in",
                    "table of the same notes; integral worked out apart from this program"
                ),
            ],
            Work = ChangeByTable,
        },
        new()
        {
            Name = "assembly-temperature-by-table",
            Family = PressFitWork.Family,
            Summary = "temperature to chill a part to, or heat a head to, when the expansion depends on temperature",
            Details = "As length-change-by-table, solved for the temperature. A need beyond the table is refused.",
            Parameters =
            [
                new("interference", Length, "on the diameter"),
                new("clearance", Length, "wanted to drop it in, on the diameter"),
                new("diameter", Length, "where the parts touch"),
                new("start", Temperature, "temperature at which the interference was measured"),
                new("way", new WorkTakes.Word(["chill", "heat"]), "chill what goes in, or heat what it goes into"),
                .. Curve,
            ],
            Source = Kaw,
            Gives = WorkGives.Of(Dimension.OfTemperature, "temperature"),
            Examples =
            [
                new(
                    "interference=0.0137166664 in; clearance=0 in; diameter=12.363 in; start=80 degF; way=chill; "
                        + KawTable,
                    "temperature=-108.0000 degF",
                    "the example of length-change-by-table the other way round"
                ),
            ],
            StemsFrom = [new("change", "interference and clearance")],
            Work = TemperatureByTable,
        },
    ];

    private static ShopResult<WorkAnswer> InterferenceLeft(WorkArguments all) =>
        MaterialArguments
            .Expansion(all, "outer")
            .Then(outer =>
                MaterialArguments
                    .Expansion(all, "inner")
                    .Then(inner =>
                    {
                        Exact outerWarming = all.Amount("outer-at") - all.Amount("measured-at");
                        Exact innerWarming = all.Amount("inner-at") - all.Amount("measured-at");
                        return ThermalFit
                            .InterferenceLeft(
                                all.Amount("interference"),
                                all.Amount("diameter"),
                                outer,
                                outerWarming,
                                inner,
                                innerWarming
                            )
                            .Then(left =>
                            {
                                Working working = new(all);
                                Know(working, all, "outer", outer);
                                Know(working, all, "inner", inner);
                                Warming(working, all, "outer warming", "{outer-at} - {measured-at}", outerWarming);
                                Warming(working, all, "inner warming", "{inner-at} - {measured-at}", innerWarming);
                                working.Step(
                                    "interference left",
                                    "{interference} - {diameter} x ({outer-expansion} x {outer-warming} - {inner-expansion} x {inner-warming})",
                                    left,
                                    Units.Millimetre,
                                    Units.Inch,
                                    rounding: Rounding.Down
                                );
                                return working.Done();
                            });
                    })
            );

    private static ShopResult<WorkAnswer> Difference(WorkArguments all) =>
        MaterialArguments
            .Expansion(all, "part")
            .Then(expansion =>
                ThermalFit
                    .TemperatureDifference(
                        all.Amount("interference"),
                        all.Amount("clearance"),
                        expansion,
                        all.Amount("diameter")
                    )
                    .Then(difference =>
                    {
                        Working working = new(all);
                        Know(working, all, "part", expansion);
                        working.Step(
                            "difference",
                            "({interference} + {clearance}) / ({part-expansion} x {diameter})",
                            difference,
                            Units.KelvinDifference,
                            Units.FahrenheitDifference,
                            rounding: Rounding.Up
                        );
                        return working.Done();
                    })
            );

    private static ShopResult<WorkAnswer> Change(WorkArguments all) =>
        MaterialArguments
            .Expansion(all, "part")
            .Then(expansion =>
            {
                Exact warming = all.Amount("end") - all.Amount("start");
                return ThermalFit
                    .LengthChange(all.Amount("length"), expansion, warming)
                    .Then(change =>
                    {
                        Working working = new(all);
                        Know(working, all, "part", expansion);
                        Warming(working, all, "warming", "{end} - {start}", warming);
                        working.Step(
                            "change",
                            "{length} x {part-expansion} x {warming}",
                            change,
                            Units.Millimetre,
                            Units.Inch
                        );
                        return working.Done();
                    });
            });

    private static ShopResult<WorkAnswer> ChangeByTable(WorkArguments all) =>
        CurveOf(all)
            .Then(curve =>
                curve
                    .LengthChangeMillimetres(
                        all.In("length", Units.Millimetre),
                        all.In("start", Units.Celsius),
                        all.In("end", Units.Celsius)
                    )
                    .Then(change =>
                    {
                        Working working = new(all);
                        working.Step(
                            "change",
                            "{length} x integral of the expansion from {start} to {end}",
                            change,
                            Units.Millimetre,
                            Units.Inch
                        );
                        return working.Done();
                    })
            );

    private static ShopResult<WorkAnswer> TemperatureByTable(WorkArguments all)
    {
        ShopFault? fault =
            Allowed.NotBelow0("interference", all.Amount("interference"))
            ?? Allowed.NotBelow0("clearance", all.Amount("clearance"))
            ?? Allowed.Above0("diameter", all.Amount("diameter"));
        if (fault is not null)
        {
            return fault;
        }

        double need = all.In("interference", Units.Millimetre) + all.In("clearance", Units.Millimetre);
        double change = all.Word("way") == "heat" ? need : -need;
        Unit shown = all.Entered("start").Unit;
        return CurveOf(all)
            .Then(curve =>
                curve.CelsiusForChange(all.In("diameter", Units.Millimetre), change, all.In("start", Units.Celsius))
            )
            .Then(celsius =>
            {
                Working working = new(all);
                working.Step(
                    "change",
                    "{interference} + {clearance}, {way}",
                    change,
                    Units.Millimetre,
                    Units.Inch,
                    isResult: false
                );
                working.Step(
                    "temperature",
                    "where {diameter} x integral of the expansion from {start} is {change}",
                    shown == Units.Fahrenheit ? (celsius * 1.8) + 32 : celsius,
                    shown,
                    shown,
                    rounding: all.Word("way") == "chill" ? Rounding.Down : Rounding.Up
                );
                return working.Done();
            });
    }

    private static ShopResult<ExpansionCurve> CurveOf(WorkArguments all)
    {
        IReadOnlyList<Exact> temperatures = all.Amounts("temperatures");
        IReadOnlyList<Exact> expansions = all.Amounts("expansions");
        return temperatures.Count != expansions.Count
            ? new ShopFault(
                "expansions",
                all.Texts["expansions"],
                FormattableString.Invariant($"give {temperatures.Count} of them, one for each temperature")
            )
            : ExpansionCurve.Of([
                .. temperatures.Zip(
                    expansions,
                    (at, expansion) => (at.In(Units.Celsius).ToDouble(), expansion.In(Units.PerKelvin).ToDouble())
                ),
            ]);
    }

    private static void Know(Working working, WorkArguments all, string part, Exact expansion) =>
        working.Know(
            $"{part}-expansion",
            MaterialArguments.Show(
                all,
                part,
                "expansion",
                expansion.In(Units.PerKelvin).ToDouble(),
                Units.PerKelvin.Symbol
            )
        );

    private static void Warming(Working working, WorkArguments all, string name, string formula, Exact warming)
    {
        Unit unit =
            all.Entered(all.Has("end") ? "end" : "measured-at").Unit == Units.Fahrenheit
                ? Units.FahrenheitDifference
                : Units.KelvinDifference;
        working.Step(name, formula, warming, unit, unit, isResult: false);
    }
}
