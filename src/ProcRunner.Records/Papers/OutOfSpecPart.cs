using ProcRunner.Records.Story;

namespace ProcRunner.Records.Papers;

/// <summary>What was out of spec and what was done; corrections, questions and what had to be measured again.</summary>
internal static class OutOfSpecPart
{
    /// <summary>Its pieces.</summary>
    public static IEnumerable<Block> Of(BuildRecord record) =>
        [.. Cases(record), .. AsItCame(record), .. Corrections(record), .. Questions(record)];

    /// <summary>Its pieces that are looked up: what no longer held because something moved.</summary>
    public static IEnumerable<Block> LookedUp(BuildRecord record) => Renewals(record);

    private static IEnumerable<Block> Cases(BuildRecord record)
    {
        yield return new Block.Heading(2, "Out of spec, and what was done");
        if (record.Cases.Count == 0)
        {
            yield return new Block.Paragraph("Nothing was out of spec.");
            yield break;
        }

        yield return new Block.Paragraph(
            "Each result outside its limits, from the first reading to how it was settled. The first reading stays on record."
        );
        if (record.Cases.Any(c => c.Lines.Any(l => l.Text.Contains("shifted by", StringComparison.Ordinal))))
        {
            yield return new Block.Paragraph(
                "\"Shifted by\" means that the limits were moved by the cut of the deck that was still to come, so that the depth is right once the deck has come down.",
                IsQuiet: true
            );
        }

        for (int i = 0; i < record.Cases.Count; i++)
        {
            Case told = record.Cases[i];
            string number = PaperMaker.Number(i + 1);
            yield return new Block.Heading(3, $"Case {number}: {told.About}");
            if (WhyOf(record, told) is { Length: > 0 } why)
            {
                yield return new Block.Paragraph($"Why it matters: {why}.", IsQuiet: true);
            }

            yield return new Block.Bullets(
                [.. told.Lines.Select(l => $"{l.Text} (entered by {PaperMaker.Who(l.By)})")],
                IsNumbered: true
            );
            yield return new Block.Notice(
                EndWord(told),
                told is { End: CaseEnd.Conceded, IsCurrent: true }
                    ? [told.Outcome, WhoAnswers(record, [told])]
                    : [told.Outcome],
                NeedsAttention: told.End != CaseEnd.Settled
            );
        }
    }

    /// <summary>Who answers for what is used out of spec: nobody should have to guess what a signature of the shop covers.</summary>
    /// <param name="record">The record.</param>
    /// <param name="conceded">What is used out of spec.</param>
    public static string WhoAnswers(BuildRecord record, IReadOnlyList<Case> conceded) =>
        $"Who answers for what: {string.Join(" and ", conceded.Select(c => c.PermittedBy).Distinct())} decided for the shop, {record.Shop}, that the head goes out so; the shop answers for that decision, for its reason and for the measured value. Nobody outside the shop has signed here: what the reason says of the customer is the shop's word, and no right of the customer is given up by it. Whether the head may be used so in this engine is for the customer and the engine builder to decide: if this wasn't agreed with you, ask the shop before you fit it.";

    // A result that was only measured again wasn't put right by any work.
    private static string EndWord(Case told) =>
        told.End switch
        {
            CaseEnd.Settled when told.OnlyMeasuredAgain =>
                "Within its limits when it was measured again; no work was done for it",
            CaseEnd.Settled => "Put right",
            CaseEnd.Conceded => "CONCESSION: used out of spec",
            CaseEnd.Scrapped => "SCRAPPED",
            _ => "NOT SETTLED",
        };

    // Readings of the head as it came aren't judged; these are set against the limits that hold now.
    private static IEnumerable<Block> AsItCame(BuildRecord record)
    {
        FinalValue[] outside = [.. record.Values.Where(v => v.CameOutside)];
        if (outside.Length > 0)
        {
            yield return new Block.Heading(2, "As it came, outside the limits");
            yield return new Block.Table(
                "What was outside the limits as found, and what it is now",
                [("reading", 3), ("at", 1), ("as found", 2), ("limits that hold now", 5), ("now", 2), ("standing", 2)],
                [
                    .. outside.Select(v => new Row([
                        v.Name,
                        v.Position,
                        v.Record.AsFound!.Value.ToDisplay(),
                        Telling.Window(v.Record.Judgement),
                        v.Record.Value.ToDisplay(),
                        v.Verdict,
                    ])),
                ]
            );
        }
    }

    private static string WhyOf(BuildRecord record, Case told) =>
        record.Plan.TryStep($"{told.Stage} / {told.Step}", out int step)
        && record.Plan.Steps[step] is var found
        && found.Taking is { } taking
        && record.Plan.TryCharacteristic(taking.Characteristic, out int index)
            ? record.Plan.Procedure.Characteristics[index].Why
            : "";

    private static IEnumerable<Block> Corrections(BuildRecord record)
    {
        if (record.Corrections.Count > 0)
        {
            yield return new Block.Heading(2, "Corrected entries");
            yield return new Block.Table(
                "Entries that were corrected; both stay on record",
                [("where", 3), ("what stood", 4), ("what stands now", 4), ("why", 3), ("by", 3)],
                [
                    .. record.Corrections.Select(c => new Row([
                        c.Step,
                        c.WasBy is { } by ? $"{c.Was} ({PaperMaker.Who(by)})" : c.Was,
                        c.Now,
                        c.Reason,
                        PaperMaker.Who(c.By),
                    ])),
                ]
            );
        }
    }

    private static IEnumerable<Block> Questions(BuildRecord record)
    {
        if (record.Questions.Count > 0)
        {
            yield return new Block.Heading(2, "Entries that were questioned");
            yield return new Block.Table(
                "Entries that the program asked about before it took them",
                [("where", 3), ("typed", 2), ("why it was questioned", 5), ("taken after that", 4), ("by", 3)],
                [
                    .. record.Questions.Select(q => new Row([
                        q.Step,
                        q.Typed,
                        q.Why,
                        q.Then.Length > 0 ? q.Then : "nothing",
                        PaperMaker.Who(q.By),
                    ])),
                ]
            );
        }
    }

    private static IEnumerable<Block> Renewals(BuildRecord record)
    {
        if (record.Renewals.Count == 0)
        {
            yield break;
        }

        yield return new Block.Heading(2, "Measured again because something moved");
        yield return new Block.Paragraph(
            "Work moves what earlier readings were measured from: a cut deck, another valve, a pressed guide. Those readings then no longer hold and the steps that need them ask again. What each of them was, and what took its place, stands under its valve."
        );
        yield return new Block.Table(
            "What no longer held, and whether it was taken again",
            [("what moved", 3), ("what no longer held", 7), ("since then", 3), ("by", 3)],
            [.. record.Renewals.Select(Renewed)]
        );
    }

    private static Row Renewed(Renewal renewal)
    {
        string open =
            renewal.StillOpen.Count > 0 ? $"STILL TO BE TAKEN AGAIN: {string.Join(", ", renewal.StillOpen)}. " : "";
        string stays = renewal.NotAgain.Count > 0 ? $"Kept as found: {string.Join(", ", renewal.NotAgain)}. " : "";
        string gone =
            renewal.NotWanted.Count > 0
                ? $"No longer asked for, so not taken again: {string.Join(", ", renewal.NotWanted)}. "
                : "";
        string since = (open + stays + gone).TrimEnd();
        return new Row(
            [
                renewal.Cause,
                string.Join(", ", renewal.Items),
                since.Length == 0 ? "All taken again." : $"Taken again, but for these. {since}",
                PaperMaker.Entries(renewal.By),
            ],
            NeedsAttention: renewal.StillOpen.Count > 0
        );
    }
}
