using System.CommandLine;
using ProcRunner.Store.Local;
using ProcRunner.Trail;
using ProcRunner.Tui.Jobs;
using ProcRunner.Tui.Shell;

namespace ProcRunner.Tui.Commands;

/// <summary><c>jobs</c>: the shop's day. What is on which bench and waits for what, and what was signed off this week.</summary>
internal static class JobsVerb
{
    /// <summary>The verb.</summary>
    public static Command Create()
    {
        Option<bool> all = new("--all") { Description = "every job, those released long ago or scrapped too" };
        Option<bool> json = JsonOption.Create();
        Command verb = new(
            "jobs",
            "the shop's day: what is on which bench, waits for what, since when; what was signed off this week"
        )
        {
            all,
            json,
        };
        verb.SetAction(parsed =>
            IndexedStore.Ask(
                StoreOption.ToRead(parsed),
                (reader, index) =>
                {
                    ExportedJob[] elsewhere = JobsFromElsewhere.Find(reader, "");
                    ShopDay day = ShopDay.Of(index.All(), Machine.Time.GetLocalNow());
                    return parsed.GetValue(json)
                        ? TellScripts(day, elsewhere)
                        : Tell(day, elsewhere, parsed.GetValue(all));
                }
            )
        );
        return verb;
    }

    private static int TellScripts(ShopDay day, ExportedJob[] elsewhere)
    {
        Say.Json(
            Json.ListOf([
                .. day
                    .InHand.Concat(day.ThisWeek)
                    .Concat(day.Closed)
                    .Select(job =>
                        Json.MapOf([
                            .. JobListing.Json(job).Items.Select(i => (i.Key, i.Value)),
                            ("signed-off-this-week", new Json.Flag(day.ThisWeek.Contains(job))),
                        ])
                    ),
                .. elsewhere.Select(JobListing.Json),
            ])
        );
        return Status.Done;
    }

    private static int Tell(ShopDay day, ExportedJob[] elsewhere, bool all)
    {
        Tell("", day.InHand);
        if (day.ThisWeek.Count > 0)
        {
            Tell("signed off this week", day.ThisWeek);
        }

        if (all && day.Closed.Count > 0)
        {
            Tell("released before, or scrapped", day.Closed);
        }
        else if (day.Closed.Count > 0)
        {
            Say.Line();
            Say.Line(
                $"{JobListing.Number(day.Closed.Count)} more {(day.Closed.Count == 1 ? "is" : "are")} released or scrapped: procrunner jobs --all"
            );
        }

        foreach (ExportedJob job in elsewhere)
        {
            Say.Line(JobListing.Line(job));
        }

        return Status.Done;
    }

    private static void Tell(string title, IReadOnlyList<IndexedJob> jobs)
    {
        if (title.Length > 0)
        {
            Say.Line();
            Say.Line($"== {title} ==");
        }

        foreach (string line in JobListing.Lines(jobs))
        {
            Say.Line(line);
        }
    }
}
