using System.Globalization;
using ProcRunner.Practice.Operators;
using ProcRunner.Quantities;
using ProcRunner.Runs;
using ProcRunner.Trail;

namespace ProcRunner.Practice.Rehearsals;

/// <summary>A rehearsal for scripts. Counts are numbers, amounts are texts with their unit, other figures texts.</summary>
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
            ("conformance", List(tally.Conformance, Of)),
            (
                "readings",
                List(
                    tally.Readings.Select((count, i) => (Index: i, Count: count)).Where(r => r.Count.Judged > 0),
                    r => Of(plan.Procedure.Characteristics[r.Index].Name, r.Count)
                )
            ),
            ("spreads", List(tally.Spreads.Where(s => !s.Value.LimitsShift), s => Of(plan, s.Key, s.Value))),
            ("escapes", List(tally.Escapes, e => Of(plan, e))),
            (
                "gauges",
                List(
                    result.Gauges,
                    g =>
                        Json.MapOf(
                            ("without error of", new Json.Text(g.Kind)),
                            ("first time", Of(result.ChangeTo(g.Without))),
                            ("tally", Of(g.Without, plan))
                        )
                )
            ),
            ("approaches", List(result.Approaches, a => Of(a, plan)))
        );
    }

    private static Json.List List<T>(IEnumerable<T> items, Func<T, Json> of) => Json.ListOf([.. items.Select(of)]);

    private static Json.Map Of(ApproachEffect effect, Plan plan)
    {
        CutCount cuts = effect.Cuts;
        Unit unit = Figures.UnitOf(plan, plan.CharacteristicIndex(plan.Steps[effect.Steps[0]].Taking!.Characteristic));
        return Json.MapOf(
            ("setting", new Json.Text(effect.Setting)),
            ("allowance", new Json.Text(effect.Allowance.ToString())),
            ("gauge", new Json.Text(effect.Gauge)),
            ("times", Number(effect.Times)),
            ("now", new Json.Flag(effect.IsNow)),
            ("cuts", Of(cuts, unit)),
            ("tally", Of(effect.Tally, plan))
        );
    }

    private static Json.Map Of(CutCount cuts, Unit unit) =>
        Json.MapOf(
            ("cuts", new Json.Whole(cuts.Cuts)),
            ("too deep", new Json.Whole(cuts.Over)),
            ("too deep lies", Lies(new Proportion(cuts.Over, cuts.Cuts))),
            ("room", new Json.Text($"{Figures.SizeIn(cuts.Room, unit)} {unit}")),
            ("deviation", new Json.Text($"{Figures.SizeIn(cuts.Deviation, unit)} {unit}"))
        );

    private static Json.Map Of(Tally tally, Plan plan) =>
        Json.MapOf(
            ("heads", new Json.Whole(tally.Heads)),
            ("released", new Json.Whole(tally.Released)),
            ("first time", new Json.Whole(tally.FirstTime)),
            ("first time lies", Lies(new Proportion(tally.FirstTime, tally.Heads))),
            ("conceded", new Json.Whole(tally.Conceded)),
            ("given up", new Json.Whole(tally.Scrapped)),
            ("no end", new Json.Whole(tally.Stuck.Values.Sum())),
            ("entries", new Json.Whole(tally.Entries)),
            ("judged", new Json.Whole(tally.Judged)),
            ("truly out", new Json.Whole(tally.Escaped)),
            ("heads truly out", new Json.Whole(tally.HeadsWithEscape)),
            ("conceded and truly out", new Json.Whole(tally.ConcededOut)),
            ("expected out", Number(tally.Expected)),
            ("not explained", new Json.Whole(tally.Unexplained)),
            ("cuts", new Json.Whole(tally.Cuts)),
            ("cuts over", new Json.Whole(tally.CutsOver)),
            ("refused", Steps(plan, tally.RefusedAt)),
            ("given up at", Steps(plan, tally.ScrappedAt))
        );

    private static Json.List Steps(Plan plan, IReadOnlyDictionary<int, long> at) =>
        List(
            at.OrderBy(r => r.Key),
            r => Json.MapOf(("step", new Json.Text(plan.Steps[r.Key].FullName)), ("heads", new Json.Whole(r.Value)))
        );

    private static Json.Map Of(ConformanceBin bin) =>
        Json.MapOf(
            ("from", Number(bin.From)),
            ("to", Number(bin.To)),
            ("values", new Json.Whole(bin.Values)),
            ("expected out", Number(bin.Expected)),
            ("truly out", new Json.Whole(bin.Out))
        );

    private static Json.Map Of(string reading, ReadingCount count) =>
        Json.MapOf(
            ("reading", new Json.Text(reading)),
            ("judged", new Json.Whole(count.Judged)),
            ("refused", new Json.Whole(count.Refused)),
            ("refused in limits", new Json.Whole(count.RefusedInLimits)),
            ("passed out", new Json.Whole(count.PassedOut))
        );

    private static Json.Map Of(PairedChange change) =>
        Json.MapOf(
            ("gained", new Json.Whole(change.Gained)),
            ("lost", new Json.Whole(change.Lost)),
            ("heads", new Json.Whole(change.Heads)),
            ("change", Number(change.Change)),
            ("error", Number(change.Error)),
            ("tells", new Json.Flag(change.Tells))
        );

    private static Json.Map Of(Plan plan, (int Characteristic, string Kind) key, Distribution spread)
    {
        Unit unit = Figures.UnitOf(plan, key.Characteristic);
        return Json.MapOf(
            ("of", new Json.Text(plan.Procedure.Characteristics[key.Characteristic].Name)),
            ("kind", new Json.Text(key.Kind)),
            ("values", new Json.Whole(spread.Count)),
            ("out", new Json.Whole(spread.Out)),
            ("low", Limit(spread.Low, unit)),
            ("high", Limit(spread.High, unit)),
            ("mean", new Json.Text($"{Figures.In(spread.Mean, unit)} {unit}")),
            ("deviation", new Json.Text($"{Figures.SizeIn(spread.Deviation, unit)} {unit}")),
            ("least", new Json.Text($"{Figures.In(spread.Least, unit)} {unit}")),
            ("most", new Json.Text($"{Figures.In(spread.Most, unit)} {unit}")),
            ("cpk", spread.Capability is { } capability ? Number(capability) : Json.Nothing),
            ("bars from", new Json.Text($"{Figures.In(spread.From, unit)} {unit}")),
            ("bars to", new Json.Text($"{Figures.In(spread.To, unit)} {unit}")),
            ("bars", List(spread.Histogram, b => new Json.Whole(b)))
        );
    }

    private static Json.Map Of(Plan plan, Escape escape)
    {
        Unit unit = Figures.UnitOf(plan, escape.Value.Characteristic);
        return Json.MapOf(
            ("head", new Json.Whole(escape.Head)),
            ("of", new Json.Text(plan.Procedure.Characteristics[escape.Value.Characteristic].Name)),
            ("at", new Json.Text(plan.PositionName(escape.Value.Position))),
            ("place", new Json.Text(escape.Value.Place)),
            ("true", new Json.Text($"{Figures.In(escape.Value.TrueNow, unit)} {unit}")),
            ("read", new Json.Text($"{Figures.In(escape.Value.Shown, unit)} {unit}")),
            ("off", Number(escape.Value.Deviations)),
            ("conforms", Number(escape.Conforms)),
            ("explained", new Json.Flag(!escape.Value.IsUnexplained))
        );
    }

    private static Json Limit(double? limit, Unit unit) =>
        limit is { } value ? new Json.Text($"{Figures.In(value, unit)} {unit}") : Json.Nothing;

    private static Json.List Lies(Proportion share) =>
        Json.ListOf([Number(share.Interval.Low), Number(share.Interval.High)]);

    private static Json.Text Number(double value) => new(value.ToString("0.######", CultureInfo.InvariantCulture));
}
