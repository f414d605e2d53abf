using ProcRunner.Problems;
using ProcRunner.Runs;
using ProcRunner.Store.Local;
using ProcRunner.Text;
using ProcRunner.Trail;

namespace ProcRunner.Tui.Jobs;

/// <summary>A job as its trail and its pinned texts give it.</summary>
/// <param name="State">The run.</param>
/// <param name="Last">Digest of the last entry.</param>
/// <param name="Entries">The entries, with their digests.</param>
internal sealed record JobReading(RunState State, Digest Last, IReadOnlyList<(TrailEntry Entry, Digest Digest)> Entries)
{
    /// <summary>What the last entry says.</summary>
    public IReadOnlyList<RunEvent> LastEvents =>
        [.. Entries[^1].Entry.Events.Select(map => RunEventFormat.Read(State.Plan, map)!)];

    /// <summary>Reads a job; null with the reason when its trail or texts don't hold.</summary>
    public static (JobReading? Job, string Fault) Read(ITrailReader reader, string jobId)
    {
        TrailReading trail = reader.ReadTrail(jobId);
        if (trail.Entries.IsEmpty)
        {
            return (null, $"The job's trail can't be read. {trail.Verdict.InWords()}");
        }

        (RunState? state, string fault) = Fold(reader, jobId, trail.Entries.Select(e => e.Entry));
        return state is null ? (null, fault) : (new(state, trail.Entries[^1].Digest, trail.Entries), "");
    }

    /// <summary>Folds entries into a run, with the texts that the first of them pins.</summary>
    /// <param name="reader">The store.</param>
    /// <param name="jobId">The job.</param>
    /// <param name="entries">The entries, from the first.</param>
    /// <param name="before">Told of each entry and the run as it stood before it.</param>
    /// <param name="shelf">Plans read before; null: they are read anew.</param>
    public static (RunState? State, string Fault) Fold(
        ITrailReader reader,
        string jobId,
        IEnumerable<TrailEntry> entries,
        Action<RunState, TrailEntry, IReadOnlyList<RunEvent>>? before = null,
        PlanShelf? shelf = null
    )
    {
        RunState? state = null;
        foreach (TrailEntry entry in entries)
        {
            if (state is null)
            {
                (PlanTexts? texts, string fault) = TextsOf(reader, entry, shelf);
                if (texts is null)
                {
                    return (null, fault);
                }

                state = new RunState(texts.Plan, jobId);
            }

            List<RunEvent> events = [];
            foreach (Json.Map map in entry.Events)
            {
                if (RunEventFormat.Read(state.Plan, map) is { } happened)
                {
                    events.Add(happened);
                }
                else
                {
                    return (
                        null,
                        $"Entry {entry.Sequence.ToString(System.Globalization.CultureInfo.InvariantCulture)} holds \"{SafeText.Show(map.TextAt("e") ?? "")}\", which this program can't read."
                    );
                }
            }

            before?.Invoke(state, entry, events);
            state.Apply(entry.Sequence, events);
        }

        return (state, state is null ? "The job has no entries." : "");
    }

    private static (PlanTexts? Texts, string Fault) TextsOf(ITrailReader reader, TrailEntry first, PlanShelf? shelf)
    {
        Json.Map opened = first.Events[0];
        if (
            Digest.Parse(opened.TextAt("procedure")) is not { } procedure
            || Digest.Parse(opened.TextAt("head")) is not { } head
        )
        {
            return (null, "The job's first entry names no procedure and head spec.");
        }

        return shelf is null
            ? TextsOf(reader, procedure, head)
            : shelf.Get(procedure, head, () => TextsOf(reader, procedure, head));
    }

    private static (PlanTexts? Texts, string Fault) TextsOf(ITrailReader reader, Digest procedure, Digest head)
    {
        if (reader.ReadText(procedure) is not { } procedureText || reader.ReadText(head) is not { } headText)
        {
            return (
                null,
                "The procedure or head spec that the job was opened with is missing from the store, or was changed."
            );
        }

        (PlanTexts? texts, IReadOnlyList<Problem> problems) = PlanTexts.Read(
            "procedure",
            procedureText,
            "head spec",
            headText
        );
        return (texts, problems.Count > 0 ? $"The job's procedure can't be read: {problems[0]}" : "");
    }
}
