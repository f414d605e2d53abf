using System.Collections.Immutable;
using System.Globalization;
using ProcRunner.Store.Local;
using ProcRunner.Trail;

namespace ProcRunner.Tui.Jobs;

/// <summary>Jobs as a list, for people and for scripts.</summary>
internal static class JobListing
{
    /// <summary>A line for each job, below a line of headings.</summary>
    public static IEnumerable<string> Lines(ImmutableArray<IndexedJob> jobs)
    {
        if (jobs.IsEmpty)
        {
            return ["no jobs"];
        }

        int stamp = Math.Max("stamp".Length, jobs.Max(j => j.Stamp.Length));
        int waits = Math.Max("waiting for".Length, jobs.Max(j => j.WaitingFor.Length));
        string Row(string a, string b, string c, string d, string e) =>
            $"{a.PadRight(stamp)}  {b, -8}  {c.PadRight(waits)}  {d, -16}  {e}".TrimEnd();
        return
        [
            Row("stamp", "state", "waiting for", "since (UTC)", "customer"),
            .. jobs.Select(j => Row(j.Stamp, j.State, j.WaitingFor, Minute(j.LastActivity), j.Customer)),
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
            ("proof", job.Proof.Length > 0 ? new Json.Text(job.Proof) : Trail.Json.Nothing)
        );

    /// <summary>A job from elsewhere as a line below the list.</summary>
    public static string Line(ExportedJob job) => $"{job.Stamp}  from elsewhere: {job.Shop}; it can only be looked at";

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
}
