using System.Text;
using ProcRunner.Lessons;
using ProcRunner.Runs;
using ProcRunner.Runs.Prompts;
using ProcRunner.Store.Local;
using ProcRunner.Testing;
using ProcRunner.Trail;
using ProcRunner.Tui.Demo;
using ProcRunner.Tui.Drawing;
using ProcRunner.Tui.Jobs;
using ProcRunner.Tui.Screens;
using ProcRunner.Tui.Screens.Run;
using ProcRunner.Tui.Screens.Shop;
using ProcRunner.Tui.Shell;
using ProcRunner.Tui.Tests.Shop;
using ProcRunner.Tui.Training;

namespace ProcRunner.Tui.Tests.Training;

/// <summary>The practice room from its door, and that nothing leads out of it to a released job. All of it is invented.</summary>
public sealed class PracticeRoomTests : IDisposable
{
    private readonly TempFolder _folder = new();
    private readonly List<IDisposable> _open = [];

    public void Dispose()
    {
        _open.ForEach(one => one.Dispose());
        _folder.Dispose();
    }

    [Fact]
    public void A_newcomer_is_in_the_first_lesson_after_one_Enter_and_from_its_end_in_the_next_after_another()
    {
        PracticeDoor room = Room();
        Desk desk = new(room.First());
        desk.Type("\n");
        Assert.IsAssignableFrom<RunPage>(desk.Top);

        for (int i = 0; desk.Top is not DebriefPage; i++)
        {
            string picture = desk.Picture(Look);
            Assert.True(i < 60, picture);
            Assert.Contains("PRACTICE", picture, StringComparison.Ordinal);
            desk.Type(desk.Top is StepPage ? OnPad(room) : "\n");
        }

        string over = desk.Picture(Look);
        Assert.Contains("As it should be.", over, StringComparison.Ordinal);
        string next = LessonShelf.All()[1].Name;
        Assert.Contains($"Enter: next, {next}", over, StringComparison.Ordinal);
        desk.Type("\n");
        Assert.IsAssignableFrom<RunPage>(desk.Top);
        Assert.IsNotType<DebriefPage>(desk.Top);
    }

    // The load is recorded, not judged, at its step; the head spec's low limit is 46 lbf, its aim 50: 46 less 42 by hand.
    [Fact]
    public void What_a_step_doesnt_judge_the_coach_holds_against_the_head_spec()
    {
        LessonRun run = Lesson(Room(), "springs");
        Prompt prompt = At(run);
        run.Job.Do(new RunCommand.Enter(prompt.At, "42"));

        string said = string.Join('\n', run.TakeRemarks());
        Assert.Contains("low 46 lbf, aim 50 lbf, high 54 lbf", said, StringComparison.Ordinal);
        Assert.Contains("4 lbf below the low end", said, StringComparison.Ordinal);
    }

    // 69 less 60 and 70 less 69 by hand.
    [Fact]
    public void Of_a_temperature_too_the_coach_says_what_is_left_and_how_far_the_aim_is()
    {
        LessonRun run = Lesson(Room(), "reading gauges");
        run.Job.Do(new RunCommand.Enter(At(run).At, "69"));

        string said = string.Join('\n', run.TakeRemarks());
        Assert.Contains("9 degF above the low end. 1 degF from the aim.", said, StringComparison.Ordinal);
    }

    [Fact]
    public void Left_to_the_shop_the_rooms_lock_is_free_at_once_and_the_room_opens_again()
    {
        using ShopDoor door = new(
            _folder["shop"],
            ScreenSettings.From(null),
            (_, job) => RunScreen.Open(job),
            rounds: 1
        );
        (Screen? first, string fault) = door.Practice();
        Desk desk = new(new WelcomeScreen(door), first ?? throw new InvalidOperationException(fault));
        desk.Type("\n");
        Assert.Null(PracticeDoor.Open(_folder["shop-practice"], null).Door);

        for (int i = 0; desk.Top is not WelcomeScreen; i++)
        {
            Assert.True(i < 5, desk.Picture(Look));
            desk.Type("\u001b");
        }

        (PracticeDoor? other, fault) = PracticeDoor.Open(_folder["shop-practice"], null);
        Assert.True(other is not null, fault);
        other.Dispose();
        (first, fault) = door.Practice();
        Assert.True(first is not null, fault);
    }

    [Fact]
    public void Lines_of_the_book_that_cant_be_read_are_told_and_swallow_no_other()
    {
        PracticeDoor room = Room();
        string file = Path.Combine(_folder["room"], "debriefs.jsonl");
        File.WriteAllText(file, "not json\n{\"job\":\"x\"}\n{\"torn");
        LessonRun run = Lesson(room, LessonShelf.All()[0].Name);
        while (!run.IsOver)
        {
            Prompt prompt = At(run);
            run.Job.Do(new RunCommand.Enter(prompt.At, string.Join("; ", run.Shown(prompt))));
        }

        run.Close();
        DebriefBook book = new(_folder["room"]);
        Assert.Equal([run.Job.State.JobId], book.Read().Select(one => one.Job));
        Assert.Equal(3, book.Unreadable);
        Assert.Contains("can't be read and count for nothing: 3", book.UnreadableInWords, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_entry_written_in_a_practice_room_is_marked_by_itself()
    {
        PracticeDoor room = Room();
        StoreReader reader = room.Store.Reader;
        string id = Lesson(room, LessonShelf.All()[2].Name).Job.State.JobId;
        Assert.All(
            reader.ReadTrail(id).Entries.Concat(reader.ReadTrail(JobId.Shop).Entries),
            entry => Assert.StartsWith("PRACTICE ", entry.Entry.Bench, StringComparison.Ordinal)
        );
    }

    [Fact]
    public void What_is_opened_in_a_copy_of_the_room_under_another_name_is_still_practice()
    {
        Room().Dispose();
        Copy(_folder["room"], _folder["Bent Valve Works"]);
        LocalStore store = Floor("Bent Valve Works");
        (PlanTexts? texts, _) = DemoShop.ReadPlan();
        JobHeader header = new()
        {
            Stamp = "4711",
            ProcedureDigest = texts!.ProcedureDigest.ToString(),
            HeadDigest = texts.HeadDigest.ToString(),
            Practice = false,
        };

        (JobRun? run, string fault) = JobRun.Begin(store, Machine.Time, texts, header, "moss");

        Assert.True(run is not null, fault);
        Assert.True(run.State.Job!.Practice);
        Assert.All(
            JobCheck.Run(store.Reader, store.Shop, store.Shop.Jobs.Values.Single(), null),
            check => Assert.True(check.Of == JobId.Shop || check.IsPractice)
        );
    }

    [Fact]
    public void A_practice_job_sent_to_a_shop_stays_practice_and_cant_be_worked_on_there()
    {
        PracticeDoor room = Room();
        string id = Lesson(room, LessonShelf.All()[0].Name).Job.State.JobId;
        (byte[]? file, string fault) = JobFile.Of(room.Store.Reader, id);
        Assert.True(file is not null, fault);
        (LocalStore? shop, _) = DemoShop.Open(_folder["shop"], "tests");
        _open.Add(shop!);
        (ExportedJob? job, JobCheck? check, _) = JobFile.Check(file);

        Assert.True(check!.IsPractice);
        JobFile.Import(shop!.Reader, file, job!);
        Assert.All(JobFile.CheckKept(shop.Reader), kept => Assert.True(kept.Check.IsPractice));
        (JobRun? taken, _) = JobRun.Resume(shop, Machine.Time, id, "vale");
        Assert.Null(taken);
    }

    [Fact]
    public void A_practice_trail_put_among_a_shops_jobs_doesnt_hold_there()
    {
        string id = Lesson(Room(), LessonShelf.All()[0].Name).Job.State.JobId;
        (LocalStore? shop, _) = DemoShop.Open(_folder["shop"], "tests");
        shop!.Dispose();
        Copy(Path.Combine(_folder["room"], "jobs"), Path.Combine(_folder["shop"], "jobs"));

        LocalStore again = Floor("shop");
        (JobRun? taken, _) = JobRun.Resume(again, Machine.Time, id, "vale");
        Assert.True(taken?.State.Job?.Practice ?? true);
        Assert.Contains(JobCheck.Run(again.Reader, again.Shop, null, null), check => check.Of == id && !check.Holds);
    }

    [Theory]
    [InlineData("\"practice\":true", "\"practice\":false")]
    [InlineData("\"bench\":\"PRACTICE ", "\"bench\":\"")]
    public void A_mark_taken_out_of_the_trail_is_found(string mark, string without)
    {
        PracticeDoor room = Room();
        string id = Lesson(room, LessonShelf.All()[0].Name).Job.State.JobId;
        room.Dispose();
        string file = Directory
            .EnumerateFiles(Path.Combine(_folder["room"], "jobs"), "*.trail", SearchOption.AllDirectories)
            .Single();
        string text = File.ReadAllText(file, Encoding.UTF8);
        Assert.Contains(mark, text, StringComparison.Ordinal);
        File.WriteAllText(file, text.Replace(mark, without, StringComparison.Ordinal), new UTF8Encoding(false));

        (StoreReader? reader, _) = ShopFloor.Read(_folder["room"]);
        Assert.IsNotType<TrailVerdict.Holds>(reader!.ReadTrail(id).Verdict);
    }

    // Every mark taken out and every digest made anew, as a hand with sha256 can: the shop book knows another opening, and the job
    // can't be worked on to a release.
    [Fact]
    public void A_trail_written_anew_without_its_marks_is_found_and_leads_to_no_release()
    {
        PracticeDoor room = Room();
        string id = Lesson(room, LessonShelf.All()[0].Name).Job.State.JobId;
        room.Dispose();
        string file = Directory
            .EnumerateFiles(Path.Combine(_folder["room"], "jobs"), "*.trail", SearchOption.AllDirectories)
            .Single();
        StringBuilder forged = new();
        (string was, string now) = ("", "");
        foreach (string line in File.ReadLines(file, Encoding.UTF8))
        {
            string[] parts = line.Split('\t');
            string entry = parts[0]
                .Replace("\"practice\":true", "\"practice\":false", StringComparison.Ordinal)
                .Replace("\"bench\":\"PRACTICE ", "\"bench\":\"", StringComparison.Ordinal);
            entry = was.Length > 0 ? entry.Replace(was, now, StringComparison.Ordinal) : entry;
            (was, now) = (
                parts[1],
                Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(Encoding.UTF8.GetBytes(entry)))
            );
            forged.Append(entry).Append('\t').Append(now).Append('\n');
        }

        File.WriteAllText(file, forged.ToString(), new UTF8Encoding(false));
        LocalStore again = Floor("room");
        Assert.IsType<TrailVerdict.Holds>(again.Reader.ReadTrail(id).Verdict);
        Assert.Contains(JobCheck.Run(again.Reader, again.Shop, null, null), check => check.Of == id && !check.Holds);
        (JobRun? taken, string fault) = JobRun.Resume(again, Machine.Time, id, "moss");
        Assert.Null(taken);
        Assert.Contains("without the mark of practice", fault, StringComparison.Ordinal);
    }

    [Fact]
    public void The_shops_screens_over_a_practice_room_are_marked_too()
    {
        Room().Dispose();
        using ShopDoor door = new(
            _folder["room"],
            ScreenSettings.From(null),
            (_, job) => RunScreen.Open(job),
            rounds: 1
        );
        (IReadOnlyList<Screen> screens, string fault) = door.Start();
        Assert.True(screens.Count > 0, fault);
        Assert.Contains("PRACTICE", new Desk([.. screens]).Picture(Look), StringComparison.Ordinal);
    }

    private static Look Look => new(Glyphs.Utf8, DateTimeOffset.UnixEpoch);

    private static Prompt At(LessonRun run) =>
        Prompter.At(run.Job.State, run.Job.Shop, Prompter.Next(run.Job.State)!.Value);

    // The reading that is due, place by place, in keys of the pad.
    private static string OnPad(PracticeDoor room)
    {
        LessonRun run = Lesson(room, LessonShelf.All()[0].Name);
        return string.Concat(run.Shown(At(run)).Select(one => $"{one.Value}\n"));
    }

    private static LessonRun Lesson(PracticeDoor room, string name)
    {
        Lesson lesson = LessonShelf.All().Single(one => one.Name == name);
        (LessonRun? run, string fault) = LessonRun.Open(
            room.Store,
            room.Book,
            lesson,
            PracticeDoor.Invented.Id,
            CoachMode.EachStep
        );
        return run ?? throw new InvalidOperationException(fault);
    }

    private static void Copy(string from, string to)
    {
        foreach (string file in Directory.EnumerateFiles(from, "*", SearchOption.AllDirectories))
        {
            string target = Path.Combine(to, Path.GetRelativePath(from, file));
            Directory.CreateDirectory(Path.GetDirectoryName(target)!);
            File.Copy(file, target);
        }
    }

    private LocalStore Floor(string name)
    {
        (LocalStore? store, string fault) = ShopFloor.Open(_folder[name], "tests");
        _open.Add(store ?? throw new InvalidOperationException(fault));
        return store;
    }

    private PracticeDoor Room()
    {
        (PracticeDoor? room, string fault) = PracticeDoor.Open(_folder["room"], CoachMode.EachStep);
        _open.Add(room ?? throw new InvalidOperationException(fault));
        return room;
    }
}
