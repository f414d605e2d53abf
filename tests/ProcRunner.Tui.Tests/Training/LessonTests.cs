using System.Globalization;
using ProcRunner.Lessons;
using ProcRunner.Quantities;
using ProcRunner.Runs;
using ProcRunner.Runs.Prompts;
using ProcRunner.Store.Local;
using ProcRunner.Testing;
using ProcRunner.Tui.Demo;
using ProcRunner.Tui.Drawing;
using ProcRunner.Tui.Jobs;
using ProcRunner.Tui.Screens;
using ProcRunner.Tui.Tests.Run;
using ProcRunner.Tui.Training;

namespace ProcRunner.Tui.Tests.Training;

/// <summary>Every lesson taken by a scripted learner, the right way and the wrong way. All of it is invented.</summary>
public sealed class LessonTests : IDisposable
{
    private const string Learner = "finch";

    private readonly TempFolder _folder = new(inMemory: true);

    public static TheoryData<string> Names => [.. LessonShelf.All().Select(lesson => lesson.Name)];

    public void Dispose() => _folder.Dispose();

    [Theory]
    [MemberData(nameof(Names))]
    public void Taken_the_right_way_a_lesson_ends_clean_and_all_that_was_planted_is_caught(string name)
    {
        using LocalStore store = Room("right");
        LessonRun run = Open(store, "right", name);
        ScriptedLearner learner = new ScriptedLearner(run).ToTheEnd();

        Debrief debrief = run.Close();
        Assert.True(debrief.IsClean, string.Join('\n', [.. learner.Trace, .. debrief.Lines(run.Job.State)]));
        Assert.Equal(run.Lesson.Planted, debrief.Caught);
        Assert.Equal("#", ProgressChart.Signs(Book("right").Of(Learner)));

        // Ten seconds for each entry and each further place of the lesson's own solution, as docs/practice-format.md says.
        Assert.Equal((learner.Entries + 5) / 6, run.Lesson.Minutes);
    }

    public static TheoryData<string, string> Wrong
    {
        get
        {
            TheoryData<string, string> data = [];
            foreach (WrongWays.Wrong one in WrongWays.All)
            {
                data.Add(one.Lesson, one.Way);
            }

            return data;
        }
    }

    [Theory]
    [MemberData(nameof(Wrong))]
    public void Taken_a_wrong_way_the_debrief_says_what_was_wrong_and_why(string name, string way)
    {
        WrongWays.Wrong wrong = WrongWays.All.Single(one => one.Lesson == name && one.Way == way);
        using LocalStore store = Room("wrong");
        LessonRun run = Open(store, "wrong", name);
        ScriptedLearner learner = new ScriptedLearner(run, wrong.Answer).ToTheEnd();

        Debrief debrief = run.Close();
        string said = string.Join('\n', debrief.Lines(run.Job.State));
        Assert.False(debrief.IsClean, string.Join('\n', [.. learner.Trace, said]));
        Assert.Contains(wrong.Said, said, StringComparison.Ordinal);
        Assert.All(debrief.Missed, fault => Assert.Contains(fault.Why, said, StringComparison.Ordinal));
        Assert.DoesNotContain('#', ProgressChart.Signs(Book("wrong").Of(Learner)));
    }

    [Fact]
    public void Every_lesson_has_a_wrong_way() =>
        Assert.Equal(
            LessonShelf.All().Select(lesson => lesson.Name).Order(StringComparer.Ordinal),
            WrongWays.All.Select(one => one.Lesson).Distinct().Order(StringComparer.Ordinal)
        );

    [Fact]
    public void The_page_on_practice_lists_every_lesson_as_its_file_has_it()
    {
        string page = File.ReadAllText(RepoRoot.PathOf("docs/practice.md"));
        Assert.All(
            LessonShelf.All(),
            one => Assert.Contains($"| {one.Name} | {one.Title} | {one.Learn} |", page, StringComparison.Ordinal)
        );
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Before_the_learners_first_answer_nothing_is_caught(string name)
    {
        using LocalStore store = Room("before");
        LessonRun run = Open(store, "before", name);
        Assert.False(run.IsOver);
        Assert.All(run.Lesson.Planted, fault => Assert.NotEqual(true, run.IsCaught(fault)));
    }

    // What the model operator answers on the way to the lesson isn't the learner's: here it replaces the nicked valve itself,
    // after which the learner has only to sign.
    [Fact]
    public void What_was_answered_before_the_learner_came_is_not_the_learners()
    {
        using LocalStore store = Room("before");
        Lesson valves = LessonShelf.All().Single(one => one.Name == "valves");
        (LessonRun? run, string fault) = LessonRun.Open(
            store,
            Book("before"),
            valves with
            {
                From = "teardown / spring",
                At = "3E",
                Until = "teardown / spring",
            },
            Learner,
            CoachMode.Off
        );
        Assert.True(run is not null, fault);
        while (!run.IsOver)
        {
            new ScriptedLearner(run).Answer();
        }

        Debrief debrief = run.Close();
        Assert.Empty(debrief.Caught);
    }

    [Fact]
    public void The_coach_explains_an_answer_with_this_heads_numbers_and_a_hint_gives_no_reading_away()
    {
        using LocalStore store = Room("coach");
        LessonRun run = Open(store, "coach", "a used deck");
        new ScriptedLearner(run).Answer();
        Assert.Contains(
            "degF. In limits: low 60 degF, aim 70 degF",
            string.Join(' ', run.TakeRemarks()),
            StringComparison.Ordinal
        );
        Prompt prompt = ScriptedLearner.At(run);
        string[] shown = [.. run.Shown(prompt).Select(one => one.ToString())];
        string hint = string.Join(' ', Coach.Hint(run, prompt));
        Assert.Contains("low 3.9150 in (maker)", hint, StringComparison.Ordinal);
        Assert.All(shown, one => Assert.DoesNotContain(one, hint, StringComparison.Ordinal));

        new ScriptedLearner(run).Answer();

        string said = string.Join(' ', run.TakeRemarks());
        Assert.Contains($"{shown.Min(StringComparer.Ordinal)}. Out of spec:", said, StringComparison.Ordinal);
        Assert.Contains("Why it is asked:", said, StringComparison.Ordinal);
        Assert.Empty(run.TakeRemarks());
        run.Coach = CoachMode.Asked;
        new ScriptedLearner(run).Answer();
        Assert.Empty(run.Remarks);
    }

    // A reading of a fault is read rightly and caught by nothing yet; a depth on the way to its aim isn't at its end.
    [Theory]
    [InlineData("a guide")]
    [InlineData("vacuum")]
    [InlineData("to the aim")]
    [InlineData("before the skim")]
    public void The_coach_says_what_was_caught_once_and_not_before_it_was(string name)
    {
        using LocalStore store = Room("once");
        LessonRun run = Open(store, "once", name);
        List<string> said = [];
        while (!run.IsOver)
        {
            bool wasCaught = run.IsCaught(run.Lesson.Planted[0]) == true;
            new ScriptedLearner(run).Answer();
            bool isCaught = run.IsCaught(run.Lesson.Planted[0]) == true;
            string[] remarks = [.. run.TakeRemarks()];
            said.AddRange(remarks);
            Assert.Equal(
                isCaught && !wasCaught,
                remarks.Any(line => line.StartsWith("Caught:", StringComparison.Ordinal))
            );
        }

        Assert.DoesNotContain(said, line => line.StartsWith("Look again", StringComparison.Ordinal));
        Assert.All(said, line => Assert.DoesNotMatch(@"= (\S+) = \1 ", line));
    }

    [Fact]
    public void A_wrong_decision_is_to_be_looked_at_again_and_measuring_again_is_none()
    {
        using LocalStore store = Room("again");
        LessonRun run = Open(store, "again", "a guide");
        new ScriptedLearner(run).Answer();
        run.TakeRemarks();
        new ScriptedLearner(run, (_, _) => "measure again").Answer();
        Assert.DoesNotContain(run.TakeRemarks(), line => line.StartsWith("Look again", StringComparison.Ordinal));
        new ScriptedLearner(run).Answer();
        new ScriptedLearner(run, (_, _) => "oversize guide").Answer();
        Assert.Contains(run.TakeRemarks(), line => line.StartsWith("Look again", StringComparison.Ordinal));
    }

    // Killed at any moment while somebody else is at work, before the lesson or beside it: what is left of it is done when the
    // lesson is taken up again, and it goes on as if nothing had happened.
    [Theory]
    [InlineData("springs")]
    [InlineData("before the skim")]
    public void A_lesson_that_was_killed_at_any_moment_goes_on_alike(string name)
    {
        string whole = Played(name, new KillingClock(int.MaxValue), out int moments);
        for (int left = 1; left < moments; left += moments / 4)
        {
            Assert.Equal(whole, Played(name, new KillingClock(left), out _));
        }
    }

    // Every face and answer of a lesson taken the right way, begun again wherever its clock stops it; how often it was asked
    // what time it is.
    private string Played(string name, KillingClock clock, out int moments)
    {
        string room = FormattableString.Invariant($"{name} {clock.Left}");
        using LocalStore store = Room(room);
        Lesson lesson = LessonShelf.All().Single(one => one.Name == name);
        int all = clock.Left;
        SortedDictionary<long, string> trace = [];
        for (bool isOver = false; !isOver; )
        {
            try
            {
                (LessonRun? run, string fault) = LessonRun.Open(
                    store,
                    Book(room),
                    lesson,
                    Learner,
                    CoachMode.Off,
                    clock
                );
                Assert.True(run is not null, fault);
                while (!run.IsOver)
                {
                    ScriptedLearner learner = new(run);
                    long sequence = run.Job.State.Sequence;
                    learner.Answer();
                    trace[sequence] = string.Join('\n', learner.Trace);
                }

                Assert.True(run.Close().IsClean);
                isOver = true;
            }
            catch (OperationCanceledException)
            {
                Assert.True(clock.Left < 0);
                clock.Left = int.MaxValue;
            }
        }

        moments = all - clock.Left;
        return string.Join('\n', trace.Values);
    }

    // Stops whatever asks it once too often.
    private sealed class KillingClock(int left) : TimeProvider
    {
        public int Left { get; set; } = left;

        public override DateTimeOffset GetUtcNow() =>
            --Left >= 0 ? base.GetUtcNow() : throw new OperationCanceledException();
    }

    // Put right at once, it is told and counts for nothing more; nor is a correction a measuring again.
    [Fact]
    public void A_misreading_that_is_put_right_is_told_and_is_nothing_to_mend()
    {
        using LocalStore store = Room("right");
        LessonRun run = Open(store, "right", "reading gauges");
        new ScriptedLearner(run).Answer();
        Prompt prompt = ScriptedLearner.At(run);
        string shown = string.Join("; ", run.Shown(prompt));
        run.Job.Do(
            new RunCommand.Enter(
                prompt.At,
                string.Join("; ", run.Shown(prompt).Select(q => new Quantity(q.Value + 0.001m, q.Unit)))
            )
        );
        Assert.IsType<JobAnswer.Recorded>(run.Job.Do(new RunCommand.Correct(prompt.At, shown, "misread")));
        new ScriptedLearner(run).ToTheEnd();

        Debrief debrief = run.Close();
        string said = string.Join('\n', debrief.Lines(run.Job.State));
        Assert.True(debrief.IsClean, said);
        Assert.Contains(", and put right", said, StringComparison.Ordinal);
        Assert.DoesNotContain("measured again", said, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("springs", "; spring load closed was 42 lbf, low 46 lbf, high 54 lbf. At teardown / spring, 3I")]
    [InlineData("a valve at 4I", "; stem was 0.3390 in, low 0.3406 in, high 0.3412 in. At teardown / valve, 4I")]
    [InlineData("seats", "; seat as it came: loose insert. At teardown / seat, 2E")]
    public void What_was_missed_is_told_with_what_showed_it(string name, string told)
    {
        using LocalStore store = Room("told");
        LessonRun run = Open(store, "told", name);
        new ScriptedLearner(run, (_, at) => at.Awaits == Awaited.Choice ? "keep" : null).ToTheEnd();

        Assert.Contains(told, string.Join('\n', run.Close().Lines(run.Job.State)), StringComparison.Ordinal);
    }

    // At its fitting nothing was cut on the wrong one yet; at the runout step the seat was, and is cut true on the new one.
    [Theory]
    [InlineData("a seat to set up", "seat cut / set up at the seat", false)]
    [InlineData("runout", "seat cut / seat runout", true)]
    public void The_pilot_may_be_changed_wherever_a_machinist_would(string name, string where, bool isCut)
    {
        using LocalStore store = Room("pilot");
        LessonRun run = Open(store, "pilot", name);
        Prompt prompt = ScriptedLearner.At(run);
        Assert.Equal(where, prompt.Step.FullName);
        Assert.IsType<JobAnswer.Recorded>(run.Job.Do(new RunCommand.Report("pilot", prompt.At.Position)));

        ScriptedLearner learner = new ScriptedLearner(run).ToTheEnd();

        Debrief debrief = run.Close();
        string all = string.Join('\n', [.. learner.Trace, .. debrief.Lines(run.Job.State)]);
        Assert.True(debrief.IsClean, all);
        Assert.Equal(run.Lesson.Planted, debrief.Caught);
        Assert.Equal(isCut, learner.Trace.Any(line => line.EndsWith(": cut true", StringComparison.Ordinal)));
    }

    [Fact]
    public void What_a_learner_chose_of_the_coach_is_kept_for_the_next_start_and_for_nobody_else()
    {
        using LocalStore store = Room("kept");
        Open(store, "kept", "springs").Keep(CoachMode.EachStep);

        Assert.Equal(CoachMode.EachStep, Book("kept").Coach.Read(Learner));
        Assert.Equal(CoachMode.Asked, Book("kept").Coach.Read("vale"));
        File.WriteAllText(Path.Combine(_folder["kept"], "coach.json"), "torn");
        Assert.Equal(CoachMode.Asked, Book("kept").Coach.Read(Learner));
    }

    [Fact]
    public void Misread_places_are_told_together_and_what_to_do_about_them_once()
    {
        using LocalStore store = Room("slips");
        LessonRun run = Open(store, "slips", "reading gauges");
        new ScriptedLearner(run).Answer();
        run.TakeRemarks();
        Prompt prompt = ScriptedLearner.At(run);
        run.Job.Do(
            new RunCommand.Enter(
                prompt.At,
                string.Join("; ", run.Shown(prompt).Select(q => new Quantity(q.Value + 0.001m, q.Unit)))
            )
        );

        string said = string.Join(' ', run.TakeRemarks());
        Assert.Equal(5, run.Misreads.Count);
        Assert.Equal(2, said.Split("Menu, correct").Length);
        Assert.All(
            run.Misreads,
            one => Assert.Contains($"{one.Place} {one.Typed} typed", said, StringComparison.Ordinal)
        );
    }

    [Fact]
    public void Progress_is_a_bar_for_each_time_and_a_sign()
    {
        DebriefBook.Line Line(string lesson, int toMend, int minutes) =>
            new("job", lesson, Learner, new DateTimeOffset(2031, 5, 6, 7, 8, 9, TimeSpan.Zero), 0, 1, toMend, minutes);
        DebriefBook.Line[] lines = [Line("stems", 3, 9), Line("stems", 12, 4), Line("stems", 0, 2)];

        Assert.Equal("3+#", ProgressChart.Signs(lines));
        Assert.Equal(
            [
                "when        lesson  caught  to mend     minutes",
                "2031-05-06  stems   0 of 1  ###           9 =====",
                "2031-05-06  stems   0 of 1  ##########    4 ==",
                "2031-05-06  stems   0 of 1  clean         2 =",
            ],
            ProgressChart.Rows(lines, 78)
        );
        Assert.Equal("3 lessons taken, 1 of 14 lessons clean at least once.", ProgressChart.Summary(lines, 14));
    }

    [Fact]
    public void A_debrief_is_written_once_and_a_line_that_cant_be_read_is_passed_over()
    {
        using LocalStore store = Room("written");
        LessonRun run = Open(store, "written", "a valve at 4I");
        new ScriptedLearner(run).ToTheEnd();
        run.Close();
        run.Close();
        File.AppendAllText(Path.Combine(_folder["written"], "debriefs.jsonl"), "{\"job\": torn");

        Assert.Equal(0, Assert.Single(Book("written").Of(Learner)).ToMend);
    }

    [Fact]
    public void A_learner_gives_a_name_and_finds_it_again()
    {
        (PracticeDoor? door, string fault) = PracticeDoor.Open(_folder["door"], CoachMode.Asked);
        using PracticeDoor room = door ?? throw new InvalidOperationException(fault);
        Assert.IsType<LearnerForm>(room.First());

        (string person, string? refused) = room.Learner(" Kim Oak ");

        Assert.Null(refused);
        Assert.Equal("Kim Oak", room.Store.Shop.People[person].Name);
        Assert.Equal((person, null), room.Learner("Kim Oak"));
        Assert.IsType<LearnersScreen>(room.First());
    }

    [Fact]
    public void A_reading_typed_otherwise_than_shown_is_told_with_both()
    {
        using LocalStore store = Room("misread");
        LessonRun run = Open(store, "misread", "springs");
        Prompt prompt = ScriptedLearner.At(run);
        Assert.Equal("42 lbf", Assert.Single(run.Shown(prompt)).ToString());
        Assert.IsType<JobAnswer.Recorded>(run.Job.Do(new RunCommand.Enter(prompt.At, "43")));

        Misread misread = Assert.Single(run.Misreads);
        Assert.Equal(("43 lbf", "42 lbf"), (misread.Typed.ToString(), misread.Shown.ToString()));
        Assert.Contains("43 lbf typed, 42 lbf shown", string.Join(' ', run.Remarks), StringComparison.Ordinal);
    }

    [Fact]
    public void A_shops_own_store_is_no_practice_room()
    {
        (LocalStore? shop, _) = DemoShop.Open(_folder["shop"], "tests");
        shop!.Dispose();
        (_, Practice.Bindings.Binding? binding, _) = LessonShelf.Bind(LessonShelf.All()[0]);

        (LocalStore? room, string fault) = PracticeRoom.Open(_folder["shop"], binding!.Setup);

        Assert.Null(room);
        Assert.Contains("not a practice room", fault, StringComparison.Ordinal);
    }

    // The whole demo job, worked on a practice head: all is taken but its last line, the release.
    [Fact]
    public void No_way_leads_from_a_practice_head_to_a_released_job()
    {
        using DemoJob practice = new(practice: true);
        practice.UpTo(DemoJob.Entries[^2].TrimStart('@', ' '));
        Prompt last = Prompter.At(practice.Job.State, practice.Job.Shop, Prompter.Next(practice.Job.State)!.Value);

        JobAnswer.Refused refused = Assert.IsType<JobAnswer.Refused>(
            practice.Job.Sign(last.At, "moss", DemoShop.People[0].Pin, null, null)
        );

        Assert.Equal("A practice head is never released.", refused.Why);
    }

    [Fact]
    public void Every_lessons_job_is_marked_as_practice()
    {
        using LocalStore store = Room("mark");
        LessonRun run = Open(store, "mark", "valves");
        Assert.True(run.Job.State.Job!.Practice);
    }

    [Fact]
    public void The_page_of_a_step_has_the_gauges_face_beside_it_and_the_lesson_ends_on_what_it_showed()
    {
        using LocalStore store = Room("page");
        LessonRun run = Open(store, "page", "springs");
        PadOperator pad = new(run.Job, run);
        pad.ReadCautions();
        Golden.Match(pad.Picture(), "step.txt");

        new ScriptedLearner(run, (_, at) => at.Step.FullName == "teardown / spring" ? "keep" : null).ToTheEnd();

        run.TakeRemarks();
        Desk over = new(Screens.Run.RunScreen.Open(run));
        string picture = over.Draw(80, 24, new Look(Glyphs.Utf8, DateTimeOffset.UnixEpoch)).ToString();

        // The day it was taken on is today.
        string today = TimeProvider.System.GetUtcNow().ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
        Golden.Match(picture.Replace(today, "2031-05-06", StringComparison.Ordinal), "over.txt");
    }

    private DebriefBook Book(string room) => new(_folder[room]);

    private LocalStore Room(string name)
    {
        (_, Practice.Bindings.Binding? binding, string fault) = LessonShelf.Bind(LessonShelf.All()[0]);
        Assert.True(binding is not null, fault);
        (LocalStore? store, fault) = PracticeRoom.Open(_folder[name], binding.Setup);
        return store ?? throw new InvalidOperationException(fault);
    }

    private LessonRun Open(LocalStore store, string room, string name)
    {
        Lesson lesson = LessonShelf.All().Single(one => one.Name == name);
        (LessonRun? run, string fault) = LessonRun.Open(store, Book(room), lesson, Learner, CoachMode.EachStep);
        return run ?? throw new InvalidOperationException(fault);
    }
}
