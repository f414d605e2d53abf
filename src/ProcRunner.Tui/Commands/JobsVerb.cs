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
        ImmutableArray<IndexedJob> jobs = [.. index.Find(new JobQuery { Text = text }).Hits.Select(h => h.Job)];
        if (index.Trouble is { } trouble)
        {
            return Say.Usage($"The jobs can't be searched: {trouble}.", "Try again; nothing is lost with the index.");
        }

        if (json)
        {
            Say.Json(Json.ListOf([.. jobs.Select(JobListing.Json)]));
        }
        else
        {
            foreach (string line in JobListing.Lines(jobs))
            {
                Say.Line(line);
            }
        }

        return jobs.IsEmpty && text.Length > 0 ? Status.No : Status.Done;
    }
}
