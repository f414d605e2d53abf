using System.Collections.Immutable;
using ProcRunner.Records;
using ProcRunner.Runs;
using ProcRunner.Runs.Prompts;
using ProcRunner.Store.Local;
using ProcRunner.Trail;

namespace ProcRunner.Tui.Jobs;

/// <summary>What of a job is searched for.</summary>
internal static class JobProjection
{
    /// <summary>The projection for a store read through this reader.</summary>
    public static IndexProjection Over(Func<StoreReader> reader)
    {
        PlanShelf shelf = new();
        return (jobId, entries) => Project(reader(), jobId, [.. entries], shelf);
    }

    /// <summary>What a job waits for, in words.</summary>
    public static string WaitingFor(RunState state) =>
        state.Standing switch
        {
            JobStanding.Held => $"on hold: {state.StandingReason}",
            JobStanding.Released => "nothing: released",
            JobStanding.Scrapped => $"nothing: scrapped, {state.StandingReason}",
            _ => Prompter.Next(state) is { } at ? state.Plan.NameOf(at) : "nothing",
        };

    /// <summary>A job's standing as a word.</summary>
    public static string StandingWord(JobStanding standing) => BuildRecord.WordOf(standing);

    // A later one of the same kind at the same place has taken the earlier one's.
    private static IndexedPart Part(RunState state, RunEvent.PartFitted part, int index) =>
        new(part.Part, part.Number, part.Lot, state.Plan.PositionName(part.At.Position))
        {
            IsInPlace = !state
                .Parts.Skip(index + 1)
                .Any(later => later.Part == part.Part && later.At.Position == part.At.Position),
        };

    private static IndexedJob? Project(
        StoreReader reader,
        string jobId,
        ImmutableArray<TrailEntry> entries,
        PlanShelf shelf
    )
    {
        JobGathering gathered = new();
        if (
            entries.IsEmpty
            || JobReading.Fold(reader, jobId, entries, gathered.Take, shelf).State is not { Job: { } header } state
        )
        {
            return null;
        }

        return new IndexedJob(
            jobId,
            header.Stamp,
            header.Customer,
            StandingWord(state.Standing),
            WaitingFor(state),
            entries[0].At,
            entries[^1].At,
            state.Worker.Length > 0 ? state.Worker : entries[^1].Operator,
            [.. state.Parts.Select((p, i) => Part(state, p, i))]
        )
        {
            Head = state.Plan.Head.Title,
            Bench = entries[^1].Bench,
            Practice = header.Practice,
            Earlier = state.Earlier?.Job ?? "",
            Linked = [.. state.Linked.Select(l => l.Job)],
            People = gathered.People,
            Gauges = gathered.Gauges,
            Cutters = gathered.Cutters,
            Notes = [.. new[] { header.Complaint, header.EarlierWork }.Where(t => t.Length > 0), .. gathered.Notes],
            Readings = [.. gathered.Readings],
            Proof = state.Standing is JobStanding.Released or JobStanding.Scrapped
                ? ProofCode.Of(TrailLine.DigestOf(TrailLine.Encode(entries[^1]))).ToString()
                : "",
        };
    }
}
