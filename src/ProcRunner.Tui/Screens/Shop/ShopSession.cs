using ProcRunner.People;
using ProcRunner.Runs;
using ProcRunner.Store.Local;
using ProcRunner.Tui.Jobs;
using ProcRunner.Tui.Screens.Parts;
using ProcRunner.Tui.Shell;
using ProcRunner.Tui.Training;

namespace ProcRunner.Tui.Screens.Shop;

/// <summary>The day's work on one store: who works, which jobs are open, what the last screen had to say.</summary>
internal sealed class ShopSession : IFrameWords, IAttendance
{
    private readonly Dictionary<string, JobRun> _runs = new(StringComparer.Ordinal);
    private readonly Func<ShopSession, JobRun, Screen> _runScreen;
    private JobRun? _atWork;
    private bool _signedOut;
    private string _word = "";

    /// <summary>A session on an open store.</summary>
    /// <param name="store">The store, held for writing.</param>
    /// <param name="folder">Its folder.</param>
    /// <param name="time">The clock.</param>
    /// <param name="settings">How the screen behaves.</param>
    /// <param name="desk">What writes to the shop book.</param>
    /// <param name="runScreen">The screen that a job is worked on.</param>
    public ShopSession(
        LocalStore store,
        string folder,
        TimeProvider time,
        ScreenSettings settings,
        ShopDesk desk,
        Func<ShopSession, JobRun, Screen> runScreen
    )
    {
        (Store, Folder, Time, Settings, Desk, _runScreen) = (store, folder, time, settings, desk, runScreen);
    }

    /// <summary>The way into the practice room; null where there is none.</summary>
    public Func<(Screen? First, string Fault)>? Practise { get; init; }

    /// <summary>The store.</summary>
    public LocalStore Store { get; }

    /// <summary>Opens the practice room; no screen, with the reason, when there is none.</summary>
    public Func<(Screen? Screen, string Fault)> Practice { get; init; } =
        () => (null, "There is no practice room here.");

    /// <summary>The store's folder.</summary>
    public string Folder { get; }

    /// <summary>The clock.</summary>
    public TimeProvider Time { get; }

    /// <summary>How the screen behaves.</summary>
    public ScreenSettings Settings { get; }

    /// <summary>What writes to the shop book.</summary>
    public ShopDesk Desk { get; }

    /// <summary>Id of the person at the machine; empty until somebody is.</summary>
    public string Person { get; private set; } = "";

    /// <inheritdoc/>
    public string Corner => _signedOut || Person.Length == 0 ? Store.Shop.Name : $"{NameOf(Person)}, {Store.Shop.Name}";

    /// <inheritdoc/>
    public bool IsPractice => PracticeRoom.Is(Store.Shop);

    /// <summary>The name that goes with an id; the id itself for somebody unknown.</summary>
    public string NameOf(string id) => Store.Shop.People.TryGetValue(id, out Person? person) ? person.Name : id;

    /// <summary>Somebody works from now on. The trail of a job learns of it when they go on with that job.</summary>
    public void Works(string person) => (Person, _atWork) = (person, null);

    /// <summary>Id of the person at the machine, on the job in hand where there is one; empty until somebody is.</summary>
    public string AtMachine => _atWork?.Person ?? Person;

    /// <inheritdoc/>
    public TimeSpan? IdleAfter =>
        Store.Shop.IdleMinutes > 0 && AtMachine.Length > 0 ? TimeSpan.FromMinutes(Store.Shop.IdleMinutes) : null;

    /// <inheritdoc/>
    public Screen? AskWho(bool idle)
    {
        if (AtMachine.Length == 0)
        {
            return null;
        }

        _signedOut = idle;
        return new SignInScreen(this, idle);
    }

    /// <summary>
    /// Somebody is at the machine from now on; the job in hand is theirs, and its trail says so. What keeps that from being so,
    /// or null.
    /// </summary>
    public string? ChangeTo(string person)
    {
        string before = Person;
        Person = person;
        string? fault = _atWork is { } run ? TakeOver(run) : null;
        Person = fault is null ? person : before;
        _signedOut &= fault is not null;
        return fault;
    }

    /// <summary>Told when the work on a job is left: whom it was handed over to is the one who works.</summary>
    public void LeftWork()
    {
        if (_atWork is { } run)
        {
            Works(run.Person);
        }
    }

    /// <summary>Leaves a word for the screen that comes up next.</summary>
    public void LeaveWord(string word) => _word = word;

    /// <inheritdoc/>
    public string TakeWord()
    {
        string word = _word;
        _word = "";
        return word;
    }

    /// <inheritdoc/>
    public Screen Help() => new PageScreen(this, "Keys", HelpText.Of(Store.Shop));

    /// <summary>A job, read once and then kept: two copies of one run would drift apart.</summary>
    public (JobRun? Run, string Fault) Job(string jobId)
    {
        if (_runs.TryGetValue(jobId, out JobRun? open))
        {
            return (open, "");
        }

        (JobRun? run, string fault) = JobRun.Resume(Store, Time, jobId, Person);
        if (run is not null)
        {
            _runs[jobId] = run;
        }

        return (run, fault);
    }

    /// <summary>Opens a new job.</summary>
    public (JobRun? Run, string Fault) Begin(PlanTexts texts, JobHeader header, OtherJobs? others = null)
    {
        (JobRun? run, string fault) = JobRun.Begin(Store, Time, texts, header, Person, others);
        if (run is not null && others?.Linked is { } linked && Job(linked.Job).Run is { } other)
        {
            other.StandIn(Person);
            EngineHeads.Tell(other, run);
        }

        return Kept(run, fault);
    }

    /// <summary>Takes over a run that was opened elsewhere.</summary>
    public (JobRun? Run, string Fault) Kept(JobRun? run, string fault)
    {
        if (run is not null)
        {
            _runs[run.State.JobId] = run;
        }

        return (run, fault);
    }

    /// <summary>
    /// The screen to go on with a job: the run while it is open or held, otherwise how it stands. Whoever goes on with another
    /// person's job takes it over, and the trail says so.
    /// </summary>
    public (Screen? Screen, string Fault) GoOn(JobRun run)
    {
        if (run.State.Standing is not (JobStanding.Open or JobStanding.Held))
        {
            return (new JobScreen(this, run), "");
        }

        if (TakeOver(run) is { } fault)
        {
            return (null, fault);
        }

        _atWork = run;
        return (_runScreen(this, run), "");
    }

    /// <summary>Whoever is at the machine becomes the one whose entries follow; what keeps that from being so, or null.</summary>
    public string? TakeOver(JobRun run)
    {
        if (Person.Length == 0 || run.Person == Person)
        {
            return null;
        }

        if (run.State.Standing != JobStanding.Open)
        {
            run.StandIn(Person);
            return null;
        }

        return FaultOf(run.Do(new RunCommand.HandOver(Person)));
    }

    /// <summary>Why something wasn't recorded, or null when it was.</summary>
    public static string? FaultOf(JobAnswer answer) =>
        answer switch
        {
            JobAnswer.Refused refused => refused.Why,
            JobAnswer.NotWritten failed => $"NOT WRITTEN: {failed.Why} Nothing was recorded; it can be tried again.",
            _ => null,
        };
}
