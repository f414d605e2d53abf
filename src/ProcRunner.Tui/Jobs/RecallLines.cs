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
        int jobs = readings.Select(r => r.Job.Id).Distinct().Count();
        yield return $"{JobListing.Number(readings.Count)} readings with {gauge} on {JobListing.Number(jobs)} heads since {JobListing.Minute(since)} UTC{(asBooked ? ", when the shop book last has it known good" : "")}";
        foreach (IGrouping<string, (IndexedJob Job, IndexedReading Reading)> job in readings.GroupBy(r => r.Job.Id))
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

    /// <summary>Where a part stands in a job.</summary>
    public static string Where(IndexedJob job, string number, string? lot) =>
        string.Join(", ", PartsOf(job, number, lot).Select(p => p.Position));

    /// <summary>The parts of a number and lot in a job.</summary>
    public static IEnumerable<IndexedPart> PartsOf(IndexedJob job, string number, string? lot) =>
        job.Parts.Where(p => Same(p.Number, number) && (lot is null || Same(p.Lot, lot)));

    private static bool Same(string a, string b) => string.Equals(a, b, StringComparison.OrdinalIgnoreCase);
}
