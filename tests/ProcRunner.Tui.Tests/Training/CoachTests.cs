using System.Globalization;
using ProcRunner.Quantities;
using ProcRunner.Runs;
using ProcRunner.Runs.Prompts;
using ProcRunner.Store.Local;
using ProcRunner.Tui.Jobs;
using ProcRunner.Tui.Training;

namespace ProcRunner.Tui.Tests.Training;

/// <summary>What the coach and the debrief say of answers, right, wrong and put right. All of it is invented.</summary>
public sealed class CoachTests : LessonRooms
{
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

    // A bent pilot reads so much that it is hard to believe; whoever typed what stood there isn't blamed for it.
    [Theory]
    [InlineData(false, "")]
    [InlineData(true, "asked back, and not what was shown: 1 entry")]
    public void What_was_read_rightly_and_asked_back_all_the_same_is_no_slip(bool isSlip, string told)
    {
        using LocalStore store = Room("asked");
        LessonRun run = Open(store, "asked", "runout");
        Prompt prompt = ScriptedLearner.At(run);
        decimal off = isSlip ? 0.01m : 0;
        string typed = string.Join(
            ' ',
            run.Shown(prompt).Select(q => (q.Value + off).ToString(CultureInfo.InvariantCulture))
        );
        JobAnswer.Recorded asked = Assert.IsType<JobAnswer.Recorded>(
            run.Job.Do(new RunCommand.Enter(prompt.At, typed))
        );
        Assert.IsType<RunEvent.EntryQuestioned>(Assert.Single(asked.Events));
        new ScriptedLearner(run).ToTheEnd();

        string said = string.Join('\n', run.Close().Lines(run.Job.State));
        Assert.Equal(isSlip, said.Contains("asked back", StringComparison.Ordinal));
        Assert.Contains(told, said, StringComparison.Ordinal);
    }

    [Fact]
    public void What_a_learner_chose_of_the_coach_is_kept_for_the_next_start_and_for_nobody_else()
    {
        using LocalStore store = Room("kept");
        Open(store, "kept", "springs").Keep(CoachMode.EachStep);

        Assert.Equal(CoachMode.EachStep, Book("kept").Coach.Read(Learner));
        Assert.Equal(CoachMode.Asked, Book("kept").Coach.Read("vale"));
        File.WriteAllText(Path.Combine(Folder["kept"], "coach.json"), "torn");
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
}
