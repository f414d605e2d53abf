using System.Globalization;
using ProcRunner.Lessons;
using ProcRunner.Practice;
using ProcRunner.Practice.Bindings;
using ProcRunner.Practice.Gauges;
using ProcRunner.Practice.Operators;
using ProcRunner.Quantities;
using ProcRunner.Runs;
using ProcRunner.Runs.Prompts;
using ProcRunner.Store.Local;
using ProcRunner.Tui.Demo;
using ProcRunner.Tui.Jobs;
using ProcRunner.Tui.Shell;

namespace ProcRunner.Tui.Training;

/// <summary>
/// A lesson under way: the practice head under the job, what its gauges show, what was misread, and whether the lesson is
/// over. What it shows follows from the seed and the trail alone.
/// </summary>
internal sealed class LessonRun
{
    private readonly PracticeSession _session;
    private readonly DebriefBook _book;
    private readonly List<Misread> _misreads = [];
    private readonly HashSet<(At At, string Answer)> _answers = [];
    private readonly HandFeed _feed;
    private bool _isLearners;
    private bool _isRefused;

    private LessonRun(Lesson lesson, Binding binding, JobRun job, DebriefBook book)
    {
        (Lesson, Job, _book) = (lesson, job, book);
        _session = new PracticeSession(binding, (ulong)lesson.Seed, 0);
        _feed = new HandFeed(_session);
    }

    /// <summary>The lesson.</summary>
    public Lesson Lesson { get; }

    /// <summary>The job that it is worked on.</summary>
    public JobRun Job { get; }

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

    /// <summary>Readings that weren't typed as the face showed them, in order.</summary>
    public IReadOnlyList<Misread> Misreads => _misreads;

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
        || (Lesson.UntilWay is { } way && _answers.Any(answer => answer.Answer == way));

    private Plan Plan => Job.State.Plan;

    private At UntilAt
    {
        get
        {
            Plan.TryStep(Lesson.Until, out int step);
            return new At(step, Lesson.At is { } at && Plan.TryPosition(at, out int index) ? index : At.Head);
        }
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
    )
    {
        (PlanTexts? texts, Binding? binding, string fault) = LessonShelf.Bind(lesson);
        if (texts is null || binding is null)
        {
            return (null, fault);
        }

        // Everybody has heads of their own.
        string stamp = $"{lesson.Name} {person}".ToUpperInvariant().Replace(' ', '-');
        string[] mine = [.. store.Shop.Jobs.Values.Where(j => IsTry(j.Stamp, stamp)).Select(j => j.Id)];
        foreach (string id in mine)
        {
            (LessonRun? open, fault) = Resume(store, book, lesson, binding, id, person, coach, time);
            if (open is null || !open.IsOver)
            {
                return (open, fault);
            }
        }

        JobHeader header = new()
        {
            Stamp = mine.Length == 0 ? stamp : FormattableString.Invariant($"{stamp}-{mine.Length + 1}"),
            ProcedureDigest = texts.ProcedureDigest.ToString(),
            HeadDigest = texts.HeadDigest.ToString(),
            Customer = "practice (invented)",
            Complaint = lesson.Title,
            Practice = true,
        };
        // Who goes before the learner is somebody else: the trail shows where the learner takes over.
        string before = DemoShop.People.Select(p => p.Id).First(id => id != person);
        (JobRun? job, fault) = JobRun.Begin(store, time ?? Machine.Time, texts, header, before);
        if (job is null)
        {
            return (null, fault);
        }

        LessonRun run = new(lesson, binding, job, book);
        run.Listen();
        fault = run.WorkUpTo(person);
        run.Coach = coach;
        return fault.Length > 0 ? (null, $"The lesson can't be made ready: {fault}") : (run, "");
    }

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
    public Shop.Gauge? GaugeIn(Prompt prompt) =>
        prompt.Awaits == Awaited.Reading ? GaugeOf(prompt).Character.Gauge : null;

    /// <summary>What there is to be seen at an inspection, in words; empty elsewhere.</summary>
    public string Seen(Prompt prompt) => prompt.Awaits == Awaited.Finding ? _session.Finding(prompt.At) : "";

    /// <summary>What an inspection looks at, drawn; empty where there is nothing to draw.</summary>
    public IReadOnlyList<string> Sight(Prompt prompt) =>
        prompt.Awaits == Awaited.Finding && _session.Binding.Finding(prompt.At.Step) is { } bound
            ? SightView.Of(_session.Head, bound.Of, prompt.At.Position)
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
    public bool? IsCaught(PlantedFault fault)
    {
        Plan.TryStep(fault.Step, out int step);
        int position = fault.Position is { } name && Plan.TryPosition(name, out int index) ? index : At.Head;
        bool isChanged = fault.OrChange is { } change && _answers.Contains((new At(-1, position), change));
        return isChanged || _answers.Contains((new At(step, position), fault.Answer)) ? true
            : IsAnswered(fault.Step, fault.Position) || IsOver ? false
            : null;
    }

    private static bool IsTry(string stamp, string of) =>
        stamp == of
        || (
            stamp.StartsWith(of + "-", StringComparison.Ordinal)
            && int.TryParse(stamp[(of.Length + 1)..], NumberStyles.None, CultureInfo.InvariantCulture, out _)
        );

    private static (LessonRun? Run, string Fault) Resume(
        LocalStore store,
        DebriefBook book,
        Lesson lesson,
        Binding binding,
        string id,
        string person,
        CoachMode coach,
        TimeProvider? time
    )
    {
        (JobRun? job, string fault) = JobRun.Resume(store, time ?? Machine.Time, id, person);
        if (job is null)
        {
            return (null, fault);
        }

        LessonRun run = new(lesson, binding, job, book) { Coach = coach };
        IReadOnlyList<RunEvent> last = [];
        (RunState? state, fault) = JobReading.Fold(
            store.Reader,
            id,
            store.Reader.ReadTrail(id).Entries.Select(e => e.Entry),
            (before, _, events) =>
            {
                run.Take(before, last);
                last = events;
            }
        );
        if (state is null)
        {
            return (null, fault);
        }

        run.Take(state, last);
        run.Listen();
        return (run, "");
    }

    // The model operator works under the lead's name up to the lesson's first step, then hands over.
    private string WorkUpTo(string person)
    {
        if (Lesson.From is { } from && Plan.TryStep(from, out int first))
        {
            string fault = ModelOperator.PlayTo(
                _session,
                Job.State,
                Job.Shop,
                Carry,
                at => at.Step >= first && IsThere(at)
            );
            if (fault.Length > 0)
            {
                return fault;
            }
        }

        return FaultOf(Job.Do(new RunCommand.HandOver(person)));
    }

    private void Listen()
    {
        Job.Recorded = Happened;
        Job.Refused = command => _isRefused |= command is RunCommand.Sign sign && sign.At == UntilAt;
    }

    private bool IsThere(At at) =>
        Lesson.At is null || at.Position == At.Head || Plan.PositionName(at.Position) == Lesson.At;

    private (string Fault, IReadOnlyList<RunEvent> Events) Carry(RunCommand command)
    {
        (string lead, _, _, string pin) = DemoShop.People[0];
        JobAnswer answer = command switch
        {
            RunCommand.Sign sign => Job.Sign(sign.At, lead, pin, null, null),
            RunCommand.TakeWay { Mark: not null } way => Job.TakeWayByLead(
                way.At,
                Prompter.At(Job.State, Job.Shop, way.At).WaysOn.First(w => w.Text == way.Way),
                way.Reason,
                lead,
                pin
            ),
            _ => Job.Do(command),
        };
        return answer is JobAnswer.Recorded recorded ? ("", recorded.Events) : (FaultOf(answer), []);
    }

    private static string FaultOf(JobAnswer answer) =>
        answer switch
        {
            JobAnswer.Refused refused => refused.Why,
            JobAnswer.NotWritten failed => failed.Why,
            _ => "",
        };

    private void Happened(IReadOnlyList<RunEvent> events)
    {
        int before = _misreads.Count;
        Take(Job.State, events);
        Remarks = Coach == CoachMode.EachStep ? Training.Coach.OnAnswer(this, events, [.. _misreads.Skip(before)]) : [];
    }

    // Looks at the gauges before the head learns of the entry: the next taking is another draw.
    private void Take(RunState state, IReadOnlyList<RunEvent> events)
    {
        foreach (RunEvent happened in events)
        {
            if (happened is RunEvent.ReadingTaken taken && _session.Chosen(state, taken.At) is null)
            {
                Compare(state, taken);
            }

            if (_feed.Take(happened) is { } readout)
            {
                _misreads.Add(readout);
            }

            if (AnswerOf(happened) is { } answer)
            {
                _answers.Add(answer);
            }

            if (happened is RunEvent.ChangeReported change)
            {
                _answers.Add((new At(-1, change.Position), change.Change));
            }

            if (happened is RunEvent.ReadingTaken { Reading.Value.Value: 0 } none)
            {
                _answers.Add((none.At, "none"));
            }

            // What the one before answered is none of the learner's doing.
            if (happened is RunEvent.HandedOver && !_isLearners)
            {
                _isLearners = true;
                _answers.Clear();
                _misreads.Clear();
                _session.Change(Lesson.Then);
            }
        }

        _session.Apply(state, events);
    }

    private void Compare(RunState state, RunEvent.ReadingTaken taken)
    {
        GaugeReading[] shown = _session.Look(state, taken.At);
        for (int i = 0; i < Math.Min(shown.Length, taken.Reading.Places.Count); i++)
        {
            PlaceValue typed = taken.Reading.Places[i];
            if (typed.Value.CompareTo(shown[i].Shown) != 0)
            {
                Shop.Gauge gauge = _session.GaugeFor(Plan.Steps[taken.At.Step].Taking!).Character.Gauge;
                _misreads.Add(new Misread(taken.At, typed.Place, typed.Value, shown[i].Shown, gauge));
            }
        }
    }

    /// <summary>What an event answers where; null for one that is no answer.</summary>
    public static (At At, string Answer)? AnswerOf(RunEvent happened) =>
        happened switch
        {
            RunEvent.FindingNoted e => (e.At, e.Finding),
            RunEvent.ChoiceMade e => (e.At, e.Choice),
            RunEvent.WayTaken e => (e.At, e.Way),
            RunEvent.LeftOut e => (e.At, "left out"),
            RunEvent.ReadingTaken e => (e.At, e.Reading.Good ? "in limits" : "out of spec"),
            _ => null,
        };

    private bool IsAnswered(string name, string? position)
    {
        Plan.TryStep(name, out int step);
        IEnumerable<int> positions =
            position is { } one && Plan.TryPosition(one, out int index) ? [index] : Plan.PositionsOf(Plan.Steps[step]);
        return positions.All(p => Job.State.StandingOf(new At(step, p)) is StepStanding.Done or StepStanding.LeftOut);
    }
}
