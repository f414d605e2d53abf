namespace ProcRunner.Runs;

/// <summary>
/// A job as its entries left it. <c>Apply</c> only copies what the events say: it evaluates no formula and
/// compares no limit. Not thread-safe; one owner applies, others read.
/// </summary>
public sealed class RunState
{
    private readonly RunResults _results;
    private Outlook? _outlook;

    /// <summary>The state before any entry.</summary>
    /// <param name="plan">What is worked to.</param>
    /// <param name="jobId">The job's id in the store.</param>
    public RunState(Plan plan, string jobId)
    {
        (Plan, JobId) = (plan, jobId);
        _results = new RunResults(plan);
    }

    /// <summary>What is worked to.</summary>
    public Plan Plan { get; }

    /// <summary>The job's id in the store.</summary>
    public string JobId { get; }

    /// <summary>The job, or null before it is opened.</summary>
    public JobHeader? Job { get; private set; }

    /// <summary>Where the job stands.</summary>
    public JobStanding Standing { get; private set; }

    /// <summary>Why it is held or scrapped; empty otherwise.</summary>
    public string StandingReason { get; private set; } = "";

    /// <summary>Sequence of the last entry; 0 before any.</summary>
    public long Sequence { get; private set; }

    /// <summary>The person the job was last handed to; empty when never.</summary>
    public string Worker { get; private set; } = "";

    /// <summary>The step and position that the last entry was about, or null.</summary>
    public At? LastAt => _results.LastAt;

    /// <summary>Gauges in use, by kind.</summary>
    public Dictionary<string, string> Gauges { get; } = new(StringComparer.Ordinal);

    /// <summary>Limits chosen in the run.</summary>
    public List<RunEvent.LimitChosen> ChosenLimits { get; } = [];

    /// <summary>Notes with the sequence of their entry.</summary>
    public List<(long Sequence, RunEvent.Noted Note)> Notes { get; } = [];

    /// <summary>Entries put in place of others, and steps left out that are to be done after all; in order.</summary>
    public List<CorrectedEntry> Corrections { get; } = [];

    /// <summary>Parts fitted, in order.</summary>
    public List<RunEvent.PartFitted> Parts { get; } = [];

    /// <summary>The earlier job that this one is a comeback of; null for none.</summary>
    public RunEvent.CameBack? Earlier { get; private set; }

    /// <summary>The other heads of the engine.</summary>
    public List<RunEvent.HeadLinked> Linked { get; } = [];

    /// <summary>How this head was last compared with another, by that one's job.</summary>
    public Dictionary<string, RunEvent.HeadsCompared> Compared { get; } = new(StringComparer.Ordinal);

    /// <summary>The record of a step at a position, or null before anything happened there.</summary>
    public StepRecord? Find(At at) => _results.Find(at);

    /// <summary>The latest value of a characteristic at a position, or null.</summary>
    public ValueRecord? Value(int characteristic, int position) => _results.Value(characteristic, position);

    /// <summary>The latest value by name, or null when there is none of that name or no value yet.</summary>
    public ValueRecord? Value(string characteristic, int position) =>
        Plan.TryCharacteristic(characteristic, out int index) ? Value(index, position) : null;

    /// <summary>The standing of a step at a position.</summary>
    public StepStanding StandingOf(At at) => Find(at)?.Standing ?? StepStanding.Waiting;

    /// <summary>The latest choice about a subject at a position or of the head; null while there is none.</summary>
    public string? ChoiceOf(string subject, int position) => _results.LastSaid(Plan.DecidersOf(subject), position);

    /// <summary>The latest finding of an inspection at a position or of the head; null while there is none.</summary>
    public string? FindingOf(string subject, int position) => _results.LastSaid(Plan.InspectorsOf(subject), position);

    /// <summary>Takes over what one entry says.</summary>
    /// <param name="sequence">The entry's sequence in the trail.</param>
    /// <param name="events">Its events, in order.</param>
    public void Apply(long sequence, IReadOnlyList<RunEvent> events)
    {
        Sequence = sequence;
        _results.Begin(sequence);
        for (int i = 0; i < events.Count; i++)
        {
            if (!_results.Take(events[i]))
            {
                Apply(events[i]);
            }
        }

        if (_results.Corrected is { } at)
        {
            Corrections[^1] = Corrections[^1] with { Became = SaidAt.Of(_results.Touch(at)) };
        }
    }

    /// <summary>What is open now. It follows the run from entry to entry; <c>new Outlook(state)</c> stays as it is made.</summary>
    public Outlook Outlook
    {
        get
        {
            if (_outlook is null)
            {
                _outlook = new Outlook(this);
                _results.Changes.Clear();
            }
            else if (!_results.Changes.IsNothing)
            {
                _outlook.Follow(_results.Changes);
                _results.Changes.Clear();
            }

            return _outlook;
        }
    }

    /// <summary>The stale values, by characteristic, then by position.</summary>
    internal (int Characteristic, int Position)[] StaleValues() => _results.StaleValues();

    private void Apply(RunEvent happened)
    {
        switch (happened)
        {
            case RunEvent.JobOpened opened:
                Job = opened.Header;
                break;
            case RunEvent.JobReleased:
                Standing = JobStanding.Released;
                break;
            case RunEvent.PartFitted fitted:
                Parts.Add(fitted);
                break;
            case RunEvent.LeavingOutTakenBack back:
                string until = $"left out: {_results.Touch(back.At).Said}";
                Corrections.Add(new(Sequence, back.At, until, "to be done", back.Reason));
                break;
            case RunEvent.HeadScrapped scrapped:
                (Standing, StandingReason) = (JobStanding.Scrapped, scrapped.Reason);
                break;
            case RunEvent.JobHeld held:
                (Standing, StandingReason) = (JobStanding.Held, held.Reason);
                break;
            case RunEvent.JobTakenUp:
                (Standing, StandingReason) = (JobStanding.Open, "");
                break;
            case RunEvent.HandedOver handed:
                Worker = handed.To;
                break;
            case RunEvent.GaugeChosen chosen:
                Gauges[chosen.Kind] = chosen.Gauge;
                break;
            case RunEvent.LimitChosen limit:
                ChosenLimits.Add(limit);
                _results.Changes.AddEverything();
                break;
            case RunEvent.Noted note:
                Notes.Add((Sequence, note));
                break;
            case RunEvent.EntryCorrected corrected:
                Apply(corrected);
                break;
            case RunEvent.CameBack back:
                Earlier = back;
                break;
            case RunEvent.HeadLinked linked:
                Linked.Add(linked);
                break;
            case RunEvent.HeadsCompared compared:
                Compared[compared.Job] = compared;
                break;
            default:
                break;
        }
    }

    private void Apply(RunEvent.EntryCorrected corrected)
    {
        string said = SaidAt.Of(_results.Touch(corrected.At));
        Corrections.Add(new(Sequence, corrected.At, said, "", corrected.Reason));
        _results.TakeBack(corrected.At);
        int part = Parts.FindLastIndex(p => p.At == corrected.At);
        if (part >= 0)
        {
            Parts.RemoveAt(part);
        }
    }
}
