using ProcRunner.People;
using ProcRunner.Store.Local;
using ProcRunner.Tui.Demo;
using ProcRunner.Tui.Drawing;
using ProcRunner.Tui.Jobs;
using ProcRunner.Tui.Screens.Parts;
using ProcRunner.Tui.Shell;
using ProcRunner.Tui.Training;

namespace ProcRunner.Tui.Screens.Shop;

/// <summary>
/// The way into the program: opens or makes a store and gives the screens that it begins with, the lowest first. Whoever
/// made it disposes it, and with it the store.
/// </summary>
/// <param name="folder">The store's folder; null: where the platform keeps a program's data.</param>
/// <param name="settings">How the screen behaves.</param>
/// <param name="runScreen">The screen that a job is worked on.</param>
/// <param name="rounds">PBKDF2 rounds for new PINs.</param>
internal sealed class ShopDoor(
    string? folder,
    ScreenSettings settings,
    Func<ShopSession, JobRun, Screen> runScreen,
    int rounds = PersonKeys.DefaultRounds
) : IDisposable, IAttendance
{
    private PracticeDoor? _practice;

    /// <summary>Where the shop's own store is, or will be.</summary>
    public string ShopFolder { get; } = folder ?? Machine.ShopFolder;

    /// <summary>How the screen behaves.</summary>
    public ScreenSettings Settings => settings;

    /// <summary>Told, while there is no screen yet, how many jobs of how many have been read for the list.</summary>
    public Action<int, int>? Progress { get; init; }

    /// <inheritdoc/>
    public TimeSpan? IdleAfter => Session?.IdleAfter;

    /// <inheritdoc/>
    public Screen? AskWho(bool idle) => Session?.AskWho(idle);

    /// <summary>The session, once a store is open.</summary>
    public ShopSession? Session { get; private set; }

    private string DemoFolder { get; } = folder ?? Machine.DemoFolder;

    // A room of its own beside a store in a folder of its own: no lesson ever touches a shop's store.
    private string PracticeFolder { get; } =
        folder is null ? Machine.PracticeFolder : $"{Path.TrimEndingDirectorySeparator(folder)}-practice";

    /// <summary>The screens to begin with; none, with the reason, when the store can't be opened.</summary>
    /// <param name="stamp">The stamp of the job to go on with; null: the list of jobs.</param>
    public (IReadOnlyList<Screen> Screens, string Fault) Start(string? stamp = null)
    {
        bool demo = stamp is not null && DemoShop.IsDemo(stamp);
        if (demo && (folder is null || !StoreFolder.Exists(folder)))
        {
            return OpenDemo(stamp!);
        }

        if (!StoreFolder.Exists(ShopFolder))
        {
            return stamp is null
                ? ([new WelcomeScreen(this)], "")
                : ([], $"There is no store in {ShopFolder} yet. procrunner without a stamp makes one.");
        }

        (LocalStore? store, string fault) = ShopFloor.Open(ShopFolder, "the screen");
        if (store is null)
        {
            return ([], fault);
        }

        // A large index is made before there is a screen, where it can be said how far it has got.
        if (store.Index is { } index)
        {
            index.Progress = Progress;
            index.TryRefresh();
        }

        (IReadOnlyList<Screen> screens, fault) = Enter(store, ShopFolder, stamp);
        if (store.Index is { } made)
        {
            made.Progress = null;
        }

        return (screens, fault);
    }

    /// <summary>Opens the practice room, made if need be; no screen, with the reason, when it can't be.</summary>
    public (Screen? Screen, string Fault) Practice()
    {
        if (_practice is null or { IsClosed: true })
        {
            (_practice, string fault) = PracticeDoor.Open(PracticeFolder, coach: null);
            if (_practice is null)
            {
                return (null, fault);
            }
        }

        return (_practice.First(), "");
    }

    /// <summary>Opens the demo shop, made if need be, at its head.</summary>
    public (IReadOnlyList<Screen> Screens, string Fault) OpenDemo(string stamp = DemoShop.Stamp)
    {
        (LocalStore? store, string fault) = DemoShop.Open(DemoFolder, "the screen");
        if (store is null)
        {
            return ([], fault);
        }

        ShopSession session = Begin(store, DemoFolder);
        session.Works(DemoShop.Operator);
        (JobRun? run, fault) = DemoShop.OpenJob(store, stamp);
        session.Kept(run, fault);
        session.Works(run?.Person ?? DemoShop.Operator);
        return (run is null ? [new JobListScreen(session, fault)] : Above(session, run.State.JobId), "");
    }

    /// <summary>Makes the shop's own store with its first lead.</summary>
    public (IReadOnlyList<Screen> Screens, string Fault) FoundShop(string name, string lead, string pin)
    {
        (LocalStore? store, string fault, _) = ShopDesk.Found(ShopFolder, name, lead, pin, rounds);
        if (store is null)
        {
            return ([], fault);
        }

        ShopSession session = Begin(store, ShopFolder);
        session.Works(store.Shop.RootId ?? "");
        return (
            [new JobListScreen(session, "Founded. Next, in the menu: the readout (settings), gauges, people.")],
            ""
        );
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        Session?.Store.Dispose();
        Session = null;
        _practice?.Dispose();
        _practice = null;
    }

    private (IReadOnlyList<Screen> Screens, string Fault) Enter(LocalStore store, string place, string? stamp)
    {
        ShopSession session = Begin(store, place);
        IReadOnlyList<Person> people = session.Desk.Present;
        if (people.Count == 0)
        {
            return ([new FirstLeadForm(session)], "");
        }

        if (DemoShop.Is(store.Shop))
        {
            session.Works(DemoShop.Operator);
        }
        else if (people.Count == 1)
        {
            session.Works(people[0].Id);
        }

        if (stamp is not null)
        {
            return OpenStamp(session, stamp);
        }

        Screen first =
            session.Person.Length > 0
                ? new JobListScreen(session)
                : new WhoScreen(session, () => new Turn.Instead(new JobListScreen(session, session.TakeWord())));
        return ([first, .. Findings(session)], "");
    }

    private static (IReadOnlyList<Screen> Screens, string Fault) OpenStamp(ShopSession session, string stamp)
    {
        if (session.Store.Shop.JobsWithStamp(stamp).FirstOrDefault() is not { } job)
        {
            return ([], $"There is no job stamped {Fitting.Line(stamp, 40)} here.");
        }

        if (session.Person.Length > 0)
        {
            return (Above(session, job.Id), "");
        }

        return (
            [
                new WhoScreen(
                    session,
                    () =>
                    {
                        IReadOnlyList<Screen> screens = Above(session, job.Id);
                        return new Turn.Instead(screens[0], screens.ElementAtOrDefault(1));
                    }
                ),
            ],
            ""
        );
    }

    private static IReadOnlyList<Screen> Above(ShopSession session, string jobId)
    {
        (JobRun? run, string fault) = session.Job(jobId);
        Screen? screen = null;
        if (run is not null)
        {
            (screen, fault) = session.GoOn(run);
        }

        JobListScreen list = new(session, fault);
        return screen is null ? [list] : [list, screen];
    }

    private static IEnumerable<Screen> Findings(ShopSession session)
    {
        if (!session.Store.Findings.IsEmpty)
        {
            yield return new PageScreen(
                session,
                "Found while opening the store",
                [.. session.Store.Findings.Select(finding => new TextLine(finding.Text, Ink.Mind))]
            );
        }
    }

    private ShopSession Begin(LocalStore store, string place)
    {
        ShopDesk desk = new(store, Machine.Entropy, rounds);
        Session = new ShopSession(store, place, Machine.Time, settings, desk, runScreen) { Practice = Practice };
        return Session;
    }
}
