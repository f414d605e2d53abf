using ProcRunner.Runs;
using ProcRunner.Store.Local;

namespace ProcRunner.Tui.Jobs;

/// <summary>What a job has to do with others: the earlier one that it came back from, and the other heads of the engine.</summary>
internal static class JobLinks
{
    /// <summary>All of it, side by side; empty when there is nothing.</summary>
    public static IReadOnlyList<string> Lines(StoreReader reader, RunState job)
    {
        List<string> lines = [];
        if (job.Earlier is { } earlier)
        {
            (JobReading? built, string fault) = JobReading.Read(reader, earlier.Job);
            lines.AddRange(built is null ? [fault] : ComebackLines.Of(earlier.Stamp, built.State, job));
        }

        foreach (RunEvent.HeadLinked linked in job.Linked)
        {
            if (lines.Count > 0)
            {
                lines.Add("");
            }

            lines.Add($"== {linked.Stamp}, another head of this engine ==");
            (IReadOnlyList<HeadFigure>? figures, string fault) = EngineHeads.Compare(reader, job, linked.Job);
            lines.AddRange(figures is null ? [fault] : EngineHeads.Table(job.Job!.Stamp, linked.Stamp, figures));
            lines.Add(Decided(job, linked));
        }

        return lines;
    }

    /// <summary>The links in a line each: what it came back from, what came back of it, which heads go with it.</summary>
    public static IEnumerable<string> Short(RunState job, SearchIndex? index)
    {
        if (job.Earlier is { } earlier)
        {
            yield return $"Came back: the earlier job is {earlier.Stamp}";
        }

        foreach (IndexedJob later in index?.ComebacksOf(job.JobId) ?? [])
        {
            yield return $"It came back as {later.Stamp}, {JobListing.Minute(later.Opened)[..10]}";
        }

        HashSet<string> told = new(StringComparer.Ordinal);
        foreach (RunEvent.HeadLinked linked in job.Linked)
        {
            told.Add(linked.Job);
            yield return $"Another head of this engine: {linked.Stamp}; {Decided(job, linked)}";
        }

        foreach (IndexedJob other in index?.LinkedWith(job.JobId) ?? [])
        {
            if (told.Add(other.Id))
            {
                yield return $"Another head of this engine: {other.Stamp}";
            }
        }
    }

    private static string Decided(RunState job, RunEvent.HeadLinked linked) =>
        !job.Compared.TryGetValue(linked.Job, out RunEvent.HeadsCompared? compared) ? "not decided yet how they go out"
        : compared.Together ? "decided: they match, released together"
        : $"decided: released apart: {compared.Reason}";
}
