using ProcRunner.Runs;

namespace ProcRunner.Records;

/// <summary>A mark in a job: a sign-off, a release, a concession or a scrapping.</summary>
/// <param name="Sequence">Its entry.</param>
/// <param name="At">The step and position.</param>
/// <param name="Meaning">measured, checked, approved, released, conceded or scrapped.</param>
/// <param name="Mark">Who and when.</param>
/// <param name="Beside">The lead beside a trainee, or null.</param>
/// <param name="Reason">Why, for a concession or a scrapping; otherwise empty.</param>
public sealed record JobMark(long Sequence, At At, string Meaning, Mark Mark, Mark? Beside, string Reason)
{
    /// <summary>The mark in an event, or null when it holds none.</summary>
    public static JobMark? Of(long sequence, RunEvent happened) =>
        happened switch
        {
            RunEvent.SignedOff e => new(sequence, e.At, e.Meaning, e.Mark, e.Beside, ""),
            RunEvent.JobReleased e => new(sequence, e.At, Procedures.SignMeanings.Released, e.Mark, e.Beside, ""),
            RunEvent.Conceded e => new(sequence, e.At, "conceded", e.Mark, null, e.Reason),
            RunEvent.HeadScrapped e => new(sequence, e.At, "scrapped", e.Mark, null, e.Reason),
            _ => null,
        };
}
