using System.Collections.Immutable;
using System.CommandLine;
using ProcRunner.Store.Local;
using ProcRunner.Trail;
using ProcRunner.Tui.Jobs;
using ProcRunner.Tui.Shell;

namespace ProcRunner.Tui.Commands;

/// <summary><c>jobs</c>: every job with what it waits for.</summary>
internal static class JobsVerb
{
    /// <summary>The verb.</summary>
    public static Command Create()
    {
        Option<bool> json = JsonOption.Create();
        Command verb = new("jobs", "list the jobs: stamp, state, what each waits for, since when") { json };
        verb.SetAction(parsed => List(StoreOption.ToRead(parsed), "", parsed.GetValue(json)));
        return verb;
    }

    /// <summary>Lists the jobs in which a text stands; the exit status. With no text: all, and none is no failure.</summary>
    public static int List(string folder, string text, bool json)
    {
        (StoreReader? reader, string fault) = ShopFloor.Read(folder);
        if (reader is null)
        {
            return Say.Usage(fault, "");
        }

        SearchIndex index = ShopFloor.IndexOf(reader);
        index.Progress = new Progress(Machine.Time, Console.Error, "jobs read").Report;
        ImmutableArray<IndexedJob> jobs = index.Search(text);
        if (index.Trouble is { } trouble)
        {
            return Say.Usage($"The jobs can't be searched: {trouble}.", "Try again; nothing is lost with the index.");
        }

        ExportedJob[] elsewhere = FromElsewhere(reader, text);
        if (json)
        {
            Say.Json(Json.ListOf([.. jobs.Select(JobListing.Json), .. elsewhere.Select(JobListing.Json)]));
        }
        else
        {
            foreach (string line in JobListing.Lines(jobs).Concat(elsewhere.Select(JobListing.Line)))
            {
                Say.Line(line);
            }
        }

        return jobs.IsEmpty && elsewhere.Length == 0 && text.Length > 0 ? Status.No : Status.Done;
    }

    // Of several files of one job the one with the longest trail.
    private static ExportedJob[] FromElsewhere(StoreReader reader, string text) =>
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
