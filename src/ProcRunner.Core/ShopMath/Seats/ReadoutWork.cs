using ProcRunner.Quantities;
using ProcRunner.Shop;

namespace ProcRunner.ShopMath;

/// <summary>The table of what to set a depth readout to and which number to work to.</summary>
internal static class ReadoutWork
{
    private const string Source =
        "depth = travel x cos(guide angle), plane geometry; a readout in diameters shows twice the travel";

    private const int MostPlaces = 9;
    private const double Reach = 10_000;

    private static readonly string[] Lengths = ["measured", "aim", "shown", "allowance", "uncertainty", "step"];
    private static readonly WorkTakes Length = new WorkTakes.Amount(Units.Inch);
    private static readonly WorkParameter Measured = new("measured", Length, "depth measured square to the deck, now");
    private static readonly WorkParameter Aim = new("aim", Length, "depth to work to");

    private static readonly WorkParameter[] SetUp =
    [
        new("step", Length, "smallest step of the readout, in the readout's unit"),
        new("grows", new WorkTakes.Word(["deeper", "shallower"]), "which way the number grows"),
        new("shows", new WorkTakes.Word(["travel", "diameter"]), "whether it shows the tool's travel or twice that"),
        new(
            "guide-angle",
            new WorkTakes.Amount(Units.Degree),
            "guide axis to the deck's normal; without it 0",
            IsOptional: true
        ),
    ];

    public static IReadOnlyList<WorkFunction> Table { get; } =
    [
        new()
        {
            Name = "readout-target",
            Family = "seats",
            Summary = "what to set the readout to at touch-off, and the number to work to",
            Details =
                "With the cutter touching the seat whose depth was measured. zeroed: it is set to 0 there, on an absolute "
                + "readout; step: it counts from its last reset; preset: it is set to read depth itself. The target is rounded "
                + "shallow to the readout's step. Without the word the readout is zeroed.",
            Parameters =
            [
                Measured,
                Aim,
                .. SetUp,
                new(
                    "mode",
                    new WorkTakes.Word(["zeroed", "preset", "step"]),
                    "how it is set at touch-off; without it zeroed",
                    IsOptional: true
                ),
            ],
            Source = Source,
            Gives = WorkGives.Of(Dimension.OfLength, "set to", "travel", "target"),
            Examples =
            [
                new(
                    "measured=0.023 in; aim=0.052 in; step=0.0005 in; grows=deeper; shows=travel",
                    "set to=0.0000 in; target=0.0290 in",
                    "0.052 - 0.023 by hand"
                ),
                new(
                    "measured=0.023 in; aim=0.052 in; step=0.0005 in; grows=shallower; shows=diameter; mode=preset",
                    "set to=-0.0460 in; target=-0.1040 in",
                    "twice the depth, growing upward, by hand"
                ),
                new(
                    "measured=0.60 mm; aim=0.85 mm; step=0.005 mm; grows=deeper; shows=travel; guide-angle=20 deg",
                    "travel=0.266044 mm; target=0.265 mm",
                    "0.25 / cos 20 deg = 0.266044, shallow to the step"
                ),
            ],
            Work = Target,
        },
        new()
        {
            Name = "readout-approach",
            Family = "seats",
            Summary = "where to stop short and measure, and the number to work to after that",
            Details =
                "Stops short by the largest of the shop's allowance, the uncertainty and one step. If less than that is left, "
                + "the approach is skipped. Past the aim nothing more is cut.",
            Parameters =
            [
                Measured,
                Aim,
                new("shown", Length, "number on the readout at that depth; in step mode 0 after the reset"),
                new("allowance", Length, "how much the shop leaves before the last measurement"),
                new("uncertainty", Length, "combined, of gauge and readout; without it 0", IsOptional: true),
                .. SetUp,
            ],
            Source = Source,
            Gives =
            [
                .. WorkGives.Of(Dimension.OfLength, "travel", "stop short by", "approach", "target"),
                .. WorkGives.Words("advice"),
            ],
            Examples =
            [
                new(
                    "measured=0.023 in; aim=0.052 in; shown=0 in; allowance=0.005 in; step=0.0005 in; grows=deeper; shows=travel",
                    "stop short by=0.005 in; approach=0.0240 in; target=0.0290 in",
                    "0.052 - 0.023 - 0.005 by hand"
                ),
                new(
                    "measured=1.20 mm; aim=1.25 mm; shown=0.58 mm; allowance=0.10 mm; step=0.005 mm; grows=deeper; shows=travel",
                    "target=0.630 mm; advice=inch in: less is left than the allowance",
                    "0.58 + 1.25 - 1.20 by hand"
                ),
            ],
            Work = Approach,
        },
    ];

    private static ShopResult<WorkAnswer> Target(WorkArguments all) =>
        Maths(all)
            .Then(maths =>
            {
                Exact measured = all.Amount("measured");
                Rational travel = maths.TravelFor(measured, all.Amount("aim"));
                Quantity set = maths.NumberToSet(measured);
                Unit unit = maths.Readout.Unit;
                Working working = new(all);
                working.Step("set to", SetFormula(maths), Exact.Of(set), unit, unit);
                working.Step("travel", Along(maths, "({aim} - {measured})"), Of(travel, unit), unit, unit);
                working.Step(
                    "target",
                    NumberFormula(maths, "{set-to}"),
                    Exact.Of(maths.NumberAt(set, travel)),
                    unit,
                    unit
                );
                return working.Done();
            });

    private static ShopResult<WorkAnswer> Approach(WorkArguments all) =>
        Maths(all)
            .Then(maths =>
            {
                Unit unit = maths.Readout.Unit;
                if (!TryShown(all, unit, out Quantity shown))
                {
                    return new ShopFault("shown", all.Entered("shown").ToString(), $"give it in {unit.Symbol}");
                }

                Rational travel = maths.TravelFor(all.Amount("measured"), all.Amount("aim"));
                Rational stopShort = Largest(
                    all.Amount("allowance").In(unit),
                    all.Has("uncertainty") ? all.Amount("uncertainty").In(unit) : Rational.Zero,
                    maths.StepOfTravel
                );
                Working working = new(all);
                working.Step("travel", Along(maths, "({aim} - {measured})"), Of(travel, unit), unit, unit);
                if (travel.Sign <= 0)
                {
                    working.Say("advice", "{travel} against 0", "cut no more: the aim is reached");
                    return working.Done();
                }

                string largest = all.Has("uncertainty") ? "{allowance}, {uncertainty}" : "{allowance}";
                working.Step("stop short by", $"largest of {largest}, one step", Of(stopShort, unit), unit, unit);
                if (travel > stopShort)
                {
                    working.Step(
                        "approach",
                        NumberFormula(maths, "{shown}", "({travel} - {stop-short-by})"),
                        Exact.Of(maths.NumberAt(shown, travel - stopShort)),
                        unit,
                        unit
                    );
                }

                working.Step(
                    "target",
                    NumberFormula(maths, "{shown}"),
                    Exact.Of(maths.NumberAt(shown, travel)),
                    unit,
                    unit
                );
                working.Say(
                    "advice",
                    "{travel} against {stop-short-by}",
                    travel > stopShort ? "stop at the approach and measure" : "inch in: less is left than the allowance"
                );
                return working.Done();
            });

    // A readout shows a handful of places; more, or lengths of no machine, would not fit its number.
    private static ShopFault? OnReadout(Quantity step) =>
        step.Value.Scale <= MostPlaces
            ? null
            : new ShopFault("step", step.ToString(), $"give it with {MostPlaces} places at most");

    private static ShopFault? OnMachine(WorkArguments all, string name) =>
        all.Has(name) ? Allowed.Within(name, all.In(name, Units.Millimetre), -Reach, Reach, "mm") : null;

    // The number shown and the step are of one display, so in one unit.
    private static bool TryShown(WorkArguments all, Unit unit, out Quantity shown) =>
        all.Entered("shown").TryConvert(unit, all.Entered("shown").Value.Scale, Rounding.Nearest, out shown)
        && shown.SameAs(all.Entered("shown"));

    private static ShopResult<ReadoutMaths> Maths(WorkArguments all)
    {
        Quantity step = all.Entered("step");
        decimal guide = all.Has("guide-angle") ? GuideDegrees(all) : 0;
        return
            (
                Allowed.Above0("step", all.Amount("step"))
                ?? OnReadout(step)
                ?? Lengths.Select(name => OnMachine(all, name)).FirstOrDefault(off => off is not null)
                ?? AllowedAngles.OfGuide("guide angle", (double)guide)
            )
                is { } fault
            ? fault
            : new ReadoutMaths(
                new Readout(
                    step.Unit,
                    step.Value,
                    all.Word("grows") == "deeper",
                    all.Word("shows") == "diameter",
                    all.Word("mode") == "step",
                    all.Word("mode") == "preset"
                ),
                guide
            );
    }

    private static decimal GuideDegrees(WorkArguments all) =>
        all.Amount("guide-angle").In(Units.Degree).TryRound(12, Rounding.Nearest, out decimal degrees)
            ? degrees
            : decimal.MaxValue;

    private static string SetFormula(ReadoutMaths maths) =>
        !maths.Readout.Preset
            ? "0 at touch-off"
            : $"{Sign(maths)}{Times(maths)}{Along(maths, "{measured}")}, to the readout's step";

    private static string NumberFormula(ReadoutMaths maths, string from, string travel = "{travel}") =>
        $"{from} {(maths.Readout.GrowsDeeper ? "+" : "-")} {Times(maths)}{travel}, shallow to the readout's step";

    private static string Sign(ReadoutMaths maths) => maths.Readout.GrowsDeeper ? "" : "-";

    private static string Times(ReadoutMaths maths) => maths.Readout.ShowsDiameter ? "2 x " : "";

    private static string Along(ReadoutMaths maths, string depth) =>
        maths.GuideAngle == 0 ? depth.Trim('(', ')') : $"{depth} / cos({{guide-angle}})";

    private static Exact Of(Rational inUnit, Unit unit) => new(unit.ToBase(inUnit), unit.Dimension);

    private static Rational Largest(params ReadOnlySpan<Rational> all)
    {
        Rational largest = all[0];
        foreach (Rational one in all)
        {
            largest = one > largest ? one : largest;
        }

        return largest;
    }
}
