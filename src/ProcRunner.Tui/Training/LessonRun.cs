using ProcRunner.Lessons;
using ProcRunner.Practice;
using ProcRunner.Practice.Bindings;
using ProcRunner.Practice.Gauges;
using ProcRunner.Quantities;
using ProcRunner.Runs;
using ProcRunner.Runs.Prompts;
using ProcRunner.Store.Local;
using ProcRunner.Tui.Jobs;
using ProcRunner.Tui.Shell;

namespace ProcRunner.Tui.Training;

/// <summary>
/// A lesson under way: the practice head under the job, what its gauges show, what was misread, and whether the lesson is
/// over. What it shows follows from the seed and the trail alone.
/// </summary>
internal sealed class LessonRun
{
    private const long NotYet = -1;
    private readonly PracticeSession _session;
    private readonly DebriefBook _book;
    private readonly Slips _slips;
    private readonly LessonAnswers _answers;
    private readonly HandFeed _feed;
    private long _begun = NotYet;
    private bool _isElsewhere;
    private bool _isRefused;

    /// <summary>A lesson at the beginning of its job; what has happened since is told it entry by entry.</summary>
    /// <param name="lesson">The lesson.</param>
    /// <param name="binding">Its head and gauges.</param>
    /// <param name="job">The job.</param>
    /// <param name="book">Where it is written how lessons went.</param>
    /// <param name="learner">Id of the learner.</param>
    public LessonRun(Lesson lesson, Binding binding, JobRun job, DebriefBook book, string learner)
    {
        (Lesson, Job, _book, _answers) = (lesson, job, book, new LessonAnswers(job.State.Plan));
        _session = new PracticeSession(binding, (ulong)lesson.Seed, 0);
        _slips = new Slips(_session);
        _feed = new HandFeed(_session, book.Tool, job.State.JobId);
        Others = new OthersWork(this, _session, learner);
    }

    /// <summary>Takes a lesson up where it was left, or begins it; null with the reason when neither can be.</summary>
    /// <param name="store">The practice room's store.</param>
    /// <param name="book">Where it is written how lessons went.</param>
    /// <param name="lesson">The lesson.</param>
    /// <param name="person">Id of the learner.</param>
    /// <param name="coach">When the coach speaks.</param>
    /// <param name="time">The clock; null: the machine's.</param>
    public static (LessonRun? Run, string Fault) Open(
        LocalStore store,
        DebriefBook book,
        Lesson lesson,
        string person,
        CoachMode coach,
        TimeProvider? time = null
    ) => new LessonOpening(store, book, time).Open(lesson, person, coach);

    /// <summary>The lesson.</summary>
    public Lesson Lesson { get; }

    /// <summary>The job that it is worked on.</summary>
    public JobRun Job { get; }

    /// <summary>What somebody else does of the job.</summary>
    public OthersWork Others { get; }

    /// <summary>The lesson that comes after this one, and its first page; null after the last.</summary>
    public (string Name, Func<Screens.Screen?> Open)? Following { get; set; }

    /// <summary>When the coach speaks.</summary>
    public CoachMode Coach { get; set; }

    /// <summary>The learner says when the coach is to speak: from now on, and at the next start.</summary>
    public void Keep(CoachMode mode)
    {
        Coach = mode;
        _book.Coach.Write(Job.Person, mode);
    }

    /// <summary>True once the learner has taken over.</summary>
    public bool IsBegun => _begun != NotYet;

    /// <summary>Readings that weren't typed as the face showed them, in order.</summary>
    public IReadOnlyList<Misread> Misreads => _slips.All;

    /// <summary>What the coach has to say of the last answer and wasn't read yet; nothing where it speaks only when asked.</summary>
    public IReadOnlyList<string> Remarks { get; private set; } = [];

    /// <summary>Takes what the coach has to say as read.</summary>
    public IReadOnlyList<string> TakeRemarks()
    {
        IReadOnlyList<string> said = Remarks;
        Remarks = [];
        return said;
    }

    /// <summary>
    /// True once the step that ends the lesson is answered wherever it is asked, or the job is closed; where it is the release,
    /// once that was refused.
    /// </summary>
    public bool IsOver =>
        _isRefused
        || Job.State.Standing is JobStanding.Released or JobStanding.Scrapped
        || IsAnswered(Lesson.Until, Lesson.At)
        || (Lesson.UntilWay is { } way && _answers.Hold(way));

    private Plan Plan => Job.State.Plan;

    /// <summary>What the gauge of a step shows now, place by place; empty where none is read.</summary>
    public IReadOnlyList<Quantity> Shown(Prompt prompt) =>
        prompt.Awaits == Awaited.Reading && _session.Chosen(Job.State, prompt.At) is null
            ? [.. _session.Look(Job.State, prompt.At).Select(r => r.Shown)]
            : [];

    /// <summary>What is true where a step is read, in the gauge's unit: for holding texts against it, no screen asks it.</summary>
    internal IReadOnlyList<decimal> True(Prompt prompt)
    {
        if (Shown(prompt).Count == 0)
        {
            return [];
        }

        Unit unit = GaugeOf(prompt).Character.Gauge.Resolution.Unit;
        return
        [
            .. _session
                .Look(Job.State, prompt.At)
                .Select(r => (decimal)((r.True - unit.Offset.ToDouble()) / unit.Factor.ToDouble())),
        ];
    }

    /// <summary>The gauge that a step is read with.</summary>
    public PracticeGauge GaugeOf(Prompt prompt) => _session.GaugeFor(prompt.Step.Taking!);

    /// <summary>The gauge that is read at a step, as the shop knows it; null where none is.</summary>
    public Shop.Gauge? GaugeIn(Prompt prompt) => Shown(prompt).Count > 0 ? GaugeOf(prompt).Character.Gauge : null;

    /// <summary>What there is to be seen at an inspection, in words; empty elsewhere.</summary>
    public string Seen(Prompt prompt) => prompt.Awaits == Awaited.Finding ? _session.Finding(prompt.At) : "";

    /// <summary>What an inspection looks at, drawn; empty where there is nothing to draw.</summary>
    public IReadOnlyList<string> Sight(Prompt prompt) =>
        prompt.Awaits == Awaited.Finding && _session.Binding.Finding(prompt.At.Step) is { } bound
            ? SightView.Of(_session.Head, bound, prompt.At.Position)
            : [];

    /// <summary>What there is to be seen or heard at a step without a gauge; empty where there is nothing.</summary>
    public string Told(Prompt prompt) =>
        Lesson.At is null || prompt.At.Position == At.Head || prompt.Position == Lesson.At
            ? Lesson.Told.GetValueOrDefault(prompt.Step.FullName, "")
            : "";

    /// <summary>What the readout shows while the tool is fed; null where nothing is cut.</summary>
    public Quantity? ReadoutOf(Prompt prompt) => _feed.Shows(prompt);

    /// <summary>True while the tool was fed into the metal and nobody has said yet where it stopped.</summary>
    public bool IsInTheMetal(Prompt? prompt) => prompt is not null && _feed.Turns(prompt) > 0;

    /// <summary>One turn of the feed by hand.</summary>
    public void Feed(Prompt prompt, bool isCoarse) => _feed.Turn(prompt, isCoarse);

    /// <summary>
    /// The tool has stopped and the learner says what the readout shows: where that isn't so, the trail keeps what it showed,
    /// so that the metal is cut to where the tool was. The reason where nothing was fed at all; empty when it may be entered.
    /// </summary>
    public string Stop(Prompt prompt, string typed)
    {
        if (_feed.Shows(prompt) is not { } shows)
        {
            return "";
        }

        if (_feed.Turns(prompt) == 0)
        {
            return $"The tool hasn't been fed: the readout shows {shows}.";
        }

        return _feed.NoteFor(prompt, shows, typed) is { } note ? FaultOf(Job.Do(note)) : "";
    }

    /// <summary>Looks back at the lesson and writes down how it went, once.</summary>
    public Debrief Close()
    {
        Debrief debrief = Debrief.Of(this, Job.Store!);
        _book.Write(Job.State.JobId, Machine.Time.GetUtcNow(), debrief);
        return debrief;
    }

    /// <summary>Every time the learner took this lesson, the oldest first.</summary>
    public IReadOnlyList<DebriefBook.Line> Times() =>
        [.. _book.Of(Job.Person).Where(line => line.Lesson == Lesson.Name)];

    /// <summary>Whether a planted fault was answered as it should be: true, false, or null while its step is still to come.</summary>
    public bool? IsCaught(PlantedFault fault) =>
        _answers.Catch(fault) ? true
        : IsAnswered(fault.Step, fault.Position) || IsOver ? false
        : null;

    /// <summary>From now on what is done to the job is done to the practice head.</summary>
    public void Listen()
    {
        Job.Recorded = Happened;
        Job.Refused = command =>
            _isRefused |= command is RunCommand.Sign sign && Plan.Steps[sign.At.Step].FullName == Lesson.Until;
    }

    /// <summary>A tool that was left in the metal stands where it was.</summary>
    public void TakeUpTheTool() => _feed.TakeUp(Job.State);

    /// <summary>Why something wasn't recorded; empty when it was.</summary>
    public static string FaultOf(JobAnswer answer) =>
        answer switch
        {
            JobAnswer.Refused refused => refused.Why,
            JobAnswer.NotWritten failed => failed.Why,
            _ => "",
        };

    private void Happened(IReadOnlyList<RunEvent> events)
    {
        int before = Misreads.Count;
        Take(Job.State, events);
        if (Others.IsAtWork)
        {
            return;
        }

        if (!IsOver)
        {
            Others.Work();
        }

        Remarks = Coach == CoachMode.EachStep ? Training.Coach.OnAnswer(this, events, [.. Misreads.Skip(before)]) : [];
    }

    /// <summary>
    /// Takes over what happened, in the order of the trail. Looks at the gauges before the head learns of the entry: the next
    /// taking is another draw.
    /// </summary>
    /// <param name="state">The run, after it.</param>
    /// <param name="events">What happened.</param>
    public void Take(RunState state, IReadOnlyList<RunEvent> events)
    {
        bool isCorrection = events.Any(e => e is RunEvent.EntryCorrected);
        foreach (RunEvent happened in events)
        {
            if (happened is RunEvent.ReadingTaken taken && !_isElsewhere)
            {
                _slips.Take(state, taken, isCorrection);
            }
            else if (happened is RunEvent.PassCut pass && isCorrection)
            {
                _slips.TakeCorrection(pass);
            }

            if (_feed.Take(happened) is { } readout)
            {
                _slips.Add(readout);
            }

            if (happened is RunEvent.HandedOver handed)
            {
                TakeHands(handed.To, state.Sequence);
            }
            else if (!_isElsewhere)
            {
                _answers.Take(happened);
            }
        }

        _session.Apply(state, events);
    }

    // What somebody else answers, before the lesson or beside it, is none of the learner's doing.
    private void TakeHands(string to, long sequence)
    {
        _isElsewhere = to == Others.Who;
        if (IsBegun)
        {
            return;
        }

        _begun = sequence;
        _answers.Clear();
        _slips.Clear();
        _session.Change(Lesson.Then);
    }

    // Answered since the learner came; a step of the head is answered there, wherever the lesson is.
    private bool IsAnswered(string name, string? position)
    {
        Plan.TryStep(name, out int step);
        IReadOnlyList<int> all = Plan.PositionsOf(Plan.Steps[step]);
        bool isHere = position is { } one && Plan.TryPosition(one, out int index) && all.Contains(index);
        IEnumerable<int> positions = isHere ? all.Where(p => Plan.PositionName(p) == position) : all;
        return positions.All(p =>
            Job.State.Find(new At(step, p)) is { Standing: StepStanding.Done or StepStanding.LeftOut } record
            && record.Sequence > _begun
        );
    }
}
