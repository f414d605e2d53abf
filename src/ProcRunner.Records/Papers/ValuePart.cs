using ProcRunner.Procedures;
using ProcRunner.Records.Story;
using ProcRunner.Runs;

namespace ProcRunner.Records.Papers;

/// <summary>Every value, as found and final, against its limits; findings and decisions.</summary>
internal static class ValuePart
{
    /// <summary>Its pieces.</summary>
    public static IEnumerable<Block> Of(BuildRecord record) =>
        [.. Values(record), .. RulesOfThumb(record), .. Chosen(record)];

    /// <summary>Findings, decisions, other heads and steps left out.</summary>
    public static IEnumerable<Block> Said(BuildRecord record) => Findings(record);

    private static IEnumerable<Block> Values(BuildRecord record)
    {
        yield return new Block.Heading(2, "Values");
        yield return new Block.Paragraph(
            "The latest value of each reading. Limits are inclusive. Who gave a limit stands in brackets: maker, standard, shop or rule of thumb. A value without limits is recorded only."
        );
        if (record.Values.Any(v => v.Before.Length > 0))
        {
            yield return new Block.Paragraph(
                "\"Measured before\" stands where the face that a value was measured from was cut later and nobody can measure it from the new one, as a counterbore once its insert stands in it. From the new face it is less by that cut; a part that would have stood out there was cut level with it.",
                IsQuiet: true
            );
        }

        foreach (IGrouping<string, FinalValue> position in record.Values.GroupBy(v => v.Position))
        {
            yield return new Block.Heading(3, position.Key == "head" ? "The head" : $"Valve {position.Key}");
            if (Course(record, position.Key) is { Count: > 0 } course)
            {
                yield return new Block.Facts(course);
            }

            yield return new Block.Table(
                position.Key == "head" ? "Values of the head" : $"Values at {position.Key}",
                [
                    ("reading", 4),
                    ("as found", 2),
                    ("final", 7),
                    ("low / aim / high (from)", 7),
                    ("standing", 3),
                    ("taken", 8),
                ],
                [.. position.Select(Value)]
            );
            Earlier[] earlier = [.. record.Earlier.Where(e => e.Position == position.Key)];
            if (earlier.Any(e => !e.IsSame))
            {
                yield return Overtaken(position.Key, [.. earlier.Where(e => !e.IsSame)]);
            }

            if (earlier.Any(e => e.IsSame))
            {
                yield return TheSame(position.Key, [.. earlier.Where(e => e.IsSame)]);
            }
        }
    }

    // What else is known of a place, so that its story stands in one spot.
    private static IReadOnlyList<(string Label, string Text)> Course(BuildRecord record, string position)
    {
        (string Label, IEnumerable<string> Texts)[] lines =
        [
            (
                "Decided",
                record
                    .Decisions.Where(d => d.Position == position)
                    .Select(d =>
                        $"{d.About}: {d.Text}{(d.Why.Length > 0 ? $", {d.Why}" : "")} (entry {PaperMaker.Number(d.By.Entry)})"
                    )
            ),
            (
                "Found",
                record
                    .Findings.Where(f => f.Position == position)
                    .Select(f => $"{f.About}: {f.Text} (entry {PaperMaker.Number(f.By.Entry)})")
            ),
            (
                "Fitted",
                record
                    .Parts.Where(p => p.Position == position)
                    .Select(p =>
                        $"{p.Part} {p.Number}, lot {p.Lot}{(p.IsInPlace ? "" : ", replaced again later")} (entry {PaperMaker.Number(p.By.Entry)})"
                    )
            ),
            (
                "Cut",
                record
                    .Cuts.Where(c => c.Position == position)
                    .Select(c =>
                        $"{c.What}: {(c.Ended.Length > 0 ? c.Ended : "not ended")} (from entry {PaperMaker.Number(c.By.Entry)})"
                    )
            ),
            (
                "Out of spec",
                record
                    .Cases.Select((c, i) => (Case: c, Number: i + 1))
                    .Where(c => c.Case.Position == position)
                    .Select(c => $"case {PaperMaker.Number(c.Number)}, {c.Case.Step}: {c.Case.Fault}")
            ),
        ];
        return [.. lines.Select(l => (l.Label, string.Join("; ", l.Texts))).Where(l => l.Item2.Length > 0)];
    }

    private static Block.Table Overtaken(string position, Earlier[] earlier) =>
        new(
            position == "head"
                ? "What stood before, of the head, in the order in which it stopped holding"
                : $"What stood before, at {position}, in the order in which it stopped holding",
            [("about", 4), ("was", 6), ("no longer held because", 4), ("then", 6)],
            [
                .. earlier.Select(e => new Row([
                    e.About,
                    $"{e.Was} ({PaperMaker.WhoShort(e.WasBy)})",
                    $"{e.Cause} (entry {PaperMaker.Number(e.Until.Entry)})",
                    $"{e.Then} ({PaperMaker.WhoShort(e.ThenBy)})",
                ])),
            ]
        );

    // The check was made once more and found what it had found: nothing stopped being true.
    private static Block.Table TheSame(string position, Earlier[] earlier) =>
        new(
            position == "head"
                ? "Taken again, of the head, and came out the same"
                : $"Taken again, at {position}, and came out the same",
            [("about", 4), ("each time", 6), ("why again", 4), ("then and again", 6)],
            [
                .. earlier.Select(e => new Row([
                    e.About,
                    e.Was,
                    $"{e.Cause} (entry {PaperMaker.Number(e.Until.Entry)})",
                    PaperMaker.Entries([e.WasBy, e.ThenBy]),
                ])),
            ]
        );

    private static Row Value(FinalValue value)
    {
        Judgement judged = value.Record.Judgement;
        string found = value.Record.AsFound is { } was ? was.ToDisplay() : "";
        bool isAsFound = value.Standing == ValueStanding.AsFound;
        string now = $"{value.Record.Value.ToDisplay()}{Telling.Places(value.Record.Places)}";
        string limits = Telling.Window(judged);
        string taken =
            value.WorkedOut ? "worked out"
            : value.Gauge.Length > 0 ? $"gauge {value.Gauge}"
            : "no gauge kept";
        return new Row(
            [
                value.Name,
                isAsFound && found.Length == 0 ? now : found,
                isAsFound ? "" : now,
                limits.Length > 0
                    ? $"{limits} ({WorkPart.OriginOf(judged)}{(value.LimitNote.Length > 0 ? $": {value.LimitNote}" : "")})"
                    : "",
                value.Standing is ValueStanding.Out or ValueStanding.Conceded or ValueStanding.Recheck
                    ? value.Verdict.ToUpperInvariant()
                    : value.Verdict,
                $"{value.Step}; {taken}; {PaperMaker.WhoShort(value.By)}",
            ],
            NeedsAttention: value.IsUnderSince
                || value.Standing is ValueStanding.Out or ValueStanding.Conceded or ValueStanding.Recheck
        );
    }

    private static IEnumerable<Block> RulesOfThumb(BuildRecord record)
    {
        string[] names = [.. record.Values.Where(FrontPage.IsRuleOfThumb).Select(v => v.Name).Distinct()];
        if (names.Length > 0)
        {
            yield return new Block.Notice(
                "Limits that are rules of thumb",
                [
                    $"{string.Join(", ", names)}: these limits are common practice; neither a maker nor a standard gave them. A maker's limit takes their place where there is one.",
                ],
                NeedsAttention: false
            );
        }
    }

    private static IEnumerable<Block> Chosen(BuildRecord record)
    {
        if (record.ChosenLimits.Count > 0)
        {
            yield return new Block.Table(
                "Limits that nobody knew, chosen in this job",
                [("reading", 3), ("at", 1), ("limits", 4), ("why", 4), ("by", 3)],
                [
                    .. record.ChosenLimits.Select(c => new Row([
                        c.Limit.Characteristic,
                        c.Position.Length > 0 ? c.Position : "all",
                        Telling.Window(c.Limit.Low, c.Limit.Aim, c.Limit.High),
                        c.Limit.Reason,
                        PaperMaker.WhoShort(c.By),
                    ])),
                ]
            );
        }
    }

    // With the reason that was given, or else the rule by which the procedure has it decided.
    private static IEnumerable<Row> Decided(BuildRecord record) =>
        record
            .Decisions.GroupBy(d => (d.About, d.Text, d.Why))
            .Select(g => new Row([
                g.Key.About,
                PaperMaker.Places([.. g.Select(d => d.Position)], record),
                g.Key.Text,
                g.Key.Why.Length > 0 ? g.Key.Why : RuleFor(record, g.Key.About),
                PaperMaker.Entries([.. g.Select(d => d.By)]),
            ]));

    private static string RuleFor(BuildRecord record, string subject) =>
        record
            .Plan.Procedure.Steps.Where(s => s.Work is StepWork.Decide decide && decide.Subject == subject)
            .Select(s => s.Say)
            .FirstOrDefault(say => say.Length > 0)
            is { } rule
            ? $"no reason noted; the procedure's rule: {rule}"
            : "no reason noted";

    private static IEnumerable<Block> Findings(BuildRecord record)
    {
        if (record.Findings.Count > 0)
        {
            yield return new Block.Heading(2, "Findings and decisions");
            yield return new Block.Table(
                "What was inspected and found",
                [("inspected", 5), ("at", 2), ("found", 4), ("by", 4)],
                [.. WorkPart.Said(record.Findings, record, ifBad: ": OUT OF SPEC")]
            );
        }

        if (record.Decisions.Count > 0)
        {
            yield return new Block.Table(
                "What was decided, and why",
                [("about", 2), ("at", 3), ("decided", 3), ("why", 7), ("by", 3)],
                [.. Decided(record)]
            );
        }

        if (record.OtherHeads.Count > 0)
        {
            yield return new Block.Table(
                "Other heads: the earlier job, and the heads of this engine side by side",
                [("what", 5), ("head", 2), ("how", 5), ("by", 4)],
                [
                    .. record.OtherHeads.Select(o => new Row(
                        [o.About, o.Position, o.Text, PaperMaker.WhoShort(o.By)],
                        o.IsBad
                    )),
                ]
            );
        }

        if (record.LeftOut.Count > 0)
        {
            yield return new Block.Table(
                "Steps that were left out",
                [("step", 5), ("at", 2), ("why", 4), ("by", 4)],
                [.. WorkPart.Said(record.LeftOut, record)]
            );
        }
    }
}
