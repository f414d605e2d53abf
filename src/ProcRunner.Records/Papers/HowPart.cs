using ProcRunner.Procedures;

namespace ProcRunner.Records.Papers;

/// <summary>
/// How it was measured, inspected and decided, in the words of the procedure that the job pins: a figure is worth what its
/// method is worth, and years later nobody has the procedure at hand.
/// </summary>
internal static class HowPart
{
    /// <summary>Its pieces.</summary>
    public static IEnumerable<Block> Of(BuildRecord record)
    {
        HashSet<string> done =
        [
            .. record.Values.Select(v => v.Step),
            .. record.Findings.Select(f => f.About),
            .. record.Cuts.Select(c => c.What),
        ];
        Step[] told =
        [
            .. record.Plan.Procedure.Steps.Where(s =>
                s.Say.Length > 0 && (done.Contains(s.FullName) || s.Work is StepWork.Decide)
            ),
        ];
        if (told.Length > 0)
        {
            yield return new Block.Heading(2, "How it was done");
            yield return new Block.Table(
                $"How the procedure, revision {PaperMaker.Number(record.Plan.Procedure.Revision)}, has it measured, inspected and decided",
                [("step", 3), ("how", 7)],
                [.. told.Select(s => new Row([s.FullName, s.Say]))]
            );
        }
    }
}
