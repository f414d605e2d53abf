using ProcRunner.Lessons;
using ProcRunner.Procedures;
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

    private readonly TempFolder _folder = new();

    public static TheoryData<string> Names => [.. LessonShelf.All().Select(lesson => lesson.Name)];

    public static TheoryData<string> Planted =>
        [.. LessonShelf.All().Where(lesson => lesson.Planted.Count > 0).Select(lesson => lesson.Name)];

    public void Dispose() => _folder.Dispose();

    [Theory]
    [MemberData(nameof(Names))]
    public void Taken_the_right_way_a_lesson_ends_clean_and_all_that_was_planted_is_caught(string name)
    {
        using LocalStore store = Room("right");
        LessonRun run = Taken(store, name, right: true);

        Debrief debrief = run.Close();
        Assert.True(debrief.IsClean, string.Join('\n', debrief.Lines(run.Job.State)));
        Assert.Equal(run.Lesson.Planted, debrief.Caught);
        Assert.Equal("#", Book("right").Chart(name, Learner));
    }

    [Theory]
    [MemberData(nameof(Planted))]
    public void Taken_the_wrong_way_it_says_what_was_missed_and_why(string name)
    {
        using LocalStore store = Room("wrong");
        LessonRun run = Taken(store, name, right: false);

        Debrief debrief = run.Close();
        Assert.False(debrief.IsClean);
        string said = string.Join('\n', debrief.Lines(run.Job.State));
        Assert.True(debrief.Missed.Count > 0 || debrief.TooDeep > 0, said);
        Assert.All(debrief.Missed, fault => Assert.Contains(fault.Why, said, StringComparison.Ordinal));
        Assert.DoesNotContain('#', Book("wrong").Chart(name, Learner));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void The_same_lesson_is_the_same_for_everybody_and_goes_on_from_its_trail_as_it_would_have(string name)
    {
        using LocalStore one = Room("one");
        using LocalStore other = Room("other");
        LessonRun first = Open(one, "one", name);
        LessonRun second = Open(other, "other", name);
        for (int i = 0; i < 12 && !first.IsOver; i++)
        {
            Assert.Equal(Face(first), Face(second));
            Answer(first, right: true);
            Answer(second, right: true);

            // Left and taken up again.
            if (second.IsOver)
            {
                break;
            }

            second = Open(other, "other", name);
            Assert.Equal(first.Job.State.Sequence, second.Job.State.Sequence);
            Assert.Equal(first.IsOver, second.IsOver);
        }
    }

    [Fact]
    public void A_reading_typed_otherwise_than_shown_is_told_with_both()
    {
        using LocalStore store = Room("misread");
        LessonRun run = Open(store, "misread", "tired spring");
        Prompt prompt = At(run);
        Assert.Equal("42 lbf", Assert.Single(run.Shown(prompt)).ToString());
        Assert.IsType<JobAnswer.Recorded>(run.Job.Do(new RunCommand.Enter(prompt.At, "43")));

        Misread misread = Assert.Single(run.Misreads);
        Assert.Equal(("43 lbf", "42 lbf"), (misread.Typed.ToString(), misread.Shown.ToString()));
        Assert.Contains(
            "43 lbf was typed, the gauge shows 42 lbf",
            string.Join(' ', run.Remarks),
            StringComparison.Ordinal
        );
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
        LessonRun run = Open(store, "mark", "nicked valve");
        Assert.True(run.Job.State.Job!.Practice);
    }

    [Fact]
    public void The_page_of_a_step_has_the_gauges_face_beside_it_and_the_lesson_ends_on_what_it_showed()
    {
        using LocalStore store = Room("page");
        LessonRun run = Open(store, "page", "tired spring");
        PadOperator pad = new(run.Job, run);
        pad.ReadCautions();
        Golden.Match(pad.Picture(), "step.txt");

        while (!run.IsOver)
        {
            Answer(run, right: false);
        }

        Desk over = new(Screens.Run.RunScreen.Open(run));
        string picture = over.Draw(80, 24, new Look(Glyphs.Utf8, DateTimeOffset.UnixEpoch)).ToString();
        Golden.Match(picture, "over.txt");
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

    private LessonRun Taken(LocalStore store, string name, bool right)
    {
        LessonRun run = Open(store, right ? "right" : "wrong", name);
        for (int i = 0; !run.IsOver; i++)
        {
            Assert.True(i < 80, $"no end: {run.Job.State.Plan.NameOf(At(run).At)}");
            Answer(run, right);
        }

        return run;
    }

    private static string Face(LessonRun run) =>
        Prompter.Next(run.Job.State) is null ? "" : string.Join('\n', Screens.Run.GaugeView.Lines(run, At(run)));

    private static Prompt At(LessonRun run) =>
        Prompter.At(run.Job.State, run.Job.Shop, Prompter.Next(run.Job.State)!.Value);

    private static void Answer(LessonRun run, bool right)
    {
        Prompt prompt = At(run);
        At at = prompt.At;
        string planted =
            run.Lesson.Planted.FirstOrDefault(f =>
                f.Step == prompt.Step.FullName && (f.Position is null || f.Position == prompt.Position)
            )?.Answer
            ?? "";
        JobAnswer answer = prompt.Awaits switch
        {
            // Where the run allows nothing but a retest, the wrong way is to type what ought to be there.
            Awaited.Reading when !right && planted == "measure again" => Enter(run, at, prompt.Window.Low.ToString()!),
            Awaited.Reading => Enter(run, at, Typed(run.Shown(prompt))),
            Awaited.Finding => Enter(run, at, right ? run.Seen(prompt) : prompt.Choices[0]),
            Awaited.Choice => Enter(run, at, right && planted.Length > 0 ? planted : "keep"),
            Awaited.NumberSet => Enter(run, at, prompt.NumberToSet.ToString()!),
            Awaited.Readout => Enter(run, at, right ? prompt.Target!.Show.ToString() : TooDeep(prompt)),
            Awaited.WayOn => Way(run, prompt, right ? planted : "concession"),
            Awaited.Part => Enter(run, at, "P-1, lot P"),
            _ => Enter(run, at, "done"),
        };
        Assert.True(answer is JobAnswer.Recorded, $"{run.Job.State.Plan.NameOf(at)}: {answer}");
    }

    private static JobAnswer Enter(LessonRun run, At at, string text) => run.Job.Do(new RunCommand.Enter(at, text));

    private static JobAnswer Way(LessonRun run, Prompt prompt, string text)
    {
        WayOn way =
            prompt.WaysOn.FirstOrDefault(w => w.Text.StartsWith(text, StringComparison.Ordinal))
            ?? prompt.WaysOn.First(w => w.Kind == WayKind.Scrap);
        return way.Kind is WayKind.Concession or WayKind.Scrap
            ? run.Job.TakeWayByLead(prompt.At, way, "as measured", "moss", DemoShop.People[0].Pin)
            : run.Job.Do(new RunCommand.TakeWay(prompt.At, way.Text, "as measured", null));
    }

    private static string Typed(IReadOnlyList<Quantity> shown) =>
        string.Join("; ", shown.Select(one => one.ToString()));

    private static string TooDeep(Prompt prompt) =>
        new Quantity(prompt.Target!.Show.Value + 0.02m, prompt.Target.Show.Unit).ToString();
}
