using ProcRunner.Store.Local;

namespace ProcRunner.Tui.Jobs;

/// <summary>The jobs that came in from other stores, to be looked at.</summary>
internal static class JobsFromElsewhere
{
    /// <summary>Those whose stamp or shop holds a text; of several files of one job the one with the longest trail.</summary>
    public static ExportedJob[] Find(StoreReader reader, string text) =>
        [
            .. new ImportedJobs(reader)
                .All()
                .Select(kept => kept.Job)
                .Where(job =>
                    job.Stamp.Contains(text, StringComparison.OrdinalIgnoreCase)
                    || job.Shop.Contains(text, StringComparison.OrdinalIgnoreCase)
                )
                .GroupBy(job => job.JobId, StringComparer.Ordinal)
                .Select(group => group.MaxBy(job => job.Trail.Length)!),
        ];
}
