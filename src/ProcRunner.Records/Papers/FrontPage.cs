using ProcRunner.Procedures;
using ProcRunner.Records.Drawings;
using ProcRunner.Records.Story;
using ProcRunner.Runs;

namespace ProcRunner.Records.Papers;

/// <summary>The page that a customer understands.</summary>
internal static class FrontPage
{
    /// <summary>Its pieces.</summary>
    public static IEnumerable<Block> Of(BuildRecord record)
    {
        yield return Identity(record);
        if (Notable(record) is { } notable)
        {
            yield return notable;
        }

        yield return new Block.Heading(2, "In short");
        yield return new Block.Bullets([.. InShort(record)]);
        IReadOnlyList<Drawing> plans = HeadPlan.Of(record);
        if (HeadPlan.IsForTheFront(plans))
        {
            yield return new Block.Picture(plans[0]);
        }

        if (plans.Count > 0)
        {
            string where = HeadPlan.IsForTheFront(plans) ? "" : "The plan of the head stands under Drawings. ";
            yield return new Block.Paragraph(
                $"{where}Front at the left; 1I is the intake valve of cylinder 1, 1E its exhaust. Depth (recession): how far the closed valve lies below the deck, the face that meets the block. Clear: least clearance of the stem in its guide. Runout: how far the seat wanders round the guide. Vacuum: what the closed port held, in inHg; more is tighter. Limits stand under Values.",
                IsQuiet: true
            );
        }

        if (record.Proof.Code is { } code)
        {
            yield return new Block.Code(
                code.ToString(),
                QrDrawing.Of(code.ToString()),
                $"Proof code. The shop finds this record by it and checks that nothing was changed since: procrunner verify --code {code}"
            );
        }

        if (record.Advice.Count > 0)
        {
            yield return new Block.Notice(
                "For whoever builds the engine",
                [.. record.Advice.Select(a => $"{a.Text} ({a.From})")],
                NeedsAttention: false
            );
        }
    }

    private static Block.Notice? Notable(BuildRecord record)
    {
        Case[] notable =
        [
            .. record.Cases.Where(c => c.End is CaseEnd.Open || c is { End: CaseEnd.Conceded, IsCurrent: true }),
        ];
        return notable.Length == 0
            ? null
            : new Block.Notice(
                notable.All(c => c.End == CaseEnd.Conceded)
                    ? "Used out of spec by a written permission of the shop (a concession)"
                    : "Used out of spec by a written permission of the shop (a concession), or not settled",
                [
                    .. notable.Select(c => $"{c.About}: {c.Fault}. {c.Outcome}"),
                    .. notable.Any(c => c.End == CaseEnd.Conceded)
                        ?
                        [
                            "The shop answers for this decision and its reason; nobody outside it has signed here. Whether the head may be used so is for the customer and the engine builder to decide: if it wasn't agreed with you, ask the shop before you fit it.",
                        ]
                        : Array.Empty<string>(),
                ],
                NeedsAttention: true
            );
    }

    private static Block.Facts Identity(BuildRecord record)
    {
        JobHeader job = record.Job;
        MarkTold? released = record.Marks.LastOrDefault(m => m.Mark.Meaning is SignMeanings.Released or "scrapped");
        (string Label, string Text)[] items =
        [
            ("Stamp on the head", job.Stamp),
            ("Customer", job.Customer),
            ("Complaint", job.Complaint),
            ("Unit of length", record.Plan.Head.LengthUnit.Symbol),
            ("Earlier work", job.EarlierWork),
            ("Shop", record.Contact.Length > 0 ? $"{record.Shop}; {record.Contact}" : record.Shop),
            (
                "Opened",
                $"{record.Opened.Time} (UTC{record.Opened.At.ToString("zzz", System.Globalization.CultureInfo.InvariantCulture)})"
            ),
            (
                record.Standing == JobStanding.Scrapped ? "Scrapped" : "Released",
                released is null
                    ? "not released"
                    : $"{released.By.Time} by {released.Mark.Mark.Name}{(released.Mark.Beside is { } lead ? $", {lead.Name} beside" : "")}"
            ),
        ];
        return new Block.Facts([.. items.Where(i => i.Text.Length > 0)]);
    }

    private static IEnumerable<string> InShort(BuildRecord record)
    {
        yield return $"{Verdict(record)}{Result(record)}";
        FinalValue[] under = [.. record.Values.Where(v => v.IsUnderSince)];
        if (under.Length > 0)
        {
            yield return $"UNDER A LOW LIMIT since the deck was cut, and not judged again by the work: {string.Join("; ", under.Select(v => $"{v.Name} at {v.Position}, {v.FromTheNewFace} {v.Record.Judgement.Low!.Value.ToDisplay()}"))}.";
        }

        if (Found(record) is { Length: > 0 } found)
        {
            yield return $"Found at teardown: {found}.";
        }

        if (Came(record) is { Length: > 0 } came)
        {
            yield return $"Outside the limits as it came: {came}.";
        }

        if (record.EarlierStamp.Length > 0)
        {
            string used = record.Comeback is { } comeback ? ComebackPart.MostUsed(comeback) : "";
            yield return used.Length > 0
                ? $"Came back from job {record.EarlierStamp}. Used up most since then: {used}."
                : $"Came back from job {record.EarlierStamp}.";
        }

        if (Inspected(record) is { Length: > 0 } inspected)
        {
            yield return inspected;
        }

        if (Changed(record) is { Length: > 0 } changed)
        {
            yield return $"Fitted: {changed}.";
        }

        if (Worked(record) is { Length: > 0 } worked)
        {
            yield return $"{(record.IsClosed ? "Worked on" : "Decided, done or still to be done")}: {worked}.";
        }

        foreach (string line in Deck(record))
        {
            yield return line;
        }

        Case[] settled = [.. record.Cases.Where(c => c.End == CaseEnd.Settled)];
        if (settled.Length > 0)
        {
            yield return $"On the way {Counted(settled.Length, "result was", "results were")} out of spec and settled: {string.Join(", ", settled.Select(c => c.About))}. Each stands on the next pages with who decided and why.";
        }

        if (record.Values.Any(IsRuleOfThumb))
        {
            yield return "Some limits are rules of thumb: common practice that no maker or standard gave. They are named as such.";
        }
    }

    private static string Verdict(BuildRecord record) =>
        record.Standing != JobStanding.Released ? ""
        : record.Cases.Any(c => c is { End: CaseEnd.Conceded, IsCurrent: true })
            ? "Released for use, with what is permitted above. "
        : "Released for use. ";

    // By reading, so that one that was outside everywhere takes one line.
    private static string Came(BuildRecord record) =>
        string.Join(
            "; ",
            record
                .Values.Where(v => v.CameOutside)
                .GroupBy(v => v.Name, StringComparer.Ordinal)
                .Select(g =>
                    g.First().Position == "head"
                        ? $"{g.Key} {g.First().Record.AsFound!.Value.ToDisplay()}"
                        : $"{g.Key} {Places([.. g.Select(v => v.Position)], record)}"
                )
        );

    // Only what could have been found bad. A test of the casting tells nothing of what a later cut of the deck opened, so
    // that before and after it are told apart.
    private static string Inspected(BuildRecord record)
    {
        Said[] good =
        [
            .. record
                .Findings.Where(f => f is { Position: "head", IsBad: false })
                .Where(f =>
                    record.Plan.TryStep(f.About, out int step)
                    && record.Plan.Steps[step].Work is StepWork.Inspect inspect
                    && inspect.Findings.Any(finding => !finding.Good)
                ),
        ];
        long cut = record.Shown(RecordRoles.SkimTaken)?.By.Entry ?? 0;
        string before = Listed(good.Where(f => f.By.Entry < cut));
        string after = Listed(good.Where(f => f.By.Entry >= cut));
        return before.Length == 0 && after.Length == 0 ? ""
            : before.Length == 0 ? $"Inspected on the head and good: {after}."
            : $"Inspected on the head and good, before the deck was cut: {before}{(after.Length > 0 ? $"; after it was cut: {after}" : "")}.";
    }

    private static string Listed(IEnumerable<Said> findings) =>
        string.Join("; ", findings.Select(f => $"{f.About.Split(" / ")[^1]}: {f.Text}"));

    private static IEnumerable<string> Deck(BuildRecord record)
    {
        string cut = record.Shown(RecordRoles.SkimTaken) is { } skim ? $"Deck cut by {skim.Record.Value}. " : "";
        if (record.Shown(RecordRoles.DeckThickness) is { } thickness)
        {
            string low = thickness.Record.Judgement.Low is { } least
                ? $"; at least {least} ({thickness.Record.Judgement.Origin})"
                : "";
            string flat = record.Shown(RecordRoles.Flatness) is { Standing: not ValueStanding.AsFound } f
                ? $" Flat within {f.Record.Value}{AsFound(f)}."
                : "";
            yield return $"{cut}Head thickness{Least(thickness)} {thickness.Record.Value}{AsFound(thickness)}{low}.{flat}";
        }
        else if (cut.Length > 0)
        {
            yield return cut.TrimEnd();
        }
    }

    // Two least values may be of different places, so their difference needn't be the cut.
    private static string Least(FinalValue value) =>
        value.Record.Places.Count < 2 ? ""
        : value.FoundPlaces.Count > 1 && value.FoundPlaces.Count != value.Record.Places.Count
            ? $", the least of {PaperMaker.Number(value.Record.Places.Count)} places ({PaperMaker.Number(value.FoundPlaces.Count)} as found),"
        : $", the least of {PaperMaker.Number(value.Record.Places.Count)} places,";

    private static string AsFound(FinalValue value) => value.Record.AsFound is { } found ? $" (as found {found})" : "";

    private static string Result(BuildRecord record)
    {
        FinalValue[] judged =
        [
            .. record.Values.Where(v =>
                v.Standing is ValueStanding.In or ValueStanding.Out or ValueStanding.Conceded or ValueStanding.Short
            ),
        ];
        int inLimits = judged.Count(v => v.Standing == ValueStanding.In);
        int rechecks = record.Values.Count(v => v.Standing == ValueStanding.Recheck);
        string open =
            rechecks > 0
                ? $" {Counted(rechecks, "value no longer holds", "values no longer hold")} and must be taken again."
                : "";
        string since = record.Values.Any(v => v.IsUnderSince) ? " as they were measured, but for what follows" : "";
        return inLimits == judged.Length
            ? $"All {PaperMaker.Number(judged.Length)} final values that have limits are within them{since}.{open}"
            : $"{PaperMaker.Number(inLimits)} of {PaperMaker.Number(judged.Length)} final values that have limits are within them. Not within: {string.Join("; ", judged.Where(v => v.Standing != ValueStanding.In).Select(Outside))}.{open}";
    }

    private static string Outside(FinalValue value) =>
        $"{value.Position} {value.Name} {value.Record.Value.ToDisplay()} ({Telling.Window(value.Record.Judgement)})";

    private static string Changed(BuildRecord record) =>
        string.Join(
            "; ",
            record
                .Parts.Where(p => p.IsInPlace)
                .GroupBy(p => p.Part, StringComparer.Ordinal)
                .Select(g => $"{g.Key} {Places([.. g.Select(p => p.Position)], record)}")
        );

    // Decisions that no part fitted tells of.
    private static string Worked(BuildRecord record) =>
        string.Join(
            "; ",
            record
                .Decisions.Where(d => d.Position != "head" && d.Text != "keep")
                .Where(d =>
                    !record.Parts.Any(p =>
                        p.Position == d.Position
                        && (p.Part == d.About || p.Part.EndsWith($" {d.About}", StringComparison.Ordinal))
                    )
                )
                .GroupBy(d => (d.About, d.Text))
                .Select(g => $"{g.Key.About}: {g.Key.Text} {Places([.. g.Select(d => d.Position)], record)}")
        );

    // What an inspection of the head as it came found, where that isn't the first and best of its findings.
    private static string Found(BuildRecord record) =>
        string.Join(
            "; ",
            record
                .Findings.Where(f => record.Plan.TryStep(f.About, out int step) && IsWorse(record.Plan, step, f.Text))
                .GroupBy(f => (f.About, f.Text))
                .Select(g =>
                {
                    string[] at = [.. g.Select(f => f.Position)];
                    return $"{g.Key.About.Split(" / ")[^1]}: {g.Key.Text}{(at is ["head"] ? "" : $" {Places(at, record)}")}";
                })
        );

    private static bool IsWorse(Plan plan, int step, string finding) =>
        plan.IsAsFound(step)
        && plan.Steps[step].Work is StepWork.Inspect inspect
        && inspect.Findings.Count > 0
        && inspect.Findings[0].Text != finding;

    private static string Places(string[] positions, BuildRecord record) =>
        positions is ["head"] ? "on the head"
        : positions.Length == record.Plan.Positions.Count ? "at every valve"
        : $"at {string.Join(", ", positions)}";

    private static string Counted(int count, string one, string many) =>
        $"{PaperMaker.Number(count)} {(count == 1 ? one : many)}";

    /// <summary>True for a value whose limit nobody wrote down.</summary>
    public static bool IsRuleOfThumb(FinalValue value) =>
        value.Record.Judgement.Origin.Contains(OriginWords.Of(Origin.RuleOfThumb), StringComparison.Ordinal);
}
