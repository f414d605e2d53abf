using ProcRunner.Procedures;

namespace ProcRunner.Records.Papers;

/// <summary>Notes, and the cautions that go with a finished head.</summary>
internal static class HistoryPart
{
    /// <summary>Its pieces.</summary>
    public static IEnumerable<Block> Of(BuildRecord record)
    {
        if (record.Notes.Count > 0)
        {
            yield return new Block.Heading(2, "Notes");
            yield return new Block.Table(
                "Notes made during the work",
                [("about", 4), ("at", 1), ("note", 7), ("by", 4)],
                [
                    .. record.Notes.Select(n => new Row([
                        n.About.Length > 0 ? n.About : "the job",
                        n.Position,
                        n.Text,
                        PaperMaker.Who(n.By),
                    ])),
                ]
            );
        }

        if (record.Clock.Count > 0)
        {
            yield return new Block.Notice("The clock was set back during the work", record.Clock, NeedsAttention: true);
        }

        Caution[] cautions = [.. record.Plan.Procedure.Stages[^1].Cautions];
        yield return new Block.Notice(
            "Cautions",
            [
                .. cautions.Select(c => $"{c.Word.ToUpperInvariant()}: {c.Text}"),
                "The rules of the shop, local codes and licensed practice come before this record.",
            ],
            NeedsAttention: false
        );
    }
}
