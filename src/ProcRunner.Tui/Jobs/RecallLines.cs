using ProcRunner.Store.Local;

namespace ProcRunner.Tui.Jobs;

/// <summary>What is recalled, in lines for a person.</summary>
internal static class RecallLines
{
    /// <summary>The readings of a gauge, head by head.</summary>
    /// <param name="gauge">Its id.</param>
    /// <param name="since">From when on.</param>
    /// <param name="asBooked">True when the shop book says that it was good then.</param>
    /// <param name="readings">The readings.</param>
    public static IEnumerable<string> OfGauge(
        string gauge,
        DateTimeOffset since,
        bool asBooked,
        IReadOnlyList<(IndexedJob Job, IndexedReading Reading)> readings
    )
    {
        IGrouping<string, (IndexedJob Job, IndexedReading Reading)>[] heads = [.. readings.GroupBy(r => r.Job.Id)];
        yield return $"{Count(readings.Count, "reading")} with {gauge} on {Count(heads.Length, "head")} since {JobListing.Minute(since)} UTC{(asBooked ? ", when the shop book last has it known good" : "")}";
        foreach (string line in Heads([.. heads.Select(h => (h.First().Job, h.Count()))]))
        {
            yield return line;
        }

        foreach (IGrouping<string, (IndexedJob Job, IndexedReading Reading)> job in heads)
        {
            IndexedJob head = job.First().Job;
            string practice = head.Practice ? " (practice)" : "";
            yield return "";
            yield return $"== {head.Stamp}: {head.State}, {head.Customer}{practice} ==";
            foreach ((_, IndexedReading reading) in job)
            {
                string found = reading.AsFound ? ", as found" : "";
                string verdict = reading.Verdict == "out" ? ", out of spec" : "";
                yield return $"{JobListing.Minute(reading.At)}  {reading.Position, -5} {reading.Name} {reading.Value}{verdict}{found}, {reading.Person}";
            }
        }
    }

    // Which heads are concerned, before what was read on each.
    private static IEnumerable<string> Heads(IReadOnlyList<(IndexedJob Job, int Readings)> heads)
    {
        int stamp = heads.Select(h => h.Job.Stamp.Length).DefaultIfEmpty(0).Max();
        int count = heads.Select(h => JobListing.Number(h.Readings).Length).DefaultIfEmpty(0).Max();
        return heads.Select(h =>
            $"  {h.Job.Stamp.PadRight(stamp)}  {h.Job.State, -8}  {JobListing.Number(h.Readings).PadLeft(count)} {(h.Readings == 1 ? "reading " : "readings")}  {h.Job.Customer}"
        );
    }

    private static string Count(int count, string what) =>
        $"{JobListing.Number(count)} {what}{(count == 1 ? "" : "s")}";

    /// <summary>Where a part stands in a job.</summary>
    public static string Where(IndexedJob job, string number, string? lot) =>
        string.Join(
            ", ",
            PartsOf(job, number, lot).Select(p => p.IsInPlace ? p.Position : $"{p.Position} (replaced again later)")
        );

    /// <summary>How many jobs hold it, in a line; those where another one took its place later are named apart.</summary>
    public static string Held(IReadOnlyList<IndexedJob> jobs, string number, string? lot)
    {
        int holding = jobs.Count(job => PartsOf(job, number, lot).Any(p => p.IsInPlace));
        string what = $"{number}{(lot is null ? "" : $", lot {lot}")}";
        string held = $"{JobListing.Number(holding)} {(holding == 1 ? "job holds" : "jobs hold")} {what}";
        return holding == jobs.Count
            ? held
            : $"{held}; {JobListing.Number(jobs.Count - holding)} held it until another took its place";
    }

    /// <summary>The parts of a number and lot in a job.</summary>
    public static IEnumerable<IndexedPart> PartsOf(IndexedJob job, string number, string? lot) =>
        job.Parts.Where(p => Same(p.Number, number) && (lot is null || Same(p.Lot, lot)));

    private static bool Same(string a, string b) => string.Equals(a, b, StringComparison.OrdinalIgnoreCase);
}
