using System.Globalization;
using ProcRunner.Runs;
using ProcRunner.Tui.Drawing;
using ProcRunner.Tui.Jobs;
using ProcRunner.Tui.Screens;
using ProcRunner.Tui.Screens.Shop;

namespace ProcRunner.Tui.Tests.Shop;

/// <summary>Text from people and files that means to do harm: it is kept and shown, and does nothing.</summary>
public sealed class HostileTextTests : IDisposable
{
    private const int Megabyte = 1_000_000;
    private readonly ShopBench _bench = new();

    public static TheoryData<string> Hostile { get; } =
        new(
            "\u001b[2J\u001b]0;owned\u0007",
            "abc\u202edcba\u2066x\u200b\u00ad",
            "one\ntwo\r\nthree\tfour",
            "\ud800 lone, pair \ud83d\ude00",
            "e\u0301 \u4e16\u754c wide"
        );

    public void Dispose() => _bench.Dispose();

    [Theory]
    [MemberData(nameof(Hostile))]
    public void It_reaches_no_cell_of_any_screen(string text)
    {
        JobRun run = _bench.Open("1001", text, complaint: text);
        run.Do(new RunCommand.Note(null, text));
        run.Do(new RunCommand.Hold(text));
        foreach (Screen screen in Screens(run))
        {
            IsHarmless(new Desk(screen).Draw(80, 24, _bench.Look));
            IsHarmless(new Desk(screen).Draw(120, 40, _bench.Look));
        }
    }

    [Theory]
    [MemberData(nameof(Hostile))]
    public void Typed_or_pasted_it_is_one_entry_and_the_trail_holds(string text)
    {
        JobRun run = _bench.Open("1001", "");
        Desk desk = new Desk(new NoteForm(_bench.Session, run, null)).Paste(text);
        IsHarmless(desk.Draw(80, 24, _bench.Look));
        desk.Type("\n");

        Assert.Single(run.State.Notes);
        Assert.IsType<Trail.TrailVerdict.Holds>(_bench.Store.Reader.ReadTrail(run.State.JobId).Verdict);
        (JobReading? job, string fault) = JobReading.Read(_bench.Store.Reader, run.State.JobId);
        Assert.True(job is not null, fault);
    }

    [Fact]
    public void A_megabyte_in_every_place_is_drawn_at_once_and_cut()
    {
        string text = "\u001b[2J\u202e" + new string('x', Megabyte) + "\u001b\u0007";
        JobRun run = _bench.OpenUndecided("1001", text);
        Assert.IsType<JobAnswer.Refused>(run.Do(new RunCommand.Note(null, text)));
        Assert.IsType<JobAnswer.Refused>(run.Do(new RunCommand.Hold(text)));
        TimeProvider clock = TimeProvider.System;
        foreach (Screen screen in Screens(run))
        {
            Desk desk = new(screen);
            long start = clock.GetTimestamp();
            IsHarmless(desk.Draw(80, 24, _bench.Look));
            Assert.True(
                clock.GetElapsedTime(start) < TimeSpan.FromSeconds(5),
                $"{screen.GetType().Name} takes too long"
            );
        }
    }

    [Fact]
    public void A_megabyte_pasted_into_any_line_is_cut_to_what_a_line_takes()
    {
        JobRun run = _bench.Open("1001", "");
        Desk desk = new Desk(new NoteForm(_bench.Session, run, null)).Paste(new string('9', Megabyte)).Type("\n");
        Assert.True(run.State.Notes.Single().Note.Text.Length <= 2000);

        desk = new Desk(new JobListScreen(_bench.Session)).Paste(new string('9', Megabyte)).Type("\n");
        Assert.IsType<JobListScreen>(desk.Top);
        IsHarmless(desk.Draw(80, 24, _bench.Look));
    }

    [Fact]
    public void A_person_or_gauge_of_hostile_name_is_cleaned_or_refused()
    {
        new Desk(new PeopleScreen(_bench.Session))
            .Type("/")
            .Paste("Eve\u001b[31m \u202e")
            .Type("\n\n1\n8642\n8642\n135790\n");

        Assert.All(
            _bench.Shop.People.Values,
            person => Assert.DoesNotContain(person.Name, c => char.IsControl(c) || c == '\u202e')
        );
        IsHarmless(new Desk(new PeopleScreen(_bench.Session)).Draw(80, 24, _bench.Look));
    }

    [Fact]
    public void Keys_at_random_on_every_screen_end_nothing_and_the_store_holds()
    {
        Random random = new(20310407);
        const string Keys = "0123456789.+-*/\n\u001b\ba?\n\n1\n2\n";
        _bench.Open("1001", "Upper Field (invented)");
        Desk desk = new(new JobListScreen(_bench.Session));
        for (int i = 0; i < 4000; i++)
        {
            if (desk.Top is null)
            {
                desk = new(new JobListScreen(_bench.Session));
            }

            desk.Type(Keys[random.Next(Keys.Length)].ToString());
        }

        (_, Trail.TrailVerdict verdict) = _bench.Store.Reader.ReadShop();
        Assert.IsType<Trail.TrailVerdict.Holds>(verdict);
        Assert.Empty(_bench.Shop.Uncertified());
        foreach (string job in _bench.Store.Reader.JobIds())
        {
            Assert.IsType<Trail.TrailVerdict.Holds>(_bench.Store.Reader.ReadTrail(job).Verdict);
        }
    }

    private IEnumerable<Screen> Screens(JobRun run) =>
        [
            new JobListScreen(_bench.Session),
            new PickJobScreen(_bench.Session, "Look", () => JobLedger.Read(_bench.Store).Jobs),
            new JobScreen(_bench.Session, run),
            JobMenu.Of(_bench.Session, run),
            new NotesScreen(_bench.Session, run),
            new HistoryScreen(_bench.Session, run, At.Head),
            new HandOverScreen(_bench.Session, run),
        ];

    private static void IsHarmless(Canvas canvas)
    {
        for (int row = 0; row < canvas.Height; row++)
        {
            for (int column = 0; column < canvas.Width; column++)
            {
                char character = canvas[column, row].Character;
                UnicodeCategory category = char.GetUnicodeCategory(character);
                Assert.False(
                    category
                        is UnicodeCategory.Control
                            or UnicodeCategory.Format
                            or UnicodeCategory.Surrogate
                            or UnicodeCategory.NonSpacingMark,
                    $"U+{(int)character:X4} at {column},{row}"
                );
            }
        }
    }
}
