using ProcRunner.Runs;
using ProcRunner.Store.Local;
using ProcRunner.Trail;

namespace ProcRunner.Tui.Jobs;

/// <summary>What a new job has to do with jobs that are there already.</summary>
/// <param name="Earlier">The earlier job on the same head; null for none.</param>
/// <param name="Linked">The job on another head of the same engine; null for none.</param>
internal sealed record OtherJobs(RunEvent.CameBack? Earlier, RunEvent.HeadLinked? Linked)
{
    /// <summary>Nothing.</summary>
    public static OtherJobs None { get; } = new(null, null);

    /// <summary>Finds them by their stamps; null with the reason when one isn't there.</summary>
    public static (OtherJobs? Jobs, string Fault) Find(LocalStore store, string? earlier, string? linked)
    {
        RunEvent.CameBack? back = null;
        RunEvent.HeadLinked? beside = null;
        if (!string.IsNullOrEmpty(earlier))
        {
            if (store.Shop.JobsWithStamp(earlier).FirstOrDefault() is not { } job)
            {
                return (null, $"There is no job stamped {earlier}.");
            }

            TrailReading trail = store.Reader.ReadTrail(job.Id);
            Digest last = trail.Entries.IsEmpty ? Digest.Zero : trail.Entries[^1].Digest;
            back = new(job.Id, job.Stamp, last.ToString());
        }

        if (!string.IsNullOrEmpty(linked))
        {
            if (store.Shop.JobsWithStamp(linked).FirstOrDefault() is not { } job)
            {
                return (null, $"There is no job stamped {linked}.");
            }

            beside = new(job.Id, job.Stamp);
        }

        return (new(back, beside), "");
    }
}
