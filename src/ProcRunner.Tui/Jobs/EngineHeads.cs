using ProcRunner.Runs;
using ProcRunner.Store.Local;

namespace ProcRunner.Tui.Jobs;

/// <summary>The heads of one engine: linked in both trails, compared, and how they go out written down.</summary>
internal static class EngineHeads
{
    /// <summary>The figures of a job and another one, side by side; null with the reason when that one can't be read.</summary>
    public static (IReadOnlyList<HeadFigure>? Figures, string Fault) Compare(
        StoreReader reader,
        RunState here,
        string otherJob
    )
    {
        (JobReading? other, string fault) = JobReading.Read(reader, otherJob);
        return other is null ? (null, fault) : (HeadComparison.Of(here, other.State), "");
    }

    /// <summary>Writes the link into both trails, the other's only while it is open; what keeps it from being written, or null.</summary>
    public static string? Link(JobRun job, JobRun other)
    {
        string? fault = FaultOf(job.Do(new RunCommand.LinkHead(other.State.JobId, other.State.Job!.Stamp)));
        return fault ?? Tell(other, job);
    }

    /// <summary>Tells a job that another one is linked with it, while it is open and doesn't know.</summary>
    public static string? Tell(JobRun other, JobRun job) =>
        other.State.Standing != JobStanding.Open || other.State.Linked.Exists(l => l.Job == job.State.JobId)
            ? null
            : FaultOf(other.Do(new RunCommand.LinkHead(job.State.JobId, job.State.Job!.Stamp)));

    /// <summary>Writes down how a job goes out beside each linked head.</summary>
    /// <param name="reader">The store.</param>
    /// <param name="job">The job.</param>
    /// <param name="together">True: they match.</param>
    /// <param name="reason">Why, where they go out apart.</param>
    public static JobAnswer Decide(StoreReader reader, JobRun job, bool together, string reason)
    {
        JobAnswer answer = new JobAnswer.Refused("No other head is linked with this one.", []);
        foreach (RunEvent.HeadLinked linked in job.State.Linked)
        {
            (IReadOnlyList<HeadFigure>? figures, string fault) = Compare(reader, job.State, linked.Job);
            if (figures is null)
            {
                return new JobAnswer.Refused(fault, []);
            }

            answer = job.Do(new RunCommand.CompareHeads(new(linked.Job, linked.Stamp, figures, together, reason)));
            if (answer is not JobAnswer.Recorded)
            {
                return answer;
            }
        }

        return answer;
    }

    /// <summary>The figures as a table; what differs or isn't known comes first.</summary>
    /// <param name="here">This head's stamp.</param>
    /// <param name="there">The other's.</param>
    /// <param name="figures">The figures.</param>
    public static IEnumerable<string> Table(string here, string there, IReadOnlyList<HeadFigure> figures)
    {
        if (figures.Count == 0)
        {
            return ["Nothing that must match is known of either head yet."];
        }

        int of = Math.Max("".Length, figures.Max(f => f.Of.Length));
        int first = Math.Max(here.Length, figures.Max(f => Shown(f.Here).Length));
        int second = Math.Max(there.Length, figures.Max(f => Shown(f.There).Length));
        return
        [
            $"{"".PadRight(of)}  {here.PadRight(first)}  {there.PadRight(second)}  apart by",
            .. InOrderOfConcern(figures)
                .Select(f =>
                    $"{f.Of.PadRight(of)}  {Shown(f.Here).PadRight(first)}  {Shown(f.There).PadRight(second)}  {f.Difference}{(f.Differs ? "  TOO FAR APART" : "")}".TrimEnd()
                ),
        ];
    }

    private static IEnumerable<HeadFigure> InOrderOfConcern(IEnumerable<HeadFigure> figures) =>
        figures.OrderByDescending(f => f.Differs).ThenByDescending(f => f.Here.Length == 0 || f.There.Length == 0);

    private static string Shown(string text) => text.Length == 0 ? "not known" : text;

    private static string? FaultOf(JobAnswer answer) =>
        answer switch
        {
            JobAnswer.Refused refused => refused.Why,
            JobAnswer.NotWritten failed => $"NOT WRITTEN: {failed.Why}",
            _ => null,
        };
}
