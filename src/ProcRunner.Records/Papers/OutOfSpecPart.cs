using ProcRunner.Records.Story;

namespace ProcRunner.Records.Papers;

/// <summary>What was out of spec and what was done; corrections, questions and what had to be measured again.</summary>
internal static class OutOfSpecPart
{
    /// <summary>Its pieces.</summary>
    public static IEnumerable<Block> Of(BuildRecord record) =>
        [.. Cases(record), .. Corrections(record), .. Questions(record), .. Renewals(record)];

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
                [.. told.Lines.Select(l => $"{l.Text} ({PaperMaker.Who(l.By)})")],
                IsNumbered: true
            );
            yield return new Block.Notice(
                EndWord(told.End),
                [told.Outcome],
                NeedsAttention: told.End != CaseEnd.Settled
            );
        }
    }

    private static string EndWord(CaseEnd end) =>
        end switch
        {
            CaseEnd.Settled => "Put right",
            CaseEnd.Conceded => "CONCESSION: used out of spec",
            CaseEnd.Scrapped => "SCRAPPED",
            _ => "NOT SETTLED",
        };

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
            "Work moves what earlier readings were measured from: a cut deck, another valve, a pressed guide. Those readings then no longer hold; the trail keeps them, and the steps that need them ask again."
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
        string stays = renewal.NotAgain.Count > 0 ? $"kept as found: {string.Join(", ", renewal.NotAgain)}" : "";
        string since = open + stays;
        return new Row(
            [
                renewal.Cause,
                string.Join(", ", renewal.Items),
                since.Length == 0 ? "taken again, or no longer wanted" : since,
                PaperMaker.Entries(renewal.By),
            ],
            NeedsAttention: renewal.StillOpen.Count > 0
        );
    }
}
