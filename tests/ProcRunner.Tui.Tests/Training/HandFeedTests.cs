using System.Globalization;
using ProcRunner.Lessons;
using ProcRunner.Quantities;
using ProcRunner.Runs.Prompts;
using ProcRunner.Store.Local;
using ProcRunner.Testing;
using ProcRunner.Tui.Drawing;
using ProcRunner.Tui.Lines;
using ProcRunner.Tui.Screens;
using ProcRunner.Tui.Screens.Run;
using ProcRunner.Tui.Tests.Shop;
using ProcRunner.Tui.Training;

namespace ProcRunner.Tui.Tests.Training;

/// <summary>
/// The tool fed by hand at the cuts of lessons: the keys are pressed on the page and the display is read off it, as a learner
/// does.
/// </summary>
public sealed class HandFeedTests : IDisposable
{
    private const string Cut = "seat cut / recession";
    private readonly TempFolder _folder = new(inMemory: true);
    private readonly List<LocalStore> _rooms = [];

    public void Dispose()
    {
        _rooms.ForEach(room => room.Dispose());
        _folder.Dispose();
    }

    [Fact]
    public void Fed_with_an_eye_on_the_display_the_seat_is_cut_to_its_aim()
    {
        (LessonRun run, _) = Begin("careful");

        ToTheEnd(run, (shows, target) => target - shows > 0.0065m);

        Debrief debrief = run.Close();
        Assert.True(debrief.IsClean, string.Join('\n', debrief.Lines(run.Job.State)));
        Assert.Empty(debrief.TooDeep);
    }

    // Coarse to the end: the last turn runs past the number, and what is cut is cut.
    [Fact]
    public void A_hand_that_stops_late_cuts_too_deep()
    {
        (LessonRun run, _) = Begin("late");

        ToTheEnd(run, (_, _) => true, past: 0.018m);

        Debrief debrief = run.Close();
        Assert.NotEmpty(debrief.TooDeep);
        Assert.Empty(debrief.Misreads);
    }

    [Fact]
    public void The_same_keys_move_the_display_alike_and_others_otherwise()
    {
        string Shown(string room, string keys)
        {
            (_, Desk desk) = Begin(room);
            List<decimal> shown = [];
            foreach (char key in keys)
            {
                desk.Press(key == 'd' ? new KeyPress(KeyKind.Down, "") : KeyPress.Of('+'));
                shown.Add(Display(desk));
            }

            return string.Join(' ', shown);
        }

        string once = Shown("once", "+++d++++++++");
        Assert.Equal(once, Shown("twice", "+++d++++++++"));
        Assert.NotEqual(once, Shown("thrice", "++d+++++++++"));
    }

    [Fact]
    public void A_turn_is_about_ten_steps_or_one_and_the_display_never_goes_back()
    {
        (_, Desk desk) = Begin("turns");
        decimal before = Display(desk);
        for (int i = 0; i < 30; i++)
        {
            bool isCoarse = i % 3 == 0;
            desk.Press(isCoarse ? new KeyPress(KeyKind.Down, "") : KeyPress.Of('+'));
            decimal steps = (Display(desk) - before) / 0.0005m;
            Assert.InRange(steps, isCoarse ? 8 : 1, isCoarse ? 12 : 2);
            before = Display(desk);
        }
    }

    // Typed one step less than it stands at: the trail holds where the tool was, the metal is cut so
    // deep, and the lesson taken up again from its trail shows the same faces.
    [Fact]
    public void A_display_misread_leaves_the_metal_cut_to_where_the_tool_was()
    {
        (LessonRun read, Desk right) = Begin("read");
        (LessonRun misread, Desk wrong) = Begin("misread");
        foreach (Desk desk in new[] { right, wrong })
        {
            desk.Press(new KeyPress(KeyKind.Down, ""));
            desk.Press(new KeyPress(KeyKind.Down, ""));
        }

        decimal stood = Display(right);
        right.Type($"{Text(stood)}\n");
        wrong.Type($"{Text(stood - 0.0005m)}\n");

        IReadOnlyList<Quantity> deep = read.Shown(ScriptedLearner.At(read));
        Assert.NotEmpty(deep);
        Assert.Equal(deep, misread.Shown(ScriptedLearner.At(misread)));
        Misread one = Assert.Single(misread.Misreads);
        Assert.Equal(stood, one.Shown.Value);
        Assert.Empty(read.Misreads);
        LessonRun again = Open("misread");
        Assert.Equal(deep, again.Shown(ScriptedLearner.At(again)));
        Assert.Equal(misread.Misreads, again.Misreads);
    }

    [Fact]
    public void What_wasnt_fed_isnt_entered_and_a_tool_in_the_metal_isnt_left()
    {
        (LessonRun run, Desk desk) = Begin("left");
        long before = run.Job.State.Sequence;

        desk.Type("0.0035\n");
        Assert.Contains("The tool hasn't been fed", desk.Picture(Look), StringComparison.Ordinal);
        Press(desk, "+");
        desk.Press(new KeyPress(KeyKind.Escape, ""));
        Assert.Contains("in the metal", desk.Picture(Look), StringComparison.Ordinal);
        desk.Type("/10\n");
        Assert.Contains("in the metal", desk.Picture(Look), StringComparison.Ordinal);
        Assert.Equal(before, run.Job.State.Sequence);

        desk.Type($"/{Text(Display(desk, back: true))}\n");
        Assert.True(run.Job.State.Sequence > before, desk.Picture(Look));
    }

    // Nothing is entered, the program ends, the lesson is opened again: as if it had not ended.
    [Fact]
    public void A_tool_left_in_the_metal_by_a_killed_program_stands_where_it_was_and_goes_on_alike()
    {
        (_, Desk whole) = Begin("whole");
        (_, Desk killed) = Begin("killed");
        foreach (Desk desk in new[] { whole, killed })
        {
            desk.Press(new KeyPress(KeyKind.Down, ""));
            Press(desk, "+");
        }

        decimal stood = Display(killed);
        LessonRun again = Open("killed");
        Desk page = Page(again);

        Assert.Equal(stood, Display(page));
        Assert.True(again.IsInTheMetal(ScriptedLearner.At(again)));
        foreach (Desk desk in new[] { whole, page })
        {
            desk.Press(new KeyPress(KeyKind.Down, ""));
        }

        decimal deeper = Display(page);
        Assert.Equal(Display(whole), deeper);
        whole.Type($"{Text(deeper)}\n");
        page.Type($"{Text(deeper)}\n");
        LessonRun unbroken = Open("whole");
        IReadOnlyList<Quantity> cut = unbroken.Shown(ScriptedLearner.At(unbroken));
        LessonRun later = Open("killed");
        Assert.Equal(cut, later.Shown(ScriptedLearner.At(later)));
        Assert.False(later.IsInTheMetal(ScriptedLearner.At(later)));
    }

    // What is kept of a pass that was entered since is of no use, however it came to be left there.
    [Fact]
    public void Where_a_tool_stood_counts_for_its_own_pass_alone()
    {
        (_, Desk desk) = Begin("old");
        desk.Press(new KeyPress(KeyKind.Down, ""));
        string kept = Path.Combine(_folder["old"], "tool.json");
        byte[] old = File.ReadAllBytes(kept);
        desk.Type($"{Text(Display(desk))}\n");
        File.WriteAllBytes(kept, old);

        LessonRun run = Open("old");
        while (ScriptedLearner.At(run).Awaits != Awaited.Readout)
        {
            new ScriptedLearner(run).Answer();
        }

        Assert.False(run.IsInTheMetal(ScriptedLearner.At(run)));
        File.WriteAllText(kept, "{\"torn");
        Assert.NotNull(Open("old"));
    }

    [Fact]
    public void In_a_window_too_small_to_be_read_no_key_feeds_the_tool()
    {
        (_, Desk desk) = Begin("small");
        decimal before = Display(desk);
        desk.Draw(Desk.FewestColumns - 1, Desk.FewestRows, Look);
        desk.Press(new KeyPress(KeyKind.Down, ""));
        Press(desk, "+");

        Assert.Equal(before, Display(desk));
        Press(desk, "+");
        Assert.True(Display(desk) > before);
    }

    [Fact]
    public void Help_in_line_mode_begins_with_a_lessons_own_words()
    {
        (LessonRun lesson, _) = Begin("help");
        using StringReader typed = new("?\nquit\n");
        using StringWriter told = new();
        new LineRun(lesson.Job, new LineInput(typed, isPiped: true, told), told)
        {
            Own = new LessonLines(lesson).Own,
            OwnWords = LessonLines.Words,
        }.Run();
        string help = told.ToString();
        int fed = help.IndexOf("    down, +, several in a line ", StringComparison.Ordinal);
        int history = help.IndexOf("    history ", StringComparison.Ordinal);
        int usual = help.IndexOf("    go STEP POSITION ", StringComparison.Ordinal);
        Assert.InRange(fed, 0, history);
        Assert.InRange(history, fed, usual);
    }

    [Fact]
    public void In_line_mode_words_feed_the_tool_as_keys_do_and_nothing_else_is_done_meanwhile()
    {
        (LessonRun keys, Desk desk) = Begin("keys");
        (LessonRun words, _) = Begin("words");
        LessonLines lines = new(words);
        Prompt prompt = ScriptedLearner.At(words);
        desk.Press(new KeyPress(KeyKind.Down, ""));
        Press(desk, "++");
        string stood = Text(Display(desk));

        Assert.Contains(
            "the readout shows 0.0000 in",
            string.Join('\n', lines.Beside(prompt)),
            StringComparison.Ordinal
        );
        Assert.Null(lines.Own("0.0035", prompt));
        Assert.Equal([$"    the readout shows {stood} in"], lines.Own("down + +", prompt)!.Said);
        foreach (
            string left in new[] { "hold because lunch", "go seat 2E", "measure", "enough", "correct 0.1 because typo" }
        )
        {
            Assert.Contains("in the metal", lines.Own(left, prompt)!.Refused, StringComparison.Ordinal);
        }

        Assert.Null(lines.Own("why", prompt));
        Assert.Contains(
            "seat cut / seat at 1E",
            string.Join('\n', lines.Own("history", prompt)!.Said),
            StringComparison.Ordinal
        );
        Assert.Null(lines.Own(stood, prompt));
        desk.Type($"{stood}\n");
        words.Job.Do(new Runs.RunCommand.Enter(prompt.At, stood));
        Assert.Equal(keys.Shown(ScriptedLearner.At(keys)), words.Shown(ScriptedLearner.At(words)));
        Assert.Null(lines.Own("+", ScriptedLearner.At(words)));
    }

    private static Look Look => new(Glyphs.Utf8, DateTimeOffset.UnixEpoch);

    private static void Press(Desk desk, string keys) => keys.ToList().ForEach(key => desk.Press(KeyPress.Of(key)));

    private static string Text(decimal value) => value.ToString(CultureInfo.InvariantCulture);

    // What stands in the display's frame; where a menu lies over it, after going back.
    private static decimal Display(Desk desk, bool back = false)
    {
        if (back)
        {
            desk.Type("/");
        }

        string line = desk.Picture(Look).Split('\n').Single(l => l.Contains(" | readout", StringComparison.Ordinal));
        string shown = line[..line.LastIndexOf('|')];
        decimal value = decimal.Parse(shown[(shown.LastIndexOf('|') + 1)..], CultureInfo.InvariantCulture);
        if (back)
        {
            desk.Type("/");
        }

        return value;
    }

    // Feeds coarse as long as it is said, then fine, until the display has come to the target or past it; reads the gauges
    // rightly.
    private static void ToTheEnd(LessonRun run, Func<decimal, decimal, bool> isCoarse, decimal past = 0)
    {
        for (int i = 0; !run.IsOver; i++)
        {
            Assert.True(i < 60);
            Prompt prompt = ScriptedLearner.At(run);
            if (prompt.Awaits != Awaited.Readout)
            {
                new ScriptedLearner(run, (_, at) => at.Awaits == Awaited.WayOn ? "concession" : null).Answer();
                continue;
            }

            Desk page = Page(run);
            decimal target = prompt.Target!.Show.Value;
            while (Display(page) < target + past)
            {
                bool coarse = isCoarse(Display(page), target);
                page.Press(coarse ? new KeyPress(KeyKind.Down, "") : KeyPress.Of('+'));
            }

            page.Type($"{Text(Display(page))} in\n");
        }
    }

    private (LessonRun Run, Desk Desk) Begin(string room)
    {
        LessonRun run = Open(room);
        while (ScriptedLearner.At(run).Awaits != Awaited.Readout)
        {
            new ScriptedLearner(run).Answer();
        }

        Assert.Equal(Cut, ScriptedLearner.At(run).Step.FullName);
        return (run, Page(run));
    }

    private static Desk Page(LessonRun run)
    {
        Desk desk = new(RunScreen.Open(run));
        while (desk.Top is not StepPage)
        {
            desk.Type("\n");
        }

        return desk;
    }

    private LessonRun Open(string room)
    {
        (_, Practice.Bindings.Binding? binding, string fault) = LessonShelf.Bind(LessonShelf.All()[0]);
        Assert.True(binding is not null, fault);
        _rooms.ForEach(one => one.Dispose());
        (LocalStore? store, fault) = PracticeRoom.Open(_folder[room], binding.Setup);
        _rooms.Add(store ?? throw new InvalidOperationException(fault));
        Lesson lesson = LessonShelf.All().Single(one => one.Name == "to the aim");
        (LessonRun? run, fault) = LessonRun.Open(
            store,
            new DebriefBook(_folder[room]),
            lesson,
            ScriptedLearner.Id,
            CoachMode.Off
        );
        return run ?? throw new InvalidOperationException(fault);
    }
}
