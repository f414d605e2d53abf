using ProcRunner.Runs;
using ProcRunner.Testing;
using ProcRunner.Tui.Drawing;
using ProcRunner.Tui.Jobs;
using ProcRunner.Tui.Screens;
using ProcRunner.Tui.Screens.Parts;
using ProcRunner.Tui.Screens.Shop;
using ProcRunner.Tui.Shell;

namespace ProcRunner.Tui.Tests.Shop;

/// <summary>Every screen of the shop as a picture, at both sizes. Everything in them is invented.</summary>
public sealed class ShopPictureTests : IDisposable
{
    private static readonly string[] Names =
    [
        "who",
        "heads",
        "heads-none",
        "menu",
        "new-job",
        "new-job-choice",
        "look",
        "state",
        "state-practice",
        "job-menu",
        "history",
        "notes",
        "note",
        "hold",
        "hand-over",
        "find",
        "found",
        "people",
        "person",
        "new-person",
        "new-pin",
        "has-left",
        "gauges",
        "new-gauge",
        "calibration",
        "settings",
        "readout",
        "keys",
        "problems",
    ];

    private readonly ShopBench _bench = new();

    public static TheoryData<string, int, int> Pictures { get; } = ScreenPictures.Of(Names);

    public void Dispose() => _bench.Dispose();

    [Theory]
    [MemberData(nameof(Pictures))]
    public void Every_screen_looks_like_this(string name, int width, int height)
    {
        Desk desk = Make(name);
        desk.Draw(width, height, _bench.Look);
        ScreenPictures.Match(desk.Picture(_bench.Look, width, height), name, width, height);
    }

    [Fact]
    public void Without_UTF_8_only_ASCII_is_drawn()
    {
        foreach (string name in Names)
        {
            using ShopPictureTests fresh = new();
            string picture = fresh.Make(name).Picture(_bench.Look with { Glyphs = Glyphs.Ascii });
            Assert.DoesNotContain(picture, c => c is > '~' and not '\u00b0' and not '\u00b5');
        }

        Golden.Match(Make("heads").Picture(_bench.Look with { Glyphs = Glyphs.Ascii }), "heads-ascii-80x24.txt");
    }

    [Fact]
    public void Too_small_a_window_says_so()
    {
        Assert.Contains("80 x 24 is needed", Make("heads").Picture(_bench.Look, 79, 24), StringComparison.Ordinal);
    }

    private Desk Make(string name)
    {
        ShopSession session = _bench.Session;
        return name switch
        {
            "who" => new(new WhoScreen(session)),
            "heads" => Heads(),
            "heads-none" => new(new JobListScreen(session)),
            "menu" => new(ShopMenu.Of(session)),
            "new-job" => new Desk(Job()).Type("2417\n1\n1\nUpper Field irrigation (invented)\nsmo"),
            "new-job-choice" => new Desk(Job()).Type("2417\n"),
            "look" => Heads().Type("/4\n"),
            "find" => new Desk(new FindForm(session)).Type("field"),
            "found" => Heads().Type("/2\nfield\n"),
            "people" => new(new PeopleScreen(session)),
            "person" => new Desk(new PeopleScreen(session)).Type("2\n"),
            "new-person" => new Desk(new AddPersonForm(session)).Type("B. Rook\n\n"),
            "new-pin" => new Desk(new ChangePinForm(session, "vale")).Type("2468\n12"),
            "has-left" => new(new RetireForm(session, "vale")),
            "gauges" => new(new GaugesScreen(session)),
            "new-gauge" => new Desk(new AddGaugeForm(session)).Type("B1\nsmall bore gauge\n"),
            "calibration" => new(new CalibrationForm(session, _bench.Shop.Gauges["M1"])),
            "settings" => new(SettingsMenu.Of(session)),
            "readout" => new Desk(new ReadoutForm(session)).Type("1\n"),
            "keys" => new(session.Help()),
            "problems" => new(
                new PageScreen(
                    session,
                    "spoiled.yaml isn't taken",
                    [
                        new("1 problem. Mend the file, then choose it again.", Ink.Bad),
                        new("spoiled.yaml:3:1: PR-Y03 ...", Indent: 2),
                    ]
                )
            ),
            _ => OfJob(name),
        };
    }

    private Desk OfJob(string name)
    {
        JobRun run = _bench.Open(
            "2417",
            "Upper Field irrigation (invented)",
            practice: name == "state-practice",
            complaint: "smokes when cold"
        );
        foreach (string entry in Run.DemoJob.Entries.Where(line => line[0] != '@').Take(16))
        {
            _bench.Time.Advance(TimeSpan.FromMinutes(3));
            ShopBench.Enter(run, entry);
        }

        run.Do(new RunCommand.Note(null, "customer told"));
        _bench.Time.Advance(TimeSpan.FromMinutes(3));
        run.Do(new RunCommand.Note(Runs.Prompts.Prompter.Next(run.State), "valve 3 exhaust has a short stem"));
        ShopSession session = _bench.Session;
        return name switch
        {
            "state" or "state-practice" => new(new JobScreen(session, run)),
            "job-menu" => new(JobMenu.Of(session, run)),
            "history" => new(new HistoryScreen(session, run, At.Head)),
            "notes" => new(new NotesScreen(session, run)),
            "note" => new(new NoteForm(session, run, null)),
            "hold" => new(new HoldForm(session, run)),
            "hand-over" => new(new HandOverScreen(session, run)),
            _ => throw new ArgumentException(name, nameof(name)),
        };
    }

    private NewJobForm Job() => new(_bench.Session, [Machine.ProceduresFolder]);

    private Desk Heads()
    {
        if (_bench.Shop.Jobs.IsEmpty)
        {
            _bench.Open("1001", "Lower Field irrigation (invented)").Do(new RunCommand.Hold("waiting for parts"));
            _bench.Time.Advance(TimeSpan.FromDays(3));
            _bench.Open("1002", "Mill Lane haulage (invented)", "finch");
            _bench.Time.Advance(TimeSpan.FromHours(4));
            ShopBench.Enter(_bench.Open("1003", "Upper Field irrigation (invented)"), "done");
            _bench.Time.Advance(TimeSpan.FromMinutes(12));
        }

        return new(new JobListScreen(_bench.Session));
    }
}
