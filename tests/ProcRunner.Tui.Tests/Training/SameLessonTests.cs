using System.Text;
using System.Text.RegularExpressions;
using ProcRunner.Lessons;
using ProcRunner.Practice.Bindings;
using ProcRunner.Store.Local;
using ProcRunner.Testing;
using ProcRunner.Trail;
using ProcRunner.Tui.Demo;
using ProcRunner.Tui.Training;

namespace ProcRunner.Tui.Tests.Training;

/// <summary>The same seed gives the same lesson, byte for byte: faces, entries and debrief; another seed gives another.</summary>
public sealed partial class SameLessonTests : IDisposable
{
    private readonly TempFolder _folder = new(inMemory: true);
    private int _rooms;

    public static TheoryData<string> Names => [.. LessonShelf.All().Select(lesson => lesson.Name)];

    public void Dispose() => _folder.Dispose();

    [Theory]
    [MemberData(nameof(Names))]
    public void Taken_twice_with_the_same_clock_every_byte_is_the_same(string name)
    {
        Lesson lesson = LessonShelf.All().Single(one => one.Name == name);

        string once = Taken(lesson, everyAnswerAnew: false);

        Assert.Equal(once, Taken(lesson, everyAnswerAnew: false));
    }

    // Left after every answer and taken up from its trail.
    [Theory]
    [InlineData("reading gauges")]
    [InlineData("runout")]
    [InlineData("two seats")]
    public void Left_and_taken_up_again_after_every_answer_it_is_still_the_same(string name)
    {
        Lesson lesson = LessonShelf.All().Single(one => one.Name == name);

        Assert.Equal(Taken(lesson, everyAnswerAnew: false), Taken(lesson, everyAnswerAnew: true));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Another_seed_is_another_head(string name)
    {
        Lesson lesson = LessonShelf.All().Single(one => one.Name == name);
        Assert.NotEqual(AtTheStart(lesson), AtTheStart(lesson with { Seed = lesson.Seed + 1000 }));
    }

    private string Taken(Lesson lesson, bool everyAnswerAnew)
    {
        Clock clock = new();
        using LocalStore store = Room(clock, out DebriefBook book);
        LessonRun run = Open(store, book, lesson, clock);
        List<string> lines = [];
        while (!run.IsOver)
        {
            if (everyAnswerAnew)
            {
                run = Open(store, book, lesson, clock);
            }

            ScriptedLearner learner = new(run);
            learner.Answer();
            lines.AddRange(learner.Trace);
        }

        lines.AddRange(run.Close().Lines(run.Job.State));
        lines.AddRange(Entries(store, run));
        return string.Join('\n', lines);
    }

    private string AtTheStart(Lesson lesson)
    {
        Clock clock = new();
        using LocalStore store = Room(clock, out DebriefBook book);
        LessonRun run = Open(store, book, lesson, clock);
        ScriptedLearner learner = new(run);
        for (int i = 0; i < 20 && run.Job.State.Sequence < 30 && !run.IsOver; i++)
        {
            learner.Answer();
        }

        return string.Join('\n', learner.Trace.Concat(Entries(store, run)));
    }

    // A signature is made with a random number, and every digest after it follows from it: they alone are left out.
    private static IEnumerable<string> Entries(LocalStore store, LessonRun run) =>
        store
            .Reader.ReadTrail(run.Job.State.JobId)
            .Entries.Select(e => e.Entry)
            .Select(e =>
                $"{e.Sequence} {e.At:O} {e.Operator} "
                + string.Join(
                    ' ',
                    e.Events.Select(map =>
                        Chance().Replace(Encoding.UTF8.GetString([.. CanonicalJson.Write(map)]), "*")
                    )
                )
            );

    private static LessonRun Open(LocalStore store, DebriefBook book, Lesson lesson, Clock clock)
    {
        (LessonRun? run, string fault) = LessonRun.Open(store, book, lesson, ScriptedLearner.Id, CoachMode.Off, clock);
        return run ?? throw new InvalidOperationException(fault);
    }

    private LocalStore Room(Clock clock, out DebriefBook book)
    {
        string folder = _folder[$"room-{++_rooms}"];
        book = new DebriefBook(folder);
        byte drawn = 0;
        StoreOpening opening = StoreFolder.Found(
            folder,
            PracticeRoom.Name,
            "tests",
            clock,
            bytes =>
            {
                for (int i = 0; i < bytes.Length; i++)
                {
                    bytes[i] = drawn++;
                }
            }
        );
        LocalStore store = Assert.IsType<StoreOpening.Opened>(opening).Store;
        (_, Binding? binding, _) = LessonShelf.Bind(LessonShelf.All()[0]);
        (LocalStore? furnished, string fault) = DemoShop.Furnish(
            store,
            binding!.Setup.Gauges.Select(g => g.Gauge),
            binding.Setup.Readout
        );
        return furnished ?? throw new InvalidOperationException(fault);
    }

    [GeneratedRegex("[0-9a-f]{64}|[A-Za-z0-9+/]{80,}={0,2}", RegexOptions.None, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Chance();

    // Time stands still: what is taken is the same however often the clock is looked at.
    private sealed class Clock : TimeProvider
    {
        public override TimeZoneInfo LocalTimeZone => TimeZoneInfo.Utc;

        public override DateTimeOffset GetUtcNow() => new(2026, 1, 5, 8, 0, 0, TimeSpan.Zero);
    }
}
