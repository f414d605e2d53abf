using System.Globalization;
using ProcRunner.Testing;

namespace ProcRunner.Tui.Tests.Host;

/// <summary>The host on a real terminal, and how it leaves that: with a screen of the tests, since the product's can't be broken.</summary>
public sealed class RealTerminalTests
{
    private const string AsFound = "alternate 0 cursor 1 pad 0 keys 0 mouse 0";
    private const string OnDisk = "Everything that was acknowledged is on disk";

    [Fact]
    public void Keys_arrive_and_leaving_gives_the_terminal_back()
    {
        using Tmux tmux = Start();
        Assert.Equal("alternate 1 cursor 1 pad 0 keys 0 mouse 0", tmux.TerminalState);
        tmux.Enter("1+17/32");
        tmux.WaitFor("entry 1: 1+17/32|");

        // The pad in application mode (VT220, EK-VT220-RM table 3-7): 1 . 5 - Enter.
        tmux.SendBytes("1b", "4f", "71", "1b", "4f", "6e", "1b", "4f", "75", "1b", "4f", "6d", "1b", "4f", "4d");
        tmux.WaitFor("entry 2: 1.5-|");

        // The Linux console: BS takes the 2, LF is Enter.
        tmux.SendBytes("31", "32", "08", "33", "0a");
        tmux.WaitFor("entry 3: 13|");
        tmux.Press("C-z", "Escape", "F1", "C-c");
        tmux.Enter("still here");
        tmux.WaitFor("entry 4: still here|");
        tmux.Press("C-q");
        Ended(tmux, 0);
    }

    [Fact]
    public void Pasted_lines_are_one_entry()
    {
        using Tmux tmux = Start();
        tmux.Paste("0.0520\n0.0530\n0.0540");
        tmux.WaitFor("now 0.0520 0.0530 0.0540");
        tmux.Enter();
        tmux.WaitFor("entry 1: 0.0520 0.0530 0.0540|");
    }

    [Theory]
    [InlineData("throw", "thrown on the loop")]
    [InlineData("thread", "thrown on a thread")]
    public void After_an_error_on_any_thread_the_message_is_on_a_terminal_as_it_was_found(string what, string message)
    {
        using Tmux tmux = Start();
        tmux.Enter(what);
        string screen = Ended(tmux, 2);
        Assert.Contains(message, screen.ReplaceLineEndings(""), StringComparison.Ordinal);
        Assert.Contains(OnDisk, screen.ReplaceLineEndings(""), StringComparison.Ordinal);
        Assert.Contains(nameof(TryProgram), screen.ReplaceLineEndings(""), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("-TERM", 143)]
    [InlineData("-HUP", 129)]
    [InlineData("-INT", 130)]
    public void A_signal_ends_it_with_the_terminal_as_it_was_found(string signal, int status)
    {
        using Tmux tmux = Start();
        Signal.Send(signal, tmux.ProgramId());
        Ended(tmux, status);
    }

    [Fact]
    public void When_it_hangs_a_signal_still_ends_it()
    {
        using Tmux tmux = Start();
        tmux.Enter("hang");
        Thread.Sleep(300);
        Signal.Send("-TERM", tmux.ProgramId());
        Assert.Contains(OnDisk, Ended(tmux, 143).ReplaceLineEndings(""), StringComparison.Ordinal);
    }

    [Fact]
    public void It_cannot_be_stopped_with_its_screen_left_behind()
    {
        using Tmux tmux = Start();
        Signal.Send("-TSTP", tmux.ProgramId());
        tmux.Enter("on");
        tmux.WaitFor("entry 1: on|");
    }

    [Fact]
    public void A_clock_set_back_an_hour_stops_nothing()
    {
        using Tmux tmux = Start();
        string before = Time(tmux.Screen);
        tmux.Enter("back");
        string set = Time(tmux.WaitFor("entry 1: back|"));
        Assert.NotEqual(before[..2], set[..2]);
        tmux.WaitUntil(screen => Time(screen) != set); // the clock goes on
        tmux.Enter("on");
        tmux.WaitFor("entry 2: on|");
        tmux.Press("C-q");
        Ended(tmux, 0);
    }

    [Fact]
    public void A_storm_of_sizes_ends_in_the_right_picture()
    {
        using Tmux tmux = Start();
        tmux.Enter("kept");
        tmux.WaitFor("entry 1: kept|");
        for (int i = 0; i < 30; i++)
        {
            tmux.Resize(60 + (i * 7 % 80), 15 + (i * 5 % 40));
        }

        tmux.Resize(70, 20);
        tmux.WaitFor("80 x 24 is needed");
        tmux.Resize(120, 40);
        // The terminal shows a picture while it comes in, row by row: it is whole with its last corner.
        string[] lines = tmux.WaitUntil(screen =>
                screen.Contains("try 120 x 40", StringComparison.Ordinal)
                && screen.Split('\n') is { Length: > 39 } rows
                && rows[39].EndsWith('#')
            )
            .Split('\n');
        Assert.Equal("entry 1: kept|", lines[2]);
        Assert.StartsWith("now", lines[39], StringComparison.Ordinal);
        Assert.EndsWith("#", lines[39], StringComparison.Ordinal);
        Assert.All(lines[3..39], line => Assert.Equal("", line));
    }

    [Theory]
    [InlineData("NO_COLOR=1", false)]
    [InlineData("NO_COLOR=", true)]
    public void Without_colours_out_of_spec_is_bold(string environment, bool hasColours)
    {
        using Tmux tmux = Start(environment);
        string line = tmux.ColouredScreen.Split('\n')[2];
        Assert.Matches(@"\u001b\[[0-9;]*1[;m]", line);
        Assert.Equal(hasColours, line.Contains("38;5", StringComparison.Ordinal));
    }

    [Fact]
    public void The_librarys_configuration_files_change_no_key()
    {
        using Tmux tmux = new(80, 24);
        const string Config =
            """{ "Application.DefaultKeyBindings": { "Quit": { "All": ["5"] } }, "Driver.Force16Colors": true }""";
        tmux.Home.Write(".tui/config.json", Config);
        tmux.Enter(TryProgram.Command);
        tmux.WaitFor("try 80 x 24");
        tmux.Enter("555");
        tmux.WaitFor("entry 1: 555|");
    }

    [Theory]
    [InlineData("TERM=dumb ", "", "TERM is \"dumb\"")]
    [InlineData("", " | cat", "needs a terminal")]
    public void Where_no_screen_can_be_drawn_it_says_so(string before, string after, string message)
    {
        using Tmux tmux = new(80, 24);
        tmux.Enter($"{before}{TryProgram.Command}{after}; echo status $?");
        Assert.Contains(message, tmux.WaitFor("\nstatus "), StringComparison.Ordinal);
    }

    private static Tmux Start(string environment = "A=b")
    {
        Tmux tmux = new(80, 24, environment);
        tmux.Enter($"clear; stty -a > before; {TryProgram.Command}; echo status $?; stty -a > after; echo over");
        tmux.WaitFor("try 80 x 24");
        return tmux;
    }

    private static string Ended(Tmux tmux, int status)
    {
        string screen = tmux.WaitFor("\nover");
        Assert.Contains(
            string.Create(CultureInfo.InvariantCulture, $"\nstatus {status}\n"),
            "\n" + screen,
            StringComparison.Ordinal
        );
        Assert.Equal(AsFound, tmux.TerminalState);
        Assert.Equal(File.ReadAllText(tmux.Home["before"]), File.ReadAllText(tmux.Home["after"]));
        return screen;
    }

    private static string Time(string screen) => screen.Split('\n')[0][^8..];
}
