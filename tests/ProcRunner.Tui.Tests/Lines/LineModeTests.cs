using ProcRunner.Runs;
using ProcRunner.Testing;
using ProcRunner.Tui.Jobs;

namespace ProcRunner.Tui.Tests.Lines;

public class LineModeTests
{
    [Theory]
    [InlineData("do", "teardown / take the head apart head")]
    [InlineData("inspect", "teardown / magnetic particle crack test head")]
    [InlineData("measure", "teardown / guide bore 2E")]
    [InlineData("decide", "teardown / guide 2E")]
    [InlineData("fit", "guide replacement / valve guide 2E")]
    [InlineData("sign", "surface / measured head")]
    [InlineData("recheck", "seat counterbore / guide bore after pressing 3I")]
    public void Each_kind_of_step_asks_in_its_own_words(string name, string step)
    {
        int line = Array.LastIndexOf(DemoBench.EntryLines, $"@ {step}") + 1;

        (int status, string output) = DemoBench.Run(DemoRun.Shared.Before(line), $"@ {step}\nwhy\n");

        Assert.Equal(0, status);
        Golden.Match(WithoutOpening(output), $"prompt-{name}.txt");
    }

    [Fact]
    public void A_zero_and_a_cut_are_asked_and_answered_pass_by_pass()
    {
        int first = Array.IndexOf(DemoBench.EntryLines, "@ seat cut / seat 2E") + 1;
        string[] lines = DemoBench.EntryLines[(first - 1)..];
        string cut = string.Join('\n', lines.Take(8));

        (int status, string output) = DemoBench.Run(DemoRun.Shared.Before(first), cut);

        Assert.Equal(0, status);
        Golden.Match(WithoutOpening(output), "prompt-zero-and-cut.txt");
    }

    [Fact]
    public void A_refusal_says_what_was_read_the_limit_its_origin_why_it_matters_and_what_can_be_done()
    {
        (int line, RunEvent.ReadingTaken _) = DemoRun.Shared.Readings.First(r => !r.Taken.Reading.Good);

        (int status, string output) = DemoBench.Run(
            DemoRun.Shared.Before(line),
            DemoBench.EntryLines[line - 1] + "\n1\n.6267 .6267 .6267 .6267\n",
            piped: false
        );

        Assert.Equal(1, status);
        Golden.Match(WithoutOpening(output), "refusal.txt");
    }

    [Fact]
    public void An_entry_that_can_mean_two_things_is_questioned_with_its_meanings()
    {
        int line = Array.IndexOf(DemoBench.EntryLines, "@ seat cut / stem height 1I") + 1;

        (int status, string output) = DemoBench.Run(
            DemoRun.Shared.Before(line),
            "1,560\n1560\n1.5.6\nabc\n1.560\n",
            piped: false
        );

        Assert.Equal(0, status);
        Golden.Match(WithoutOpening(output), "question.txt");
    }

    [Fact]
    public void A_question_that_a_pipe_does_not_answer_ends_it_at_the_questioned_line()
    {
        int line = Array.IndexOf(DemoBench.EntryLines, "@ seat cut / stem height 1I") + 1;

        (int status, string output) = DemoBench.Run(
            DemoRun.Shared.Before(line),
            "1560\n@ seat cut / seat vacuum 1I\n23\n"
        );

        Assert.Equal(1, status);
        Assert.Contains("Stopped at line 1: ", output, StringComparison.Ordinal);
        Assert.Contains("Line 2 doesn't answer it", output, StringComparison.Ordinal);
    }

    [Fact]
    public void The_words_that_are_about_the_job_do_what_they_say()
    {
        JobRun job = DemoBench.Shared.Begin();

        (int status, string output) = DemoBench.Run(
            job,
            """
            # a remark does nothing
            note casting 4711, stamp DEMO
            hold because the crack-test bench is taken
            hold because of nothing more
            note still waiting
            as the job says
            take up
            take up
            @ teardown / casting and stamp head
            @ teardown / clean head
            as the job says
            none given
            .090
            correct .009 because a digit slipped
            correct .009
            correct teardown / complaint head: water loss because the customer rang
            hand over to nobody
            hand over to moss
            gauge depth = Z9
            gauge depth = D1
            changed the weather
            changed clamping or level
            go teardown / clean head
            limit guide bore high 1 because I say so
            limit
            not for this head because I don't feel like it
            sign
            new insert because it was cut too deep
            quit
            """,
            piped: false
        );

        Assert.Equal(0, status);
        Assert.Equal("moss", job.Person);
        Assert.Equal("water loss", job.State.Find(new At(1, At.Head))!.Said);
        Golden.Match(WithoutOpening(output), "words-of-the-job.txt");
    }

    [Fact]
    public void Help_lists_what_is_open_the_changes_and_every_word()
    {
        (int status, string output) = DemoBench.Run(DemoBench.Shared.Begin(), "?\n");

        Assert.Equal(0, status);
        Golden.Match(WithoutOpening(output), "help.txt");
    }

    [Theory]
    [InlineData("note one\nquit\nnote two\n", 0, 1)]
    [InlineData("note one\n\n\n# two\n", 0, 1)]
    [InlineData("note one\nnonsense\nnote two\n", 1, 1)]
    [InlineData("@ surface / skim taken head\nnote one\n", 1, 0)]
    [InlineData("@ no such step\nnote one\n", 1, 0)]
    public void A_pipe_ends_at_its_end_at_quit_or_at_the_first_line_that_is_refused(string lines, int status, int notes)
    {
        JobRun job = DemoBench.Shared.Begin();

        Assert.Equal(status, DemoBench.Run(job, lines).Status);
        Assert.Equal(notes, job.State.Notes.Count);
    }

    [Fact]
    public void A_bare_number_after_a_refusal_ends_a_pipe_and_names_the_refused_line()
    {
        (int line, RunEvent.ReadingTaken _) = DemoRun.Shared.Readings.First(r => !r.Taken.Reading.Good);

        (int status, string output) = DemoBench.Run(
            DemoRun.Shared.Before(line),
            $"# one\n{DemoBench.EntryLines[line - 1]}\n.6267 .6268 .6268 .6267\n"
        );

        Assert.Equal(1, status);
        Assert.Contains("Stopped at line 2: ", output, StringComparison.Ordinal);
        Assert.Contains("Line 3 doesn't answer it", output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_pipe_that_ends_at_a_refusal_ends_with_status_1()
    {
        (int line, RunEvent.ReadingTaken _) = DemoRun.Shared.Readings.First(r => !r.Taken.Reading.Good);

        (int status, string output) = DemoBench.Run(DemoRun.Shared.Before(line), DemoBench.EntryLines[line - 1]);

        Assert.Equal(1, status);
        Assert.Contains("Stopped at line 1: ", output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_released_job_says_so_and_takes_nothing_more()
    {
        JobRun job = DemoRun.Shared.Before(DemoBench.EntryLines.Length + 1);

        (int status, string output) = DemoBench.Run(job, "note more\n");

        Assert.Equal(0, status);
        Assert.Contains("The job is released", output, StringComparison.Ordinal);
        Assert.Empty(job.State.Notes);
    }

    // The first lines name the job, the same every time.
    private static string WithoutOpening(string output)
    {
        int end = output.IndexOf("\n\n", StringComparison.Ordinal);
        return output[(end + 2)..];
    }
}
