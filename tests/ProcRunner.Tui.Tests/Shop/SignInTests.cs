using ProcRunner.Runs;
using ProcRunner.Tui.Jobs;
using ProcRunner.Tui.Screens;
using ProcRunner.Tui.Screens.Run;
using ProcRunner.Tui.Screens.Shop;

namespace ProcRunner.Tui.Tests.Shop;

/// <summary>Another person from any screen, and the question who works after a time without a key.</summary>
public sealed class SignInTests : IDisposable
{
    private static readonly KeyPress Who = new(KeyKind.Who, "");

    private readonly ShopBench _bench = new(runs: true);

    public void Dispose() => _bench.Dispose();

    [Fact]
    public void After_the_set_time_the_screen_asks_who_works_and_nothing_typed_is_lost()
    {
        Idle(10);
        Desk desk = AtWork("1001", out JobRun run);
        string before = See(desk.Type("0.0"));

        _bench.Time.Advance(TimeSpan.FromMinutes(9));
        desk.Tick();
        Assert.Equal(before, See(desk));

        _bench.Time.Advance(TimeSpan.FromMinutes(1));
        desk.Tick();
        Assert.Contains("Nobody is signed in", See(desk), StringComparison.Ordinal);
        long written = run.State.Sequence;

        desk.Type("\n");
        Assert.Equal(before, See(desk));
        Assert.Equal(written, run.State.Sequence);
        Assert.Equal("vale", run.Person);
    }

    [Fact]
    public void Somebody_else_takes_the_job_over_where_it_was_left_and_the_trail_says_so()
    {
        Idle(10);
        Desk desk = AtWork("1001", out JobRun run);
        desk.Type("0.0");
        Pass(desk, 10);
        desk.Type($"{Place(desk, "T. Moss")}\n");

        Assert.Equal("moss", run.Person);
        Assert.Equal(new RunEvent.HandedOver("vale", "moss"), Assert.Single(run.LastEvents));
        Assert.Contains("T. Moss", See(desk), StringComparison.Ordinal);
        Assert.Contains("0.0_", See(desk), StringComparison.Ordinal);
    }

    [Fact]
    public void A_key_puts_it_off_and_a_reading_sent_meanwhile_chooses_nobody()
    {
        Idle(10);
        Desk desk = AtWork("1001", out JobRun run);
        Pass(desk, 9);
        desk.Type("1");
        Pass(desk, 9);
        Assert.DoesNotContain("Nobody is signed in", See(desk), StringComparison.Ordinal);

        Pass(desk, 1);
        desk.Type("0.3735\n");
        Assert.Contains("no such number", See(desk), StringComparison.Ordinal);
        desk.Type("0\n").Type("\u001b");
        Assert.Contains("Nobody is signed in", See(desk), StringComparison.Ordinal);
        Assert.Equal("vale", run.Person);
    }

    [Fact]
    public void Without_the_setting_nobody_is_asked()
    {
        Desk desk = AtWork("1001", out _);
        Pass(desk, 60 * 24 * 30);

        Assert.DoesNotContain("signed in", See(desk), StringComparison.Ordinal);
    }

    [Fact]
    public void A_half_typed_PIN_is_forgotten()
    {
        Idle(10);
        Desk desk = Watched(new ResetPinForm(_bench.Session, "vale"));
        desk.Type("8642\n8642\n1357");
        Pass(desk, 10);
        desk.Type("\n");
        Assert.DoesNotContain("*", See(desk).Replace("* keys", "", StringComparison.Ordinal), StringComparison.Ordinal);

        // The PINs are asked from the first one on.
        desk.Type("8642\n8642\n135790\n");
        Assert.Contains("vale", _bench.Shop.FormerKeys.Select(p => p.Id));
    }

    [Fact]
    public void A_PIN_that_waits_behind_a_leads_is_forgotten_too()
    {
        Desk desk = Watched();
        JobRun run = _bench.Open("1001", "");
        RunWork work = new(run);
        AskPage lead = new(work, "which lead signs beside?") { HoldsPin = true };
        AskPage pin = new(work, "PIN") { Secret = true, Typed = (page, _) => page.Done() };
        Assert.IsType<CautionPage>(lead.ForgetPins());

        pin.Press(KeyPress.Of('1'));
        Assert.Null(pin.ForgetPins());
        Assert.Null(desk.Top);
        Assert.DoesNotContain("*_", new Desk(pin).Picture(_bench.Look), StringComparison.Ordinal);
    }

    [Fact]
    public void F2_changes_the_person_from_anywhere()
    {
        Desk desk = AtWork("1001", out JobRun run);
        string before = See(desk.Type("0.0"));
        desk.Press(Who);
        Assert.Contains("Who is at the machine?", See(desk), StringComparison.Ordinal);
        desk.Press(Who);
        desk.Type("0\n");
        Assert.Equal(before, See(desk));

        desk.Press(Who);
        desk.Type($"{Place(desk, "A. Finch")}\n");
        Assert.Equal("finch", run.Person);

        // Back at the list the one who was chosen still works.
        desk.Type("\b\b\b\u001b");
        Assert.Contains("A. Finch, Bent Valve Works", See(desk), StringComparison.Ordinal);
        desk.Type("/").Press(Who);
        desk.Type($"{Place(desk, "R. Vale")}\n");
        Assert.Equal("vale", _bench.Session.Person);
    }

    [Fact]
    public void A_hand_over_that_cant_be_written_changes_nobody()
    {
        Desk desk = AtWork("1001", out JobRun run);
        _bench.Store.Dispose();
        File.Delete(Path.Combine(_bench.Folder, "jobs", run.State.JobId + ".trail"));
        desk.Press(Who);
        desk.Type($"{Place(desk, "T. Moss")}\n");

        Assert.Contains("NOT WRITTEN", See(desk), StringComparison.Ordinal);
        Assert.Equal("vale", run.Person);
        Assert.Equal("vale", _bench.Session.Person);
    }

    [Fact]
    public void Three_wrong_PINs_at_a_form_are_told_with_the_wait()
    {
        Desk desk = new(new ChangePinForm(_bench.Session, "vale"));
        for (int i = 0; i < 3; i++)
        {
            desk.Type("1111\n9753\n9753\n");
        }

        Assert.Contains("tried again in 30 seconds", See(desk), StringComparison.Ordinal);
        desk.Type("2468\n9753\n9753\n");
        Assert.Contains("After 3 wrong PINs in a row", See(desk), StringComparison.Ordinal);
    }

    [Fact]
    public void A_lead_sets_the_idle_time_at_the_screen()
    {
        new Desk(SettingsMenu.Of(_bench.Session)).Type("2\n15\n135790\n");

        Assert.Equal(15, _bench.Shop.IdleMinutes);
        Assert.DoesNotContain(Store.Local.StoreCheck.All(_bench.Store.Reader), f => f.IsBroken);
    }

    [Fact]
    public void An_operator_becomes_a_lead_with_a_longer_PIN()
    {
        Desk desk = new(new ChangePersonForm(_bench.Session, "vale"));
        desk.Type("\n3\n2468\n");
        Assert.Contains("six digits", See(desk), StringComparison.Ordinal);
        desk.Type("246810\n246810\n135790\n");

        Assert.Equal(People.Role.Lead, _bench.Shop.People["vale"].Role);
        Assert.NotNull(People.PersonKeys.TryUnlock(_bench.Shop.People["vale"], "246810"));
        Assert.Empty(_bench.Shop.Uncertified());
        Assert.DoesNotContain(Store.Local.StoreCheck.All(_bench.Store.Reader), f => f.IsBroken);
    }

    [Theory]
    [InlineData("signed-out", 80, 24)]
    [InlineData("signed-out", 120, 40)]
    [InlineData("who-is-there", 80, 24)]
    [InlineData("who-is-there", 120, 40)]
    [InlineData("reset-pin", 80, 24)]
    [InlineData("reset-pin", 120, 40)]
    [InlineData("idle", 80, 24)]
    [InlineData("idle", 120, 40)]
    [InlineData("new-lead", 80, 24)]
    [InlineData("new-lead", 120, 40)]
    [InlineData("pin-waits", 80, 24)]
    [InlineData("pin-waits", 120, 40)]
    public void It_looks_as_committed(string name, int width, int height)
    {
        Idle(10);
        Desk desk = name switch
        {
            "signed-out" or "who-is-there" => AtWork("1001", out _),
            "reset-pin" => Watched(new ResetPinForm(_bench.Session, "vale")).Type("8642\n"),
            "idle" => Watched(new IdleForm(_bench.Session)),
            "new-lead" => Watched(new ChangePersonForm(_bench.Session, "vale")).Type("\n3\n"),
            _ => Watched(new ChangePinForm(_bench.Session, "vale")),
        };
        if (name == "signed-out")
        {
            Pass(desk, 10);
        }
        else if (name == "who-is-there")
        {
            desk.Press(Who);
        }
        else if (name == "pin-waits")
        {
            desk.Type("1111\n9753\n9753\n1111\n9753\n9753\n1111\n9753\n9753\n");
        }

        ScreenPictures.Match(desk.Picture(_bench.Look, width, height), name, width, height);
    }

    private void Idle(int minutes) => Assert.Null(_bench.Desk.SetIdle(minutes, "moss", ShopBench.LeadPin));

    private void Pass(Desk desk, int minutes)
    {
        _bench.Time.Advance(TimeSpan.FromMinutes(minutes));
        desk.Tick();
    }

    private Desk Watched(params ReadOnlySpan<Screen> screens) =>
        new(screens) { Attendance = _bench.Session, Time = _bench.Time };

    // A list of heads, and above it the job at its first step, past the cautions.
    private Desk AtWork(string stamp, out JobRun run)
    {
        run = _bench.Open(stamp, "Upper Field (invented)");
        Desk desk = Watched(new JobListScreen(_bench.Session));
        return desk.Type($"{stamp}\n\n");
    }

    private string Place(Desk desk, string name)
    {
        string row = See(desk)
            .Split('\n')
            .First(line => line.Contains(name, StringComparison.Ordinal) && line.TrimStart()[0] is >= '1' and <= '9');
        return row.TrimStart()[..1];
    }

    private string See(Desk desk) => desk.Picture(_bench.Look);
}
