using Microsoft.Extensions.Time.Testing;
using ProcRunner.People;
using ProcRunner.Quantities;
using ProcRunner.Runs;
using ProcRunner.Runs.Prompts;
using ProcRunner.Shop;
using ProcRunner.Store.Local;
using ProcRunner.Testing;
using ProcRunner.Tui.Demo;
using ProcRunner.Tui.Drawing;
using ProcRunner.Tui.Jobs;
using ProcRunner.Tui.Screens;
using ProcRunner.Tui.Screens.Run;
using ProcRunner.Tui.Screens.Shop;
using ProcRunner.Tui.Shell;

namespace ProcRunner.Tui.Tests.Shop;

/// <summary>A shop with a clock and randomness of its own, so that every screen of it can be compared. All invented.</summary>
internal sealed class ShopBench : IDisposable
{
    public const string LeadPin = "135790";

    private readonly TempFolder _folder = new();
    private byte _random;

    public ShopBench(bool people = true, bool runs = false)
    {
        Time = new FakeTimeProvider(new DateTimeOffset(2031, 4, 7, 8, 30, 0, TimeSpan.Zero));
        Time.SetLocalTimeZone(
            TimeZoneInfo.CreateCustomTimeZone("two east", TimeSpan.FromHours(2), "two east", "two east")
        );
        StoreReader? reader = null;
        StoreOpening opening = StoreFolder.Found(
            Folder,
            "Bent Valve Works",
            "tests",
            Time,
            Fill,
            "bench one",
            JobProjection.Over(() => reader!)
        );
        Store = ((StoreOpening.Opened)opening).Store;
        reader = Store.Reader;
        Desk = new ShopDesk(Store, Fill, rounds: 1, Time);
        Session = new ShopSession(
            Store,
            Folder,
            Time,
            ScreenSettings.From(null),
            Desk,
            (session, run) => runs ? RunScreen.Open(run, session) : new StandInRun(run)
        );
        if (people)
        {
            Populate();
        }
    }

    public string Folder => _folder["store"];

    public FakeTimeProvider Time { get; }

    public LocalStore Store { get; }

    public ShopDesk Desk { get; }

    public ShopSession Session { get; }

    public ShopState Shop => Store.Shop;

    public Look Look => new(Glyphs.Utf8, Time.GetLocalNow());

    /// <summary>Opens a job on the head and procedure that come with the program.</summary>
    public JobRun Open(
        string stamp,
        string customer,
        string person = "vale",
        bool practice = false,
        string complaint = ""
    )
    {
        (PlanTexts? texts, _) = DemoShop.ReadPlan();
        JobHeader header = new()
        {
            Stamp = stamp,
            ProcedureDigest = texts!.ProcedureDigest.ToString(),
            HeadDigest = texts.HeadDigest.ToString(),
            Customer = customer,
            Complaint = complaint,
            Practice = practice,
        };
        string before = Session.Person;
        Session.Works(person);
        (JobRun? run, string fault) = Session.Begin(texts, header);
        Session.Works(before);
        Assert.True(run is not null, fault);
        return run!;
    }

    /// <summary>A job with a text in every place, as a store from elsewhere may hold it: no command would be let through.</summary>
    public JobRun OpenUndecided(string stamp, string text)
    {
        (PlanTexts? texts, _) = DemoShop.ReadPlan();
        text = Text.SafeText.Clean(text);
        JobHeader header = new()
        {
            Stamp = stamp,
            ProcedureDigest = texts!.ProcedureDigest.ToString(),
            HeadDigest = texts.HeadDigest.ToString(),
            Customer = text,
        };
        EntryDraft Draft(RunEvent happened) => new("vale", [RunEventFormat.Write(texts.Plan, happened)]);
        AppendResult opened = Store.OpenJob(
            stamp,
            [texts.ProcedureText, texts.HeadText],
            Draft(new RunEvent.JobOpened(header))
        );
        string id = Assert.IsType<AppendResult.Written>(opened).Entry.Of;
        Store.Append(id, Draft(new RunEvent.Noted(null, text)));
        Store.Append(id, Draft(new RunEvent.JobHeld(text)));
        return JobRun.Resume(Store, Time, id, "vale").Run!;
    }

    /// <summary>Enters something at the step that comes next.</summary>
    public static JobAnswer Enter(JobRun run, string text) =>
        run.Do(new RunCommand.Enter(Prompter.Next(run.State)!.Value, text));

    public void Dispose()
    {
        Store.Dispose();
        _folder.Dispose();
    }

    private void Populate()
    {
        Assert.Null(Desk.AddFirstLead("T. Moss", LeadPin));
        Assert.Null(Desk.AddPerson("vale", "R. Vale", Role.Operator, "2468", "moss", LeadPin));
        Assert.Null(Desk.AddPerson("finch", "A. Finch", Role.Trainee, "1357", "moss", LeadPin));
        Assert.Null(Desk.AddGauge(Gauge("D1", "depth gauge on its bridge", "depth", "0.0001 in", "0.0002 in"), "moss"));
        Assert.Null(Desk.AddGauge(Gauge("S1", "spring tester", "spring tester", "1 lbf", "0.8 lbf"), "moss"));
        Assert.Null(
            Desk.AddGauge(
                Gauge("M1", "outside micrometer 0 to 6", "micrometer", "0.0001 in", "0.00005 in") with
                {
                    CalibratedUntil = new DateOnly(2031, 1, 31),
                },
                "moss"
            )
        );
        Assert.Null(Desk.SetReadout(new Readout(Units.Inch, 0.0005m, true, false, false, false), "moss"));
        Session.Works("vale");
    }

    private static Gauge Gauge(string id, string name, string kind, string resolution, string uncertainty) =>
        new(id, name, kind, Of(resolution), Of(uncertainty), null, null);

    private static Quantity Of(string text) =>
        Quantity.TryParse(text, out Quantity quantity) ? quantity : throw new ArgumentException(text, nameof(text));

    private void Fill(Span<byte> bytes)
    {
        foreach (ref byte one in bytes)
        {
            one = _random = (byte)((_random + 1) % 251);
        }
    }
}
