using ProcRunner.Shop;
using ProcRunner.Trail;

namespace ProcRunner.Store.Local;

/// <summary>The trails that were written to, each checked from end to end before the first entry is added.</summary>
internal sealed class OpenTrails(StorePaths paths, IDisk disk) : IDisposable
{
    private readonly Dictionary<string, TrailFile> _jobs = new(StringComparer.Ordinal);

    /// <summary>A new job's trail.</summary>
    public void Add(TrailFile trail) => _jobs.Add(trail.Of, trail);

    /// <summary>A job's trail, or why nothing is added to it. Trouble with the disk is thrown.</summary>
    public (TrailFile? Trail, string WhyNot) Of(string jobId, ShopState shop)
    {
        if (_jobs.TryGetValue(jobId, out TrailFile? open))
        {
            return (open, "");
        }

        if (!JobId.IsValid(jobId) || !shop.Jobs.TryGetValue(jobId, out ShopJob? job))
        {
            return (null, "The shop book knows no such job.");
        }

        TrailSummary summary = paths.Summarise(jobId);
        string? broken =
            summary.Verdict is TrailVerdict.Broken
                ? summary.Verdict.InWords()
                : AnchorComparison.Compare(job, summary).FirstOrDefault()?.Text;
        if (broken is not null)
        {
            return (null, "The job's trail doesn't hold, so nothing is added to it. " + broken);
        }

        var file = new AppendOnlyFile(disk, paths.Trail(jobId), jobId, summary.Length, summary.Last);
        var trail = new TrailFile(jobId, file, summary.Entries, summary.Last, job.IsClosedOut);
        _jobs.Add(jobId, trail);
        return (trail, "");
    }

    /// <summary>Cuts back what was written and not acknowledged.</summary>
    public void Undo()
    {
        foreach (TrailFile trail in _jobs.Values)
        {
            trail.File.Undo();
        }
    }

    public void Dispose()
    {
        foreach (TrailFile trail in _jobs.Values)
        {
            trail.Dispose();
        }

        _jobs.Clear();
    }
}
