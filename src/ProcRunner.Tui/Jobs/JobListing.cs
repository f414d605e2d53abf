using System.Collections.Immutable;
using System.Globalization;
using ProcRunner.Store.Local;
using ProcRunner.Trail;
using ProcRunner.Tui.Training;

namespace ProcRunner.Tui.Jobs;

/// <summary>Jobs as a list, for people and for scripts.</summary>
internal static class JobListing
{
    private const int WidestWait = 48;

    /// <summary>A line for each job, below a line of headings.</summary>
    public static IEnumerable<string> Lines(IReadOnlyList<IndexedJob> jobs) =>
        Lines([.. jobs.Select(j => new JobHit(j, 0, null, ""))]);

    /// <summary>A line for each job that was found, below a line of headings, and what was found of it.</summary>
    public static IEnumerable<string> Lines(ImmutableArray<JobHit> hits)
    {
        if (hits.IsEmpty)
        {
            return ["no jobs"];
        }

        int stamp = Math.Max("stamp".Length, hits.Max(h => h.Job.Stamp.Length));
        int waits = Math.Max("waiting for".Length, hits.Max(h => Waits(h.Job).Length));
        int bench = Math.Max("bench".Length, hits.Max(h => h.Job.Bench.Length));
        string Cells(string a, string b, string c, string d, string e, string f) =>
            $"{a.PadRight(stamp)}  {b, -8}  {c.PadRight(waits)}  {d, -16}  {e.PadRight(bench)}  {f}".TrimEnd();
        string Row(IndexedJob j) =>
            Cells(
                j.Stamp,
                j.State,
                Waits(j),
                Minute(j.LastActivity),
                j.Bench,
                (j.Practice ? "PRACTICE, " : "") + j.Customer
            );
        return
        [
            Cells("stamp", "state", "waiting for", "since (UTC)", "bench", "customer"),
            .. hits.SelectMany(h =>
                HitWords.Of(h) is { Length: > 0 } found
                    ? (string[])[Row(h.Job), new string(' ', stamp + 2) + found]
                    : [Row(h.Job)]
            ),
        ];
    }

    /// <summary>A job of the list.</summary>
    public static Json.Map Json(IndexedJob job) =>
        Trail.Json.MapOf(
            ("stamp", new Json.Text(job.Stamp)),
            ("job", new Json.Text(job.Id)),
            ("state", new Json.Text(job.State)),
            ("waiting-for", new Json.Text(job.WaitingFor)),
            ("since", new Json.Text(Second(job.LastActivity))),
            ("opened", new Json.Text(Second(job.Opened))),
            ("customer", new Json.Text(job.Customer)),
            ("head", new Json.Text(job.Head)),
            ("bench", new Json.Text(job.Bench)),
            ("person", new Json.Text(job.Person)),
            ("practice", new Json.Flag(job.Practice)),
            ("proof", job.Proof.Length > 0 ? new Json.Text(job.Proof) : Trail.Json.Nothing)
        );

    /// <summary>A job from elsewhere as a line below the list.</summary>
    public static string Line(ExportedJob job) =>
        $"{job.Stamp}  {(job.Shop == PracticeRoom.Name ? "PRACTICE, " : "")}from elsewhere: {job.Shop}; it can only be looked at";

    /// <summary>A job from elsewhere for a script.</summary>
    public static Json.Map Json(ExportedJob job) =>
        Trail.Json.MapOf(
            ("stamp", new Json.Text(job.Stamp)),
            ("job", new Json.Text(job.JobId)),
            ("state", new Json.Text("from elsewhere")),
            ("shop", new Json.Text(job.Shop)),
            ("roots", Trail.Json.ListOf([.. job.Roots.Select(root => (Json)new Json.Text(root.ToString()))]))
        );

    /// <summary>A moment for a person, in UTC.</summary>
    public static string Minute(DateTimeOffset at) =>
        at.UtcDateTime.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);

    /// <summary>A moment for a script, in UTC.</summary>
    public static string Second(DateTimeOffset at) =>
        at.UtcDateTime.ToString("yyyy-MM-dd'T'HH:mm:ss'Z'", CultureInfo.InvariantCulture);

    /// <summary>A number.</summary>
    public static string Number(long number) => number.ToString(CultureInfo.InvariantCulture);

    private static string Waits(IndexedJob job) =>
        job.WaitingFor.Length <= WidestWait ? job.WaitingFor : job.WaitingFor[..(WidestWait - 1)] + "…";
}
