using ProcRunner.Tui.Host;
using ProcRunner.Tui.Screens;

namespace ProcRunner.Tui.Tests.Host;

public sealed class HostSessionTests
{
    [Fact]
    public void The_picture_of_the_desk_is_on_the_screen()
    {
        using Bench bench = new();
        Assert.StartsWith("Plain sample \u2588", bench.Lines[0], StringComparison.Ordinal);
        Assert.EndsWith("10:00:00", bench.Lines[0], StringComparison.Ordinal);
        Assert.Equal("> ", bench.Lines[23] + " ");
    }

    [Fact]
    public void What_is_typed_is_taken_key_by_key()
    {
        using Bench bench = new();
        bench.Send("1+17/32\u007f4\r");
        Assert.Equal("1+17/3", string.Concat(bench.Screen.Keys.Take(6).Select(key => key.Text)));
        Assert.Equal(
            [KeyKind.Character, KeyKind.Backspace, KeyKind.Character, KeyKind.Enter],
            bench.Screen.Keys.Skip(6).Select(key => key.Kind)
        );
        Assert.Equal("> 1+17/34", bench.Lines[23]);
    }

    // The sequences are xterm's (ctlseqs, "PC-Style Function Keys") and, for the pad, the VT220's.
    [Theory]
    [InlineData("<ESC>[A", KeyKind.Up)]
    [InlineData("<ESC>OA", KeyKind.Up)]
    [InlineData("<ESC>[B", KeyKind.Down)]
    [InlineData("<ESC>[5~", KeyKind.PageUp)]
    [InlineData("<ESC>[6~", KeyKind.PageDown)]
    [InlineData("<ESC>", KeyKind.Escape)]
    [InlineData("\r", KeyKind.Enter)]
    [InlineData("\n", KeyKind.Enter)]
    [InlineData("<ESC>OM", KeyKind.Enter)]
    [InlineData("\u007f", KeyKind.Backspace)]
    [InlineData("\b", KeyKind.Backspace)]
    internal void A_key_is_one_key_whatever_the_terminal_calls_it(string bytes, KeyKind kind)
    {
        using Bench bench = new();
        bench.Send(bytes);
        Assert.Equal(kind, Assert.Single(bench.Screen.Keys).Kind);
    }

    [Theory]
    [InlineData("\u0001")]
    [InlineData("\u001a")] // Ctrl+Z: a stopped program would leave its screen behind
    [InlineData("\t")]
    [InlineData("<ESC>[15~")]
    [InlineData("<ESC>[<0;3;3M")] // a mouse report, though none was asked for
    public void A_key_that_means_nothing_changes_nothing(string bytes)
    {
        using Bench bench = new();
        bench.Send(bytes);
        Assert.Empty(bench.Screen.Keys);
        Assert.False(bench.Session.IsOver);
    }

    [Fact]
    public void Letters_keep_their_case_and_accents()
    {
        using Bench bench = new();
        bench.Send("aB\u00e9\u00b5");
        Assert.Equal("aB\u00e9\u00b5", string.Concat(bench.Screen.Keys.Select(key => key.Text)));
    }

    [Fact]
    public void Pasted_text_is_one_entry_however_many_lines()
    {
        using Bench bench = new();
        bench.Send("<ESC>[200~0.0520\r\n0.0530\n<ESC>[201~");
        KeyPress paste = Assert.Single(bench.Screen.Keys);
        Assert.Equal(KeyKind.Paste, paste.Kind);
        Assert.StartsWith("> 0.0520", bench.Lines[23], StringComparison.Ordinal);
    }

    [Fact]
    public void A_scanners_burst_loses_no_key()
    {
        using Bench bench = new();
        string code = string.Concat(Enumerable.Range(0, 40).Select(i => (char)('A' + (i % 26))));
        bench.Send(code + "\r");
        Assert.Equal(41, bench.Screen.Keys.Count);
        Assert.Equal(code, string.Concat(bench.Screen.Keys.Select(key => key.Text)));
    }

    [Fact]
    public void Control_and_Q_leave_and_Escape_does_not()
    {
        using Bench bench = new();
        bench.Send("<ESC>");
        Assert.False(bench.Session.IsOver);
        bench.Send("\u0011");
        Assert.True(bench.Session.IsOver);
    }

    [Fact]
    public void Keys_after_the_last_screen_was_left_belong_to_nobody()
    {
        using Bench bench = new();
        bench.Send("q12");
        Assert.True(bench.Session.IsOver);
        Assert.Single(bench.Screen.Keys);
    }

    [Fact]
    public void The_librarys_own_keys_are_never_asked()
    {
        using Bench bench = new();
        bench.Send("<ESC>\u001a\u0011"); // its quit, its suspend, ours
        Assert.False(bench.Session.App.TopRunnable!.StopRequested);
    }

    [Fact]
    public void A_key_sends_few_bytes()
    {
        using Bench bench = new();
        bench.Size(120, 40);
        bench.Screen.Keys.Clear();
        ((Terminal.Gui.Drivers.AnsiInputProcessor)bench.Session.App.Driver!.GetInputProcessor()).InputQueue.Enqueue(
            '5'
        );
        bench.Session.Turn();
        Assert.Contains("5", bench.Sent, StringComparison.Ordinal);
        Assert.InRange(bench.Sent.Length, 1, 60);
    }

    [Fact]
    public void Nothing_is_sent_while_nothing_changes()
    {
        using Bench bench = new();
        string before = bench.Sent;
        bench.Session.Turn();
        bench.Session.Turn();
        Assert.Equal(before, bench.Sent);
        bench.Clock.Pass(TimeSpan.FromSeconds(1));
        bench.Session.Turn();
        Assert.InRange(bench.Sent.Length, 1, 60);
    }

    [Fact]
    public void After_another_size_everything_is_sent_again()
    {
        using Bench bench = new();
        bench.Size(100, 30);
        Assert.InRange(bench.Sent.Length, 100 * 30, 100 * 40);
        Assert.Equal("> ", bench.Lines[29] + " ");
        bench.Size(60, 20);
        Assert.Contains("80 x 24 is needed", bench.Lines[0], StringComparison.Ordinal);
        bench.Size(80, 24);
        Assert.StartsWith("Plain sample", bench.Lines[0], StringComparison.Ordinal);
    }

    [Fact]
    public void A_clock_set_back_an_hour_stops_nothing()
    {
        using Bench bench = new();
        bench.Clock.Set(TimeSpan.FromHours(-1));
        bench.Send("<ESC>"); // held for 50 ms of time that runs, not of the wall clock
        Assert.Equal(KeyKind.Escape, Assert.Single(bench.Screen.Keys).Kind);
        Assert.EndsWith("09:00:00", bench.Lines[0], StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(true, "\a")]
    [InlineData(false, "")]
    public void The_bell_rings_when_a_screen_asks_for_it_unless_it_is_off(bool rings, string bell)
    {
        using Bench bench = new(ringsBell: rings);
        bench.Send("1");
        Assert.DoesNotContain("\a", bench.Sent, StringComparison.Ordinal);
        bench.Send("!");
        Assert.EndsWith(bell, bench.Sent, StringComparison.Ordinal);
        Assert.Equal(bell.Length, bench.Sent.Count(character => character == '\a'));
    }

    [Fact]
    public void Without_UTF_8_only_ASCII_is_sent()
    {
        using Bench bench = new(isUtf8: false, sample: "caf\u00e9 \u2014 \u00b5");
        bench.Session.Repaint();
        bench.Session.Turn();
        Assert.Equal("Plain caf? ? ? #", bench.Lines[0][..16]);
        Assert.All(bench.Sent, character => Assert.InRange(character, '\u001b', '~'));
    }

    [Fact]
    public void Text_from_people_cannot_reach_the_terminal_as_a_control_sequence()
    {
        using Bench bench = new(sample: "\u001b]0;title\a \u009b31m http://example.org");
        bench.Session.Repaint();
        bench.Session.Turn();
        Assert.DoesNotContain("\u001b]", bench.Sent, StringComparison.Ordinal);
        Assert.DoesNotContain("\u009b", bench.Sent, StringComparison.Ordinal);
        Assert.DoesNotContain("\a", bench.Sent, StringComparison.Ordinal);
    }

    [Fact]
    public void Without_colours_no_colour_is_sent()
    {
        using Bench bench = new(ColourDepth.None);
        bench.Session.Repaint();
        bench.Session.Turn();
        Assert.Contains("\u001b[0;7m", bench.Sent, StringComparison.Ordinal);
        Assert.DoesNotMatch(@"\u001b\[[0-9;]*[349][0-9][;m]", bench.Sent);
    }

    [Fact]
    public void Colours_can_be_switched_off_at_any_moment()
    {
        using Bench bench = new();
        bench.UsesColours = false;
        bench.Session.Turn();
        Assert.InRange(bench.Sent.Length, 80 * 24, int.MaxValue);
        Assert.DoesNotMatch(@"\u001b\[[0-9;]*[349][0-9][;m]", bench.Sent);
    }
}
