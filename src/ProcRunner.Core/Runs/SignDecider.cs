using ProcRunner.Procedures;
using ProcRunner.Trail;

namespace ProcRunner.Runs;

/// <summary>
/// Sign-offs and the release. None over an open or a stale gate; a practice head is released in a rehearsal only, which
/// leaves no trail.
/// </summary>
internal static class SignDecider
{
    /// <summary>Signs the stage so far, or releases the job.</summary>
    public static Decision Sign(Deciding on, At at, StepWork.Sign sign, Mark mark, Mark? beside)
    {
        bool release = sign.Meaning == "released";
        if (release && on is { State.Job.Practice: true, PracticeMark: null })
        {
            return Deciding.No(
                "A practice head is never released.",
                "All that could be learned on it is done; leave it here."
            );
        }

        if (release && (NotReady(on, at) ?? HeadDecider.NotCompared(on)) is { } open)
        {
            return open;
        }

        if (MarkFault(on, at, release, mark, sign.ByLead) is { } fault)
        {
            return fault;
        }

        if (Marks.IsTrainee(on, mark) && beside is null)
        {
            return Deciding.No($"{mark.Name} is a trainee: a lead signs beside.", "Ask a lead to sign as well.");
        }

        if (beside is not null && MarkFault(on, at, release, beside, byLead: true) is { } besideFault)
        {
            return besideFault;
        }

        return Deciding.Yes(
            release
                ? new RunEvent.JobReleased(at, on.Moment.LastDigest, mark, beside)
                : new RunEvent.SignedOff(at, sign.Meaning, Covers(on, at).ToString(), mark, beside)
        );
    }

    /// <summary>Why the job can't be released yet, or null: anything open, stale, out or not covered by a sign-off.</summary>
    public static Decision.Refused? NotReady(Deciding on, At at)
    {
        string[] open =
        [
            .. on
                .Outlook.All.Where(other =>
                    other != at && on.Outlook.ViewOf(other) is not (StepView.Done or StepView.NotHere)
                )
                .Take(5)
                .Select(other => $"Still to do: {on.Plan.NameOf(other)}"),
        ];
        return open.Length == 0 ? null : Deciding.No("The head can't be released yet.", open);
    }

    private static Decision.Refused? MarkFault(Deciding on, At at, bool release, Mark mark, bool byLead)
    {
        byte[] Signed() =>
            release
                ? SignedBytes.OfRelease(on.State, at, mark, on.Moment.LastDigest)
                : SignedBytes.OfStage(on.State, at, mark);
        return Marks.Fault(on, mark, Signed, byLead);
    }

    // A word that stands for a signature covers nothing.
    private static Digest Covers(Deciding on, At at) =>
        on.PracticeMark is null ? SignedBytes.CoversOf(on.State, at) : Digest.Zero;
}
