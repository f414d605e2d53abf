using ProcRunner.Procedures;
using ProcRunner.Runs;
using ProcRunner.Store.Local;
using ProcRunner.Testing;
using ProcRunner.Trail;
using ProcRunner.Tui.Jobs;
using ProcRunner.Tui.Screens;
using ProcRunner.Tui.Screens.Parts;
using ProcRunner.Tui.Screens.Run;
using ProcRunner.Tui.Screens.Shop;

namespace ProcRunner.Tui.Tests.Shop;

/// <summary>The list of heads and what leads from it: keys are pressed, the store is looked at.</summary>
public sealed class JobScreensTests : IDisposable
{
    private readonly ShopBench _bench = new();

    public void Dispose() => _bench.Dispose();

    [Fact]
    public void A_head_is_gone_on_with_by_its_number_its_stamp_or_Enter_alone()
    {
        _bench.Open("1001", "Upper Field (invented)");
        _bench.Time.Advance(TimeSpan.FromMinutes(5));
        _bench.Open("1002", "Mill Lane (invented)");

        Assert.Equal("1002", StampAfter("\n"));
        Assert.Equal("1002", StampAfter("1\n"));
        Assert.Equal("1001", StampAfter("2\n"));
        Assert.Equal("1001", StampAfter("1001\n"));
        Assert.IsType<JobListScreen>(List().Type("3\n").Top);
    }

    [Fact]
    public void Where_no_index_can_be_kept_the_list_is_made_from_the_trails()
    {
        _bench.Open("1001", "Upper Field (invented)");
        // A folder where the lock's file should be: the index can't be kept, and is made in memory.
        Directory.CreateDirectory(Path.Combine(_bench.Folder, "index.lock"));

        Desk desk = List();

        Assert.Contains("1001", See(desk), StringComparison.Ordinal);
        Assert.Contains("Upper Field (invented)", See(desk), StringComparison.Ordinal);
        Assert.DoesNotContain("index can't be used", See(desk), StringComparison.Ordinal);
    }

    [Fact]
    public void Without_any_index_the_list_still_names_the_heads_and_opens_them()
    {
        _bench.Open("1001", "Upper Field (invented)");
        Directory.CreateDirectory(Path.Combine(_bench.Folder, "index.lock"));
        // Without it the folder doesn't count as a store, as when it is gone.
        File.Delete(Path.Combine(_bench.Folder, "store.json"));

        Desk desk = List();

        Assert.Contains("1001", See(desk), StringComparison.Ordinal);
        Assert.Contains("index can't be used", See(desk), StringComparison.Ordinal);
        Assert.IsType<StandInRun>(desk.Type("1\n").Top);
    }

    // Reach over the fire ring's land, then the relief is left after all: nothing is out of spec any more.
    [Fact]
    public void A_value_of_a_step_no_longer_asked_for_doesnt_count()
    {
        using Run.DemoJob job = new();
        job.UpTo("relief / relief head");
        ShopBench.Enter(job.Job, "cut");
        ShopBench.Enter(job.Job, "1.000");
        Assert.Contains(Values(job.Job), line => line.Contains("relief reach, in", StringComparison.Ordinal));
        Assert.Contains(Values(job.Job), line => line.Contains("!1.000", StringComparison.Ordinal));

        At at = job.Job.State.LastAt!.Value;
        Assert.IsType<JobAnswer.Recorded>(job.Job.Do(new RunCommand.TakeWay(at, "decide again", "not needed", null)));
        ShopBench.Enter(job.Job, "leave");

        Assert.DoesNotContain(Values(job.Job), line => line.Contains("relief reach", StringComparison.Ordinal));
    }

    private static string[] Values(JobRun job) => [.. ValueTable.Lines(job.State, 120).Select(line => line.Text)];

    [Fact]
    public void Several_heads_are_open_at_once_and_each_keeps_its_place()
    {
        JobRun one = _bench.Open("1001", "");
        _bench.Open("1002", "");
        ShopBench.Enter(one, "done");
        Desk desk = List();

        Screen first = desk.Type("1001\n").Top!;
        desk.Type("\u001b1002\n");
        Screen second = desk.Top!;
        desk.Type("\u001b1001\n");

        Assert.NotSame(((StandInRun)first).Run, ((StandInRun)second).Run);
        Assert.Same(((StandInRun)first).Run, Assert.IsType<StandInRun>(desk.Top).Run);
    }

    [Fact]
    public void Held_heads_stand_apart_and_say_why_and_are_taken_up_again()
    {
        JobRun run = _bench.Open("1001", "");
        Desk desk = List().Type("/4\n1\n/4\n1\n");

        Assert.Equal((JobStanding.Held, "waiting for parts"), (run.State.Standing, run.State.StandingReason));
        Assert.Contains("ON HOLD: waiting for parts", See(desk), StringComparison.Ordinal);
        Assert.Contains("ON HOLD", See(List()), StringComparison.Ordinal);

        desk.Type("/3\n");
        Assert.Equal(JobStanding.Open, run.State.Standing);
        Assert.Equal(JobStanding.Open, Reread(run).Standing);
    }

    [Fact]
    public void Released_heads_are_apart_and_their_work_is_over()
    {
        JobRun run = _bench.Open("1001", "");
        _bench.Open("1002", "");
        Scrap(run);

        Assert.DoesNotContain("1001", See(List()), StringComparison.Ordinal);
        Desk desk = List().Type("/5\n");
        Assert.Contains("1001", See(desk), StringComparison.Ordinal);
        Assert.DoesNotContain("1002", See(desk), StringComparison.Ordinal);

        desk.Type("1\n1\n");
        Assert.IsType<JobScreen>(desk.Top);
        Assert.Contains("SCRAPPED", See(desk), StringComparison.Ordinal);
    }

    [Fact]
    public void Who_goes_on_with_anothers_head_takes_it_over_and_the_trail_says_so()
    {
        JobRun run = _bench.Open("1001", "", person: "vale");
        Desk desk = List().Type("/3\n1\n").Type("1\n");

        Assert.Equal("finch", _bench.Session.Person);
        Assert.IsType<StandInRun>(desk.Top);
        RunEvent.HandedOver handed = Events(run).OfType<RunEvent.HandedOver>().Single();
        Assert.Equal(("vale", "finch"), (handed.From, handed.To));
        Assert.Equal("finch", run.Person);
    }

    [Fact]
    public void Enter_does_what_the_line_says_where_no_head_is_open()
    {
        _bench.Open("1001", "").Do(new RunCommand.Hold("end of day"));
        Desk desk = List();
        Assert.Contains("Enter: a new job", See(desk), StringComparison.Ordinal);
        desk.Type("\n");
        Assert.IsType<NewJobForm>(desk.Top);
    }

    [Fact]
    public void Every_page_of_a_table_begins_with_its_headings()
    {
        TextLine[] lines = [.. Enumerable.Range(1, 40).Select(i => new TextLine($"row {i}", Heading: "   1I   1E"))];
        Desk desk = new(new Table(_bench.Session, lines));
        Assert.DoesNotContain("1I   1E", See(desk), StringComparison.Ordinal);
        desk.Type("+");
        Assert.Contains("\n    1I   1E\n row ", See(desk), StringComparison.Ordinal);
    }

    [Fact]
    public void A_note_on_anothers_held_head_carries_the_name_of_who_wrote_it()
    {
        JobRun run = _bench.Open("1001", "", person: "vale");
        run.Do(new RunCommand.Hold("end of day"));
        List().Type("/3\n1\n").Type("/4\n1\n/2\n1\n2\n");

        TrailEntry last = _bench.Store.Reader.ReadTrail(run.State.JobId).Entries[^1].Entry;
        Assert.Equal("finch", last.Operator);
        Assert.Equal("customer told", Reread(run).Notes.Single().Note.Text);
    }

    [Fact]
    public void A_hand_over_in_the_run_is_followed_when_it_is_left()
    {
        JobRun run = _bench.Open("1001", "", person: "vale");
        Desk desk = List().Type("1\n");
        run.Do(new RunCommand.HandOver("finch"));
        desk.Type("\u001b").Type("1\n");

        Assert.Equal("finch", _bench.Session.Person);
        Assert.Single(Events(run).OfType<RunEvent.HandedOver>());
    }

    [Fact]
    public void A_head_is_handed_over_by_number()
    {
        JobRun run = _bench.Open("1001", "", person: "vale");
        List().Type("/4\n1\n/3\n2\n");

        Assert.Equal("moss", Reread(run).Worker);
        Assert.Equal("moss", _bench.Session.Person);
    }

    [Fact]
    public void Notes_are_stock_answers_or_words_and_stand_with_name_and_time()
    {
        JobRun run = _bench.Open("1001", "");
        Desk desk = List().Type("/4\n1\n/2\n1\n1\n").Type("1\nvalve 3 has a short stem\n");

        Assert.Equal(["see photo", "valve 3 has a short stem"], Reread(run).Notes.Select(n => n.Note.Text));
        Assert.Contains("2031-04-07 10:30  R. Vale", See(desk), StringComparison.Ordinal);
        Assert.Contains("valve 3 has a short stem", See(desk), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_record_is_written_by_number_and_Enter()
    {
        JobRun run = _bench.Open("1001", "Upper Field (invented)");
        Desk desk = new(new RecordForm(_bench.Session, run, _bench.Folder));

        desk.Type("9\n");
        Assert.Contains("There is no such number here", See(desk), StringComparison.Ordinal);
        desk.Type("1\nrecord.doc\n");
        Assert.Contains("Its ending must be one of .html, .pdf, .csv, .json", See(desk), StringComparison.Ordinal);
        Desk other = new(new RecordForm(_bench.Session, run, _bench.Folder));
        other.Type("1\n\n");
        await Assert.IsType<RecordWritingScreen>(other.Top).Writing.WaitAsync(TimeSpan.FromSeconds(60));
        Assert.Contains("Written: ", See(other), StringComparison.Ordinal);

        string page = File.ReadAllText(Path.Combine(_bench.Folder, "build-record-1001.html"));
        Assert.Contains("Upper Field (invented)", page, StringComparison.Ordinal);
        Assert.Contains("NOT RELEASED", page, StringComparison.Ordinal);
    }

    // The writing waits at its first piece until the key is pressed, so that the stop always comes in the middle of it.
    [Theory]
    [InlineData(".html")]
    [InlineData(".pdf")]
    [InlineData(".csv")]
    [InlineData(".json")]
    public async Task Writing_a_record_is_stopped_by_a_key_and_leaves_what_was_there(string ending)
    {
        JobRun run = _bench.Open("1001", "Upper Field (invented)");
        using TempFolder folder = new();
        string path = folder.Write("record" + ending, "the one before");
        using ManualResetEventSlim isPressed = new();
        TaskCompletionSource reached = new(TaskCreationOptions.RunContinuationsAsynchronously);
        RecordWritingScreen writing = new(
            _bench.Session,
            _bench.Store.Shop.Jobs[run.State.JobId],
            path,
            isPractice: false,
            (_, _) =>
            {
                reached.TrySetResult();
                isPressed.Wait(TimeSpan.FromSeconds(60));
            }
        );
        Desk desk = new(writing);

        await reached.Task.WaitAsync(TimeSpan.FromSeconds(60));
        Assert.Contains("/ stops it", See(desk), StringComparison.Ordinal);
        desk.Type("/");
        Assert.Same(writing, desk.Top);
        Assert.Contains("Stopping.", See(desk), StringComparison.Ordinal);
        isPressed.Set();
        await writing.Writing.WaitAsync(TimeSpan.FromSeconds(60));

        Assert.Contains("Stopped. Nothing was written.", See(desk), StringComparison.Ordinal);
        Assert.Equal([path], Directory.GetFiles(folder.Path));
        Assert.Equal("the one before", await File.ReadAllTextAsync(path));
        desk.Type("/");
        Assert.NotSame(writing, desk.Top);
    }

    [Fact]
    public void The_record_is_in_the_menu_of_the_head()
    {
        _bench.Open("1001", "");

        Assert.IsType<RecordForm>(List().Type("/4\n1\n/5\n").Top);
    }

    [Fact]
    public void A_head_is_found_by_stamp_customer_part_and_lot()
    {
        JobRun run = _bench.Open("1001", "Lower Field (invented)");
        _bench.Open("1002", "Mill Lane (invented)");
        int fit = run.State.Plan.Steps.First(s => s.Work is StepWork.Fit).Index;
        _bench.Store.Append(
            run.State.JobId,
            new EntryDraft(
                "vale",
                [
                    RunEventFormat.Write(
                        run.State.Plan,
                        new RunEvent.PartFitted(new At(fit, 0), "guide", "G-77", "LOT 4711")
                    ),
                ]
            )
        );

        foreach (string text in new[] { "1001", "lower f", "g-77", "4711" })
        {
            Desk desk = List().Type($"/2\n{text}\n");
            Assert.IsType<FoundScreen>(desk.Top);
            Assert.Contains("1001", See(desk), StringComparison.Ordinal);
            Assert.DoesNotContain("1002", See(desk), StringComparison.Ordinal);
        }

        Assert.Contains("Nothing was found", See(List().Type("/2\nno such thing\n")), StringComparison.Ordinal);
    }

    [Fact]
    public void The_history_tells_every_reading_in_order_and_a_refused_one_with_what_it_was_judged_by()
    {
        using Run.DemoJob demo = new();
        demo.Lines(Run.DemoJob.Entries);
        RunState state = demo.Job.State;
        TrailEntry[] entries = [.. demo.Store.Reader.ReadTrail(state.JobId).Entries.Select(e => e.Entry)];
        RunEvent.ReadingTaken[] readings =
        [
            .. entries
                .SelectMany(e => e.Events)
                .Select(map => RunEventFormat.Read(state.Plan, map))
                .OfType<RunEvent.ReadingTaken>(),
        ];
        RunEvent.ReadingTaken refused = readings.First(e => e.Reading.Judgement.Verdict == Verdict.Out);

        for (int position = At.Head; position < state.Plan.Positions.Count; position++)
        {
            string[] story = [.. PositionStory.Of(state, entries, position, id => id).Select(line => line.Text)];
            int from = 0;
            foreach (RunEvent.ReadingTaken taken in readings.Where(e => e.At.Position == position))
            {
                string told = $"{taken.Reading.Characteristic} {taken.Reading.Value}: ";
                from = 1 + Array.FindIndex(story, from, line => line.Contains(told, StringComparison.Ordinal));
                Assert.True(from > 0, $"{told} isn't told, or not in order:\n{string.Join('\n', story)}");
            }

            if (position == refused.At.Position)
            {
                Assert.Contains(story, line => line.Contains("OUT OF SPEC", StringComparison.Ordinal));
                Assert.Contains(refused.Reading.Judgement.Detail, story);
            }
        }
    }

    [Fact]
    public void The_screens_of_the_shop_and_of_the_run_lead_into_each_other()
    {
        ShopSession session = new(
            _bench.Store,
            _bench.Folder,
            _bench.Time,
            _bench.Session.Settings,
            _bench.Desk,
            (_, run) => RunScreen.Open(run)
        );
        session.Works("vale");
        _bench.Open("1001", "");
        Desk desk = new(new JobListScreen(session));

        desk.Type("\n");
        Assert.IsAssignableFrom<RunPage>(desk.Top);

        // The run's menu leads back to the list.
        desk.Type("\n/10\n");
        Assert.IsType<JobListScreen>(desk.Top);
    }

    private Desk List() => new(new JobListScreen(_bench.Session));

    private string See(Desk desk) => desk.Picture(_bench.Look);

    private string StampAfter(string keys) => Assert.IsType<StandInRun>(List().Type(keys).Top).Run.State.Job!.Stamp;

    private RunState Reread(JobRun run)
    {
        (JobReading? job, string fault) = JobReading.Read(_bench.Store.Reader, run.State.JobId);
        Assert.True(job is not null, fault);
        return job!.State;
    }

    private IEnumerable<RunEvent> Events(JobRun run) =>
        _bench
            .Store.Reader.ReadTrail(run.State.JobId)
            .Entries.SelectMany(e => e.Entry.Events)
            .Select(map => RunEventFormat.Read(run.State.Plan, map))
            .OfType<RunEvent>();

    // Written past the decider: how a head comes to be scrapped is tested elsewhere.
    private void Scrap(JobRun run)
    {
        RunEvent scrapped = new RunEvent.HeadScrapped(
            new At(0, At.Head),
            "cracked",
            new Mark("moss", "T. Moss", _bench.Time.GetUtcNow(), "")
        );
        _bench.Store.Append(
            run.State.JobId,
            new EntryDraft("moss", [RunEventFormat.Write(run.State.Plan, scrapped)], Anchor.ClosedOut)
        );
        run.State.Apply(run.State.Sequence + 1, [scrapped]);
    }

    private sealed class Table(ShopSession session, IReadOnlyList<TextLine> lines) : TextScreen(session)
    {
        protected override string Title => "a table";

        protected override IReadOnlyList<TextLine> Lines(int width) => lines;
    }
}
