using ProcRunner.Practice.Operators;
using ProcRunner.Procedures;
using ProcRunner.Quantities;
using ProcRunner.Runs;
using static ProcRunner.Practice.Rehearsals.Figures;

namespace ProcRunner.Practice.Rehearsals;

/// <summary>A rehearsal's report as tables and plots, for whoever writes procedures: what came of the heads and why.</summary>
public static class RehearsalReport
{
    private const int MostRefusals = 20;
    private const int MostReadings = 15;
    private const int MostListed = 12;

    /// <summary>What it is a report of.</summary>
    public static string TitleOf(RehearsalResult result) =>
        $"{result.Binding.Plan.Procedure.Title} on {result.Binding.Plan.Head.Title}";

    /// <summary>How many heads, from where, with how much work.</summary>
    public static string HeadsOf(RehearsalResult result) =>
        $"{N(result.Tally.Heads)} practice heads, seed {result.Seed.ToString(System.Globalization.CultureInfo.InvariantCulture)}, {N(result.Tally.Entries)} entries. "
        + "Beside a share stands where it lies for any number of heads, 95 times of 100.";

    /// <summary>All of it.</summary>
    public static IEnumerable<ReportPart> Of(RehearsalResult result)
    {
        Tally tally = result.Tally;
        Plan plan = result.Binding.Plan;
        yield return Endings(tally);
        yield return Refusals(tally, plan);
        yield return Reasons(tally, plan);
        yield return Escapes(tally, result.Binding.Unheld);
        yield return Conformance(tally);
        if (tally.Escapes.Count > 0)
        {
            yield return Listed(tally, plan);
        }

        yield return Readings(tally, plan);
        if (result.Gauges.Count > 0)
        {
            yield return Gauges(result);
        }

        yield return Cuts(tally, plan);
        if (result.Approaches.Count > 0)
        {
            yield return Approaches(result);
        }

        yield return Spreads(tally, plan);
        foreach (((int Characteristic, string Kind) key, Distribution spread) in Plotted(tally, plan))
        {
            yield return new ReportPart.Plot(
                $"{NameOf(plan, key)} at the release, in truth",
                "",
                spread,
                UnitOf(plan, key.Characteristic)
            );
        }
    }

    /// <summary>The spreads worth a plot: of what cuts end in, at the release.</summary>
    public static IEnumerable<((int Characteristic, string Kind) Key, Distribution Spread)> Plotted(
        Tally tally,
        Plan plan
    )
    {
        HashSet<int> cut =
        [
            .. plan
                .Steps.Where(s => s.Work is StepWork.Cut)
                .Select(s => plan.CharacteristicIndex(s.Taking!.Characteristic)),
        ];
        return tally
            .Spreads.Where(s => cut.Contains(s.Key.Characteristic) && !s.Value.LimitsShift)
            .Select(s => (s.Key, s.Value));
    }

    private static IReadOnlyList<string> Row(string name, long part, long of)
    {
        Proportion share = new(part, of);
        return [name, N(part), Share(share), Range(share)];
    }

    private static ReportPart.Table Endings(Tally tally) =>
        new(
            "How the jobs end",
            "",
            ["", "heads", "share", "lies"],
            [
                Row("in spec the first time", tally.FirstTime, tally.Heads),
                Row("released after a refusal", tally.Released - tally.FirstTime, tally.Heads),
                Row("  of them with a concession", tally.Conceded, tally.Heads),
                Row("given up", tally.Scrapped, tally.Heads),
                Row("came to no end", tally.Stuck.Values.Sum(), tally.Heads),
            ]
        );

    private static ReportPart.Table Refusals(Tally tally, Plan plan) =>
        new(
            "Where heads are refused",
            "The share of heads with a result out of spec at the step, once or more often.",
            ["step", "heads", "share", "lies"],
            [
                .. tally
                    .RefusedAt.OrderByDescending(r => r.Value)
                    .ThenBy(r => r.Key)
                    .Take(MostRefusals)
                    .Select(r => Row(plan.Steps[r.Key].FullName, r.Value, tally.Heads)),
            ]
        );

    private static ReportPart.Table Reasons(Tally tally, Plan plan) =>
        new(
            "Where heads end without a release",
            tally.Scrapped + tally.Stuck.Count == 0 ? "None does." : "",
            ["step", "heads", "share", "lies"],
            [
                .. tally
                    .ScrappedAt.OrderByDescending(r => r.Value)
                    .ThenBy(r => r.Key)
                    .Select(r => Row($"given up at {plan.Steps[r.Key].FullName}", r.Value, tally.Heads)),
                .. tally
                    .Stuck.OrderByDescending(r => r.Value)
                    .Take(MostListed)
                    .Select(r => Row($"no end: {r.Key}", r.Value, tally.Heads)),
            ]
        );

    private static ReportPart.Table Escapes(Tally tally, IReadOnlyList<string> unheld) =>
        new(
            "Released and truly out of limits",
            "What a reading let pass because its gauge erred. A value that no gauge's error explains is a fault of the "
                + "procedure: nothing measured it again after it had changed."
                + (
                    unheld.Count == 0
                        ? ""
                        : $" Judged, but held against no truth, for the setup binds it to nothing: {string.Join(", ", unheld)}."
                ),
            ["", "count", "share", "lies"],
            [
                Row("released heads with one value or more", tally.HeadsWithEscape, tally.Released),
                Row("values, of all judged", tally.Escaped, tally.Judged),
                ["to be expected at most, from the readings", Number(tally.Expected, "#,0.0"), "", ""],
                ["that no gauge's error explains", N(tally.Unexplained), "", ""],
                ["conceded, and so not counted above", N(tally.ConcededOut), "", ""],
            ]
        );

    private static ReportPart.Table Conformance(Tally tally) =>
        new(
            "By the chance that a released value is in limits",
            "The chance follows from its reading and its gauge's uncertainty (JCGM 106:2012, 7.4), as if nothing else were "
                + "known. "
                + AgainstExpected(tally),
            ["chance", "values", "expected out", "out in truth"],
            [
                .. tally
                    .Conformance.Where(b => b.Values > 0)
                    .Select(b =>
                        (IReadOnlyList<string>)
                            [
                                $"{Number(b.From, "0.###")} to {Number(b.To, "0.###")}",
                                N(b.Values),
                                Number(b.Expected, "#,0.0"),
                                N(b.Out),
                            ]
                    ),
            ]
        );

    // Four deviations of a count that comes as chance has it (Poisson): its root.
    private static string AgainstExpected(Tally tally) =>
        tally.Escaped > tally.Expected + (4 * Math.Sqrt(tally.Expected)) + 1
            ? "MORE ARE OUT than that lets expect: a gauge slips (a turn off, not zeroed, dirt, a bent pilot), or what was read "
                + "changed afterwards."
            : "Of work that is aimed at the middle of its limits fewer are out than that lets expect.";

    private static ReportPart.Table Listed(Tally tally, Plan plan)
    {
        bool all = tally.Escapes.Count <= MostListed;
        string more = tally.Escapes.Count < tally.Escaped ? $"the first {N(tally.Escapes.Count)}" : "all";
        return new(
            all ? "These values" : $"The first {N(MostListed)} of these values",
            "Off: by how many standard uncertainties of its reading the truth lies off what was read."
                + (all ? "" : $" --json lists {more} of them."),
            ["value", "true", "read", "off", "chance"],
            [
                .. tally
                    .Escapes.Take(MostListed)
                    .Select(e =>
                    {
                        Unit unit = UnitOf(plan, e.Value.Characteristic);
                        string place = e.Value.Place.Length > 0 ? $", {e.Value.Place}" : "";
                        string fault = e.Value.IsUnexplained ? " NOT EXPLAINED" : "";
                        return (IReadOnlyList<string>)
                            [
                                $"head {N(e.Head)}: {plan.Procedure.Characteristics[e.Value.Characteristic].Name} at {plan.PositionName(e.Value.Position)}{place}{fault}",
                                In(e.Value.TrueNow, unit),
                                $"{In(e.Value.Shown, unit)} {unit.Symbol}".TrimEnd(),
                                Number(e.Value.Deviations, "0.0"),
                                Number(e.Conforms, "0.00"),
                            ];
                    }),
            ]
        );
    }

    private static ReportPart.Table Readings(Tally tally, Plan plan)
    {
        (string Name, ReadingCount Count)[] wrong =
        [
            .. tally
                .Readings.Select((count, i) => (plan.Procedure.Characteristics[i].Name, Count: count))
                .Where(r => r.Count.Wrong > 0)
                .OrderByDescending(r => r.Count.Wrong),
        ];
        long all = wrong.Sum(r => r.Count.Wrong);
        return new(
            "Which reading's uncertainty matters most",
            "Verdicts that a faultless gauge would have turned, at the moment of the reading. Refused for nothing is rework for "
                + "nothing; passed though out goes on down the job. A better gauge pays where the share is large.",
            ["reading", "judged", "refused for nothing", "passed though out", "share of all wrong"],
            [
                .. wrong
                    .Take(MostReadings)
                    .Select(r =>
                        (IReadOnlyList<string>)
                            [
                                r.Name,
                                N(r.Count.Judged),
                                N(r.Count.RefusedInLimits),
                                N(r.Count.PassedOut),
                                Share(new Proportion(r.Count.Wrong, all)),
                            ]
                    ),
            ]
        );
    }

    private static ReportPart.Table Gauges(RehearsalResult result) =>
        new(
            "With one gauge's error taken away",
            $"The same {N(result.Plain!.Heads)} heads again, each time with one kind of gauge that doesn't err; its resolution stays. "
                + "In spec the first time: the share, how much larger it is than with the gauges as they are, and whether that is "
                + "more than chance.",
            ["gauge", "first time", "change", "", "out in truth"],
            [
                [
                    "as they are",
                    Share(new Proportion(result.Plain.FirstTime, result.Plain.Heads)),
                    "",
                    "",
                    N(result.Plain.Escaped),
                ],
                .. result
                    .Gauges.OrderByDescending(g => result.ChangeTo(g.Without).Change)
                    .Select(g => (IReadOnlyList<string>)[g.Kind, .. Changed(result, g.Without), N(g.Without.Escaped)]),
            ]
        );

    private static IEnumerable<string> Changed(RehearsalResult result, Tally other)
    {
        PairedChange change = result.ChangeTo(other);
        string sign = change.Change >= 0 ? "+" : "";
        yield return Share(new Proportion(other.FirstTime, other.Heads));
        yield return change.Gained + change.Lost == 0
            ? "none"
            : $"{sign}{Number(100 * change.Change, "0.0")} ± {Number(100 * change.Error, "0.0")}";
        yield return change.Gained + change.Lost == 0 ? "not on one head"
        : change.Tells ? (change.Change > 0 ? "better" : "worse")
        : "can't tell apart";
    }

    private static ReportPart.Table Cuts(Tally tally, Plan plan) =>
        new(
            "Cuts deeper than their high limit, in truth",
            "Room: what is left to the high limit at the deepest place. Three deviations of it should fit into its mean.",
            ["cut", "cuts", "too deep", "lies", "room", "deviation"],
            [
                .. tally.CutsAt.Select(c =>
                {
                    Unit unit = UnitOf(plan, plan.CharacteristicIndex(plan.Steps[c.Key].Taking!.Characteristic));
                    return (IReadOnlyList<string>)[plan.Steps[c.Key].FullName, .. OfCuts(c.Value, unit)];
                }),
            ]
        );

    private static IEnumerable<string> OfCuts(CutCount cuts, Unit unit)
    {
        Proportion over = new(cuts.Over, cuts.Cuts);
        return [N(cuts.Cuts), Share(over), Range(over), SizeIn(cuts.Room, unit), SizeIn(cuts.Deviation, unit)];
    }

    private static ReportPart.Table Approaches(RehearsalResult result)
    {
        Plan plan = result.Binding.Plan;
        int settings = result.Approaches.DistinctBy(a => a.Setting).Count();
        return new(
            "Chance of overshoot, by approach allowance and gauge",
            $"{N(result.Plain!.Heads)} heads for each row, through the cuts that take their allowance from the setting "
                + $"{string.Join(", ", result.Approaches.Select(a => a.Setting).Distinct())}: cuts deeper than their high limit in "
                + "truth, held against the row marked as now.",
            ["allowance, gauge", "cuts", "too deep", "lies", "", "room", "deviation", "first time"],
            [
                .. result.Approaches.Select(a =>
                {
                    Unit unit = UnitOf(plan, plan.CharacteristicIndex(plan.Steps[a.Steps[0]].Taking!.Characteristic));
                    CutCount cuts = a.Cuts;
                    Proportion over = new(cuts.Over, cuts.Cuts);
                    string times = a.Times == 1 ? "as it is" : $"erring x {Number(a.Times, "0.#")}";
                    return (IReadOnlyList<string>)
                        [
                            $"{(settings > 1 ? a.Setting + " " : "")}{a.Allowance}, {a.Gauge} {times}",
                            N(cuts.Cuts),
                            Share(over),
                            Range(over),
                            Against(result, a, over),
                            SizeIn(cuts.Room, unit),
                            SizeIn(cuts.Deviation, unit),
                            Share(new Proportion(a.Tally.FirstTime, a.Tally.Heads)),
                        ];
                }),
            ]
        );
    }

    private static string Against(RehearsalResult result, ApproachEffect effect, Proportion over)
    {
        if (effect.IsNow)
        {
            return "now";
        }

        CutCount now = result
            .Approaches.First(a => a.IsNow && a.Setting == effect.Setting && a.Gauge == effect.Gauge)
            .Cuts;
        Proportion before = new(now.Over, now.Cuts);
        return !Proportion.Differ(over, before) ? "can't tell apart"
            : over.Share > before.Share ? "worse"
            : "better";
    }

    private static ReportPart.Table Spreads(Tally tally, Plan plan) =>
        new(
            "What is true at the release",
            "Cpk: the nearer limit's distance from the mean over three deviations (NIST/SEMATECH e-Handbook, 6.1.6); 1.33 is "
                + "commonly asked for. It assumes one normal spread.",
            ["", "mean", "deviation", "least", "most", "Cpk", "out"],
            [
                .. tally
                    .Spreads.Where(s => !s.Value.LimitsShift)
                    .Select(s =>
                    {
                        Unit unit = UnitOf(plan, s.Key.Characteristic);
                        return (IReadOnlyList<string>)
                            [
                                $"{NameOf(plan, s.Key)}, {unit.Symbol}".TrimEnd(',', ' '),
                                In(s.Value.Mean, unit),
                                SizeIn(s.Value.Deviation, unit),
                                In(s.Value.Least, unit),
                                In(s.Value.Most, unit),
                                s.Value.Capability is { } cpk ? Number(cpk, "F2") : "",
                                s.Value.Out > 0 ? Share(new Proportion(s.Value.Out, s.Value.Count)) : "0",
                            ];
                    }),
            ]
        );
}
