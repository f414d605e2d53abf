using System.Globalization;
using ProcRunner.Lessons;
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
public sealed class LessonTests : LessonRooms
{
    public static TheoryData<string> Names => [.. LessonShelf.All().Select(lesson => lesson.Name)];

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
        File.AppendAllText(Path.Combine(Folder["written"], "debriefs.jsonl"), "{\"job\": torn");

        Assert.Equal(0, Assert.Single(Book("written").Of(Learner)).ToMend);
    }

    [Fact]
    public void A_learner_gives_a_name_and_finds_it_again()
    {
        (PracticeDoor? door, string fault) = PracticeDoor.Open(Folder["door"], CoachMode.Asked);
        using PracticeDoor room = door ?? throw new InvalidOperationException(fault);
        Assert.IsType<LearnerForm>(room.First());

        (string person, string? refused) = room.Learner(" Kim Oak ");

        Assert.Null(refused);
        Assert.Equal("Kim Oak", room.Store.Shop.People[person].Name);
        Assert.Equal((person, null), room.Learner("Kim Oak"));
        Assert.IsType<LearnersScreen>(room.First());
    }

    [Fact]
    public void A_shops_own_store_is_no_practice_room()
    {
        (LocalStore? shop, _) = DemoShop.Open(Folder["shop"], "tests");
        shop!.Dispose();
        (_, Practice.Bindings.Binding? binding, _) = LessonShelf.Bind(LessonShelf.All()[0]);

        (LocalStore? room, string fault) = PracticeRoom.Open(Folder["shop"], binding!.Setup);

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
}
