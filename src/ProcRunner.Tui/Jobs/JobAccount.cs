using ProcRunner.Procedures;
using ProcRunner.Runs;
using ProcRunner.Store.Local;
using ProcRunner.Trail;

namespace ProcRunner.Tui.Jobs;

/// <summary>All that a job comes to, for whoever looks at it: values, parts, decisions, marks, notes, what is open.</summary>
internal sealed class JobAccount
{
    private JobAccount(RunState state, IReadOnlyList<TrailEntry> entries, IReadOnlyList<JobMark> marks)
    {
        (State, Entries, Marks) = (state, entries, marks);
        Outlook outlook = new(state);
        Open = [.. outlook.Open];
        Rechecks = [.. outlook.All.Where(outlook.IsRecheck)];
    }

    /// <summary>The run.</summary>
    public RunState State { get; }

    /// <summary>The trail's entries.</summary>
    public IReadOnlyList<TrailEntry> Entries { get; }

    /// <summary>Every mark, in order.</summary>
    public IReadOnlyList<JobMark> Marks { get; }

    /// <summary>Steps that can be done now; none in a job that is closed.</summary>
    public IReadOnlyList<At> Open { get; }

    /// <summary>Steps that were done and are to be done again because something moved.</summary>
    public IReadOnlyList<At> Rechecks { get; }

    /// <summary>True when nothing can follow any more.</summary>
    public bool IsClosed => State.Standing is JobStanding.Released or JobStanding.Scrapped;

    /// <summary>Reads a job; null with the reason when its trail or texts don't hold.</summary>
    public static (JobAccount? Account, string Fault) Read(ITrailReader reader, string jobId)
    {
        TrailEntry[] entries = [.. reader.ReadTrail(jobId).Entries.Select(e => e.Entry)];
        List<JobMark> marks = [];
        (RunState? state, string fault) = JobReading.Fold(
            reader,
            jobId,
            entries,
            (_, entry, events) => marks.AddRange(events.Select(e => JobMark.Of(entry.Sequence, e)).OfType<JobMark>())
        );
        return state?.Job is null
            ? (null, fault.Length > 0 ? fault : "The job was never opened.")
            : (new(state, entries, marks), "");
    }

    /// <summary>The values that count now: those of the head, then position by position.</summary>
    public IEnumerable<FinalValue> Values =>
        JobProjection.Values(State).OrderBy(v => v.Position).Select(v => Final(v.Characteristic, v.Position, v.Value));

    /// <summary>What was decided: subject, position, choice.</summary>
    public IEnumerable<(string Subject, string Position, string Choice)> Decisions
    {
        get
        {
            Plan plan = State.Plan;
            IEnumerable<(string Subject, int Position)> asked = plan
                .Steps.Where(s => s.Work is StepWork.Decide)
                .SelectMany(s => plan.PositionsOf(s).Select(p => (((StepWork.Decide)s.Work).Subject, p)))
                .Distinct();
            foreach ((string subject, int position) in asked)
            {
                if (State.ChoiceOf(subject, position) is { } choice)
                {
                    yield return (subject, plan.PositionName(position), choice);
                }
            }
        }
    }

    private FinalValue Final(Characteristic characteristic, int position, ValueRecord value)
    {
        At at = new(value.ByStep, position);
        StepRecord? record = State.Find(at);
        TakenReading? reading = record?.Readings.LastOrDefault(r => r.Characteristic == characteristic.Name);
        string verdict =
            value.Stale ? $"recheck: {value.Cause}"
            : record is { Conceded: true } && value.Judgement.Verdict == Verdict.Out ? "conceded"
            : InWords(value.Judgement.Verdict);
        return new(
            characteristic.Name,
            State.Plan.PositionName(position),
            value,
            State.Plan.Steps[value.ByStep].FullName,
            reading?.Gauge ?? "",
            reading is null,
            verdict
        );
    }

    private static string InWords(Verdict verdict) =>
        verdict switch
        {
            Verdict.In => "in limits",
            Verdict.Out => "out of spec",
            Verdict.Short => "not deep enough yet",
            _ => "recorded",
        };
}
