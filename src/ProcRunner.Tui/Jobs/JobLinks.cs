using ProcRunner.Runs;
using ProcRunner.Store.Local;

namespace ProcRunner.Tui.Jobs;

/// <summary>What a job has to do with others: the earlier one that it came back from, and the other heads of the engine.</summary>
internal static class JobLinks
{
    /// <summary>All of it, side by side; empty when there is nothing.</summary>
    /// <param name="reader">The store.</param>
    /// <param name="index">Its index, which knows what came back of a job; null for none.</param>
    /// <param name="job">The job.</param>
    /// <param name="width">Columns.</param>
    public static IReadOnlyList<string> Lines(StoreReader reader, SearchIndex? index, RunState job, int width)
    {
        IEnumerable<IReadOnlyList<string>> parts =
        [
            .. job.Earlier is { } earlier
                ? (IReadOnlyList<string>[])[Comeback(reader, earlier.Job, job.JobId, width)]
                : [],
            .. (index?.ComebacksOf(job.JobId) ?? []).Select(later => Comeback(reader, job.JobId, later.Id, width)),
            .. job.Linked.Select(linked => Linked(reader, job, linked)),
        ];
        return Apart(parts);
    }

    /// <summary>The other heads of the engine beside this one; empty when there is none.</summary>
    public static IReadOnlyList<string> Heads(StoreReader reader, RunState job) =>
        Apart(job.Linked.Select(linked => Linked(reader, job, linked)));

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

    private static IReadOnlyList<string> Apart(IEnumerable<IReadOnlyList<string>> parts) =>
        [.. parts.SelectMany((lines, i) => i == 0 ? lines : lines.Prepend(""))];

    private static IReadOnlyList<string> Comeback(StoreReader reader, string earlier, string later, int width)
    {
        (JobReading? built, string fault) = JobReading.Read(reader, earlier);
        (JobReading? found, string fault2) = JobReading.Read(reader, later);
        return built is null || found is null
            ? [built is null ? fault : fault2]
            : [.. new ComebackLines(built, found, width).All()];
    }

    private static IReadOnlyList<string> Linked(StoreReader reader, RunState job, RunEvent.HeadLinked linked)
    {
        (IReadOnlyList<HeadFigure>? figures, string fault) = EngineHeads.Compare(reader, job, linked.Job);
        return
        [
            $"== {linked.Stamp}, another head of this engine ==",
            .. figures is null ? [fault] : EngineHeads.Table(job.Job!.Stamp, linked.Stamp, figures),
            Decided(job, linked),
        ];
    }

    private static string Decided(RunState job, RunEvent.HeadLinked linked) =>
        !job.Compared.TryGetValue(linked.Job, out RunEvent.HeadsCompared? compared) ? "not decided yet how they go out"
        : compared.Together ? "decided: they match, released together"
        : $"decided: released apart: {compared.Reason}";
}
