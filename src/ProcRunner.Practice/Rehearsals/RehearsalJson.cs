using System.Globalization;
using ProcRunner.Quantities;
using ProcRunner.Runs;
using ProcRunner.Trail;

namespace ProcRunner.Practice.Rehearsals;

/// <summary>A rehearsal for scripts. Counts are numbers, amounts are texts with their unit.</summary>
public static class RehearsalJson
{
    /// <summary>The answer.</summary>
    public static Json Of(RehearsalResult result)
    {
        Plan plan = result.Binding.Plan;
        Tally tally = result.Tally;
        return Json.MapOf(
            ("practice", new Json.Flag(true)),
            ("procedure", new Json.Text(plan.Procedure.Name)),
            ("head", new Json.Text(plan.Head.Name)),
            ("seed", new Json.Text(result.Seed.ToString(CultureInfo.InvariantCulture))),
            ("tally", Of(tally, plan)),
            (
                "spreads",
                Json.ListOf([
                    .. tally.Spreads.Where(s => !s.Value.LimitsShift).Select(s => (Json)Of(plan, s.Key, s.Value)),
                ])
            ),
            ("escapes", Json.ListOf([.. tally.Escapes.Select(e => (Json)Of(plan, e))])),
            (
                "gauges",
                Json.ListOf([
                    .. result.Gauges.Select(g =>
                        (Json)Json.MapOf(("without error of", new Json.Text(g.Kind)), ("tally", Of(g.Without, plan)))
                    ),
                ])
            ),
            (
                "approaches",
                Json.ListOf([
                    .. result.Approaches.Select(a =>
                        (Json)
                            Json.MapOf(
                                ("setting", new Json.Text(a.Setting)),
                                ("allowance", new Json.Text(a.Allowance.ToString())),
                                ("gauge", new Json.Text(a.Gauge)),
                                ("times", Number(a.Times)),
                                ("tally", Of(a.Tally, plan))
                            )
                    ),
                ])
            )
        );
    }

    private static Json.Map Of(Tally tally, Plan plan) =>
        Json.MapOf(
            ("heads", new Json.Whole(tally.Heads)),
            ("released", new Json.Whole(tally.Released)),
            ("first time", new Json.Whole(tally.FirstTime)),
            ("given up", new Json.Whole(tally.Scrapped)),
            ("no end", new Json.Whole(tally.Stuck.Values.Sum())),
            ("entries", new Json.Whole(tally.Entries)),
            ("judged", new Json.Whole(tally.Judged)),
            ("truly out", new Json.Whole(tally.Escaped)),
            ("heads truly out", new Json.Whole(tally.HeadsWithEscape)),
            ("expected out", Number(tally.Expected)),
            ("not explained", new Json.Whole(tally.Unexplained)),
            ("cuts", new Json.Whole(tally.Cuts)),
            ("cuts over", new Json.Whole(tally.CutsOver)),
            (
                "refused",
                Json.ListOf([
                    .. tally
                        .RefusedAt.OrderBy(r => r.Key)
                        .Select(r =>
                            (Json)
                                Json.MapOf(
                                    ("step", new Json.Text(plan.Steps[r.Key].FullName)),
                                    ("heads", new Json.Whole(r.Value))
                                )
                        ),
                ])
            )
        );

    private static Json.Map Of(Plan plan, (int Characteristic, string Kind) key, Distribution spread)
    {
        Unit unit = RehearsalLines.UnitOf(plan, key.Characteristic);
        return Json.MapOf(
            ("of", new Json.Text(plan.Procedure.Characteristics[key.Characteristic].Name)),
            ("kind", new Json.Text(key.Kind)),
            ("values", new Json.Whole(spread.Count)),
            ("out", new Json.Whole(spread.Out)),
            ("mean", new Json.Text($"{RehearsalLines.In(spread.Mean, unit)} {unit}")),
            ("deviation", new Json.Text($"{RehearsalLines.SizeIn(spread.Deviation, unit)} {unit}")),
            ("least", new Json.Text($"{RehearsalLines.In(spread.Least, unit)} {unit}")),
            ("most", new Json.Text($"{RehearsalLines.In(spread.Most, unit)} {unit}")),
            ("cpk", spread.Capability is { } capability ? Number(capability) : Json.Nothing),
            ("bars from", new Json.Text($"{RehearsalLines.In(spread.From, unit)} {unit}")),
            ("bars to", new Json.Text($"{RehearsalLines.In(spread.To, unit)} {unit}")),
            ("bars", Json.ListOf([.. spread.Histogram.Select(b => (Json)new Json.Whole(b))]))
        );
    }

    private static Json.Map Of(Plan plan, Escape escape)
    {
        Unit unit = RehearsalLines.UnitOf(plan, escape.Value.Characteristic);
        return Json.MapOf(
            ("head", new Json.Whole(escape.Head)),
            ("of", new Json.Text(plan.Procedure.Characteristics[escape.Value.Characteristic].Name)),
            ("at", new Json.Text(plan.PositionName(escape.Value.Position))),
            ("place", new Json.Text(escape.Value.Place)),
            ("true", new Json.Text($"{RehearsalLines.In(escape.Value.TrueNow, unit)} {unit}")),
            ("read", new Json.Text($"{RehearsalLines.In(escape.Value.Shown, unit)} {unit}")),
            ("conforms", Number(escape.Conforms)),
            ("explained", new Json.Flag(!escape.Value.IsUnexplained))
        );
    }

    private static Json.Text Number(double value) => new(value.ToString("0.######", CultureInfo.InvariantCulture));
}
