using System.Collections.Immutable;
using System.CommandLine;
using ProcRunner.Store.Local;
using ProcRunner.Trail;
using ProcRunner.Tui.Jobs;
using ProcRunner.Tui.Shell;

namespace ProcRunner.Tui.Commands;

/// <summary><c>recall</c>: every job that holds a part and lot, or every reading that a gauge took since it was known good.</summary>
internal static class RecallVerb
{
    /// <summary>The verb.</summary>
    public static Command Create()
    {
        Option<string?> part = new("--part") { Description = "a part's number, in full", HelpName = "number" };
        Option<string?> lot = new("--lot") { Description = "its lot, in full; none: every lot", HelpName = "lot" };
        Option<string?> gauge = new("--gauge") { Description = "a gauge's id", HelpName = "id" };
        Option<string?> since = DayOption.Create(
            "--since",
            "with --gauge: from this day on; otherwise since the shop book says it was last known good"
        );
        Option<bool> json = JsonOption.Create();
        Command verb = new("recall", "every job that holds a part and lot, or every reading taken with a gauge")
        {
            part,
            lot,
            gauge,
            since,
            json,
        };
        verb.SetAction(parsed =>
        {
            string? number = parsed.GetValue(part)?.Trim();
            string? id = parsed.GetValue(gauge)?.Trim();
            (DateTimeOffset? from, string fault) = DayOption.Begin(parsed.GetValue(since));
            return fault.Length > 0 ? Say.Usage(fault, "")
                : number is null == id is null
                    ? Say.Usage("Say what is recalled: --part with its number, or --gauge with its id.", "")
                : IndexedStore.Ask(
                    StoreOption.ToRead(parsed),
                    (reader, index) =>
                        id is null
                            ? OfPart(index, number!, parsed.GetValue(lot)?.Trim(), parsed.GetValue(json))
                            : OfGauge(reader, index, id, from, parsed.GetValue(json))
                );
        });
        return verb;
    }

    private static int OfPart(SearchIndex index, string number, string? lot, bool json)
    {
        ImmutableArray<IndexedJob> jobs = index.Holding(number, lot);
        if (json)
        {
            Say.Json(Json.ListOf([.. jobs.Select(job => Held(job, number, lot))]));
        }
        else
        {
            Say.Line(RecallLines.Held(jobs, number, lot));
            foreach (string line in jobs.IsEmpty ? [] : Lines(jobs, number, lot))
            {
                Say.Line(line);
            }
        }

        if (jobs.IsEmpty && !json)
        {
            Say.Aside("Number and lot are compared in full; procrunner find --part looks for a piece of one.");
        }

        return jobs.IsEmpty ? Status.No : Status.Done;
    }

    private static IEnumerable<string> Lines(ImmutableArray<IndexedJob> jobs, string number, string? lot)
    {
        int stamp = Math.Max("stamp".Length, jobs.Max(j => j.Stamp.Length));
        int where = Math.Max("where".Length, jobs.Max(j => RecallLines.Where(j, number, lot).Length));
        yield return $"{"stamp".PadRight(stamp)}  {"state", -8}  {"opened", -10}  {"where".PadRight(where)}  customer";
        foreach (IndexedJob job in jobs)
        {
            string opened = JobListing.Minute(job.Opened)[..10];
            string practice = job.Practice ? " (practice)" : "";
            yield return $"{job.Stamp.PadRight(stamp)}  {job.State, -8}  {opened, -10}  {RecallLines.Where(job, number, lot).PadRight(where)}  {job.Customer}{practice}";
        }
    }

    private static Json.Map Held(IndexedJob job, string number, string? lot) =>
        Json.MapOf([
            .. JobListing.Json(job).Items.Select(i => (i.Key, i.Value)),
            (
                "parts",
                Json.ListOf([
                    .. RecallLines
                        .PartsOf(job, number, lot)
                        .Select(p =>
                            (Json)
                                Json.MapOf(
                                    ("part", new Json.Text(p.Name)),
                                    ("number", new Json.Text(p.Number)),
                                    ("lot", new Json.Text(p.Lot)),
                                    ("at", new Json.Text(p.Position)),
                                    ("in-place", new Json.Flag(p.IsInPlace))
                                )
                        ),
                ])
            ),
        ]);

    private static int OfGauge(StoreReader reader, SearchIndex index, string gauge, DateTimeOffset? from, bool json)
    {
        DateTimeOffset? good = from ?? GaugeGoodness.LastKnownGood(reader, gauge);
        if (good is not { } since)
        {
            return Say.No(
                $"The shop book knows no gauge {gauge}.",
                "procrunner gauges lists them; --since says from when on."
            );
        }

        ImmutableArray<(IndexedJob Job, IndexedReading Reading)> readings = index.ReadingsWith(gauge, since);
        if (json)
        {
            Say.Json(Json.ListOf([.. readings.Select(r => Taken(r.Job, r.Reading))]));
            return readings.IsEmpty ? Status.No : Status.Done;
        }

        foreach (string line in RecallLines.OfGauge(gauge, since, from is null, readings))
        {
            Say.Line(line);
        }

        return readings.IsEmpty ? Status.No : Status.Done;
    }

    private static Json.Map Taken(IndexedJob job, IndexedReading reading) =>
        Json.MapOf(
            ("stamp", new Json.Text(job.Stamp)),
            ("state", new Json.Text(job.State)),
            ("practice", new Json.Flag(job.Practice)),
            ("at", new Json.Text(JobListing.Second(reading.At))),
            ("reading", new Json.Text(reading.Name)),
            ("position", new Json.Text(reading.Position)),
            ("value", new Json.Text(reading.Value)),
            ("verdict", new Json.Text(reading.Verdict)),
            ("as-found", new Json.Flag(reading.AsFound)),
            ("person", new Json.Text(reading.Person))
        );
}
