using ProcRunner.Testing;

namespace ProcRunner.EndToEnd.Tests.Screen;

/// <summary>The built program on a real terminal: started, cut off, pulled about, and left.</summary>
public sealed class AtTheScreenTests
{
    [Fact]
    public void A_newcomer_is_at_a_working_gate_in_at_most_five_keys()
    {
        using ShopAtScreen shop = new();
        shop.Start();
        shop.Tmux.WaitFor("demo shop");
        shop.Keys("1\r"); // try it on the demo shop
        shop.Tmux.WaitFor("CAUTION");
        shop.Keys("\r"); // read and understood
        shop.Tmux.WaitFor("casting");
        int before = shop.Trail.Length;
        shop.Keys("1\r"); // as the job says: the gate takes it, the fourth and fifth key
        shop.Tmux.WaitFor("183 to do");
        Assert.Equal(before + 1, shop.Trail.Length);
        shop.Tmux.Press("C-q");
        shop.Ended(0);
    }

    [Theory]
    [InlineData("-TERM", 143)]
    [InlineData("-HUP", 129)]
    public void After_a_signal_the_terminal_and_the_work_are_as_they_were(string signal, int status)
    {
        using ShopAtScreen shop = new();
        shop.StartDemo();
        shop.Keys("\r1\r");
        shop.Tmux.WaitUntil(_ => shop.Trail.Length == 2);
        Signal.Send(signal, shop.Tmux.ProgramId());
        shop.Ended(status);
        Assert.Equal(0, shop.Line("", "verify DEMO"));
        Assert.Equal(0, shop.Line("@ teardown / complaint head\n", "run DEMO --plain"));
    }

    [Fact]
    public void Killed_in_the_middle_it_goes_on_at_the_same_step_and_shows_the_last_entry()
    {
        using ShopAtScreen shop = new();
        shop.StartDemo();
        foreach (string keys in PadJob.Keys.Take(25))
        {
            shop.Keys(keys);
        }

        // In the middle of a number, once all before it is written.
        shop.Keys(".05");
        string before = shop.Tmux.WaitFor(".05_");
        int written = shop.Trail.Length;
        Signal.Send("-KILL", shop.Tmux.ProgramId());
        shop.Tmux.WaitUntil(_ => File.Exists(shop.Tmux.Home["after"]));

        using ShopAtScreen again = shop.Another();
        again.Start("run DEMO");
        string after = again.Tmux.WaitFor("recorded last");
        Assert.Equal(before.Split('\n')[0], after.Split('\n')[0]);
        Assert.Equal(written, again.Trail.Length);
        Assert.Contains(FormattableString.Invariant($"entry {written}"), after, StringComparison.Ordinal);
        again.Tmux.Press("C-q");
        again.Ended(0);
    }

    [Fact]
    public void A_second_program_on_the_same_store_says_who_holds_it()
    {
        using ShopAtScreen shop = new();
        shop.StartDemo();
        using ShopAtScreen second = shop.Another();
        second.Start("run DEMO");
        string said = second.Ended(2);
        Assert.Contains("in use by the screen", said, StringComparison.Ordinal);
        shop.Keys("\r1\r");
        shop.Tmux.WaitFor("183 to do");
    }

    [Fact]
    public void A_storm_of_sizes_leaves_the_picture_and_what_was_typed()
    {
        using ShopAtScreen shop = new();
        shop.StartDemo();
        shop.Keys("\r");
        string before = shop.Tmux.WaitFor("as the job says");
        shop.Keys("12");
        for (int i = 0; i < 30; i++)
        {
            shop.Tmux.Resize(60 + (i * 7 % 80), 15 + (i * 5 % 40));
        }

        shop.Tmux.Resize(70, 20);
        shop.Tmux.WaitFor("80 x 24 is needed");
        shop.Tmux.Resize(80, 24);
        shop.Tmux.WaitFor("12_");
        shop.Tmux.Press("BSpace", "BSpace");
        Assert.Equal(before, shop.Tmux.WaitUntil(screen => screen == before));
    }

    [Fact]
    public void The_pad_in_application_mode_works_the_gates()
    {
        using ShopAtScreen shop = new();
        shop.StartDemo();
        shop.Tmux.SendBytes("1b", "4f", "4d"); // Enter: VT220 Programmer Reference Manual (EK-VT220-RM), table 3-7
        shop.Tmux.WaitFor("as the job says");
        shop.Tmux.SendBytes("1b", "4f", "71", "1b", "4f", "4d"); // 1, Enter
        shop.Tmux.WaitUntil(_ => shop.Trail.Length == 2);
    }

    [Fact]
    public void A_pasted_block_is_one_entry_and_passes_no_gate_by_itself()
    {
        using ShopAtScreen shop = new();
        shop.StartDemo();
        shop.Keys("\r");
        shop.Tmux.WaitFor("as the job says");
        int before = shop.Trail.Length;
        shop.Tmux.Paste("1\n1\n1\n");
        shop.Tmux.WaitFor("1 1 1");
        shop.Tmux.Press("Enter");
        Thread.Sleep(300);
        Assert.Equal(before, shop.Trail.Length);
        Assert.Contains("as the job says", shop.Tmux.Screen, StringComparison.Ordinal);
    }

    [Fact]
    public void Without_colours_nothing_is_coloured()
    {
        using ShopAtScreen shop = new(environment: "NO_COLOR=1");
        shop.StartDemo();
        Assert.DoesNotMatch(@"\u001b\[[0-9;]*([34][0-8]|9[0-7])[;m]", shop.Tmux.ColouredScreen);
        Assert.Matches(@"\u001b\[[0-9;]*[17][;m]", shop.Tmux.ColouredScreen);
    }

    [Fact]
    public void Without_UTF_8_the_pictures_are_ASCII()
    {
        using ShopAtScreen shop = new(environment: "LC_ALL=C");
        shop.StartDemo();
        Assert.All(shop.Tmux.Screen, character => Assert.InRange(character, '\n', '~'));
    }

    [Theory]
    [InlineData("", "run DEMO | cat", "needs a terminal")]
    [InlineData("", "< /dev/null", "needs a terminal")]
    [InlineData("TERM=dumb ", "run DEMO", "TERM is \"dumb\"")]
    public void Where_no_screen_can_be_drawn_it_says_so_and_points_to_line_mode(
        string before,
        string words,
        string message
    )
    {
        using ShopAtScreen shop = new(120, 24);
        shop.Start(words, before);
        string screen = shop.Tmux.WaitFor("\nover");
        Assert.Contains(message, screen, StringComparison.Ordinal);
        Assert.Contains("--plain", screen, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("run 2417", "procrunner")]
    [InlineData("run DEMO --as vale", "--plain")]
    public void Trouble_before_the_screen_opens_is_said_in_the_shell(string words, string message)
    {
        using ShopAtScreen shop = new(120, 24);
        shop.Start(words);
        Assert.Contains(message, shop.Ended(2), StringComparison.Ordinal);
    }
}
