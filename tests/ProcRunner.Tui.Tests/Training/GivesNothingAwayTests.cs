using System.Globalization;
using System.Text.RegularExpressions;
using ProcRunner.Lessons;
using ProcRunner.Runs;
using ProcRunner.Runs.Prompts;
using ProcRunner.Store.Local;
using ProcRunner.Testing;
using ProcRunner.Tui.Drawing;
using ProcRunner.Tui.Screens;
using ProcRunner.Tui.Screens.Run;
using ProcRunner.Tui.Training;

namespace ProcRunner.Tui.Tests.Training;

/// <summary>
/// No text of a lesson holds what the gauge in hand shows, or what is true there, before it is typed; and nothing tells what
/// is planted before the lesson is done. Every lesson, on heads of several seeds.
/// </summary>
public sealed partial class GivesNothingAwayTests : IDisposable
{
    private const int MostAnswers = 40;
    private const int Seeds = 16;
    private const int MostUnready = Seeds / 4;

    // The foot of a page: what was recorded last, what is typed, keys.
    private const int Bottom = 4;

    private readonly TempFolder _folder = new(inMemory: true);

    // What is worked on may be named: which of them, and what is wrong with it, may not.
    private static readonly string[] Objects =
    [
        "valve",
        "seat",
        "spring",
        "guide",
        "deck",
        "skim",
        "insert",
        "head",
        "limits",
        "before",
    ];

    public static TheoryData<string> Names => [.. LessonShelf.All().Select(lesson => lesson.Name)];

    public void Dispose() => _folder.Dispose();

    [Theory]
    [MemberData(nameof(Names))]
    public void No_coach_hint_face_title_or_first_page_has_the_reading_in_it(string name)
    {
        Lesson lesson = LessonShelf.All().Single(one => one.Name == name);
        using LocalStore store = Room();
        int unready = 0;
        for (int i = 0; i < Seeds; i++)
        {
            // Another name is another job in the same room.
            string another = string.Create(CultureInfo.InvariantCulture, $"{name} {i}");
            (LessonRun? run, string fault) = TryOpen(
                store,
                lesson with
                {
                    Name = another,
                    Seed = lesson.Seed + (i * 500),
                }
            );

            // Now and then somebody else gives a head up before the lesson on it begins.
            unready += run is null ? 1 : 0;
            Assert.True(unready <= MostUnready, fault);
            string leak = run is null ? "" : FirstLeak(run);
            Assert.True(leak.Length == 0, leak);
        }
    }

    // The same search, on lessons whose author has written into a hint what must not be there.
    [Theory]
    [InlineData("reading gauges", "teardown / head temperature")]
    [InlineData("springs", "teardown / spring load closed")]
    [InlineData("runout", "seat cut / seat runout")]
    [InlineData("to the aim", "seat cut / recession")]
    public void A_hint_that_has_the_reading_in_it_is_found(string name, string step)
    {
        Lesson lesson = LessonShelf.All().Single(one => one.Name == name);
        using LocalStore store = Room();
        LessonRun honest = Open(store, lesson);
        while (ScriptedLearner.At(honest) is var at && (at.Step.FullName != step || honest.Shown(at).Count == 0))
        {
            new ScriptedLearner(honest).Answer();
        }

        string shown = honest.Shown(ScriptedLearner.At(honest))[^1].Value.ToString(CultureInfo.InvariantCulture);
        LessonRun leaking = Open(
            store,
            lesson with
            {
                Name = $"{name} told",
                Hints = new Dictionary<string, string> { [step] = $"it should come to {shown} or so" },
            }
        );

        Assert.StartsWith($"{shown} at {step}", FirstLeak(leaking), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("a guide", "guide replacement / guide outside")]
    [InlineData("vacuum", "seat cut / seat vacuum")]
    public void A_hint_that_has_the_rule_behind_the_fault_in_it_is_found(string name, string step)
    {
        Lesson lesson = LessonShelf.All().Single(one => one.Name == name);
        using LocalStore store = Room();
        LessonRun leaking = Open(
            store,
            lesson with
            {
                Hints = new Dictionary<string, string> { [step] = lesson.Planted[0].Why.TrimEnd('.') },
            }
        );

        Assert.StartsWith(lesson.Planted[0].Why.TrimEnd('.'), FirstLeak(leaking), StringComparison.Ordinal);
    }

    // Taken the right way, whatever the coach's way: the first thing that is told too early, and where; empty when nothing is.
    private static string FirstLeak(LessonRun run)
    {
        HashSet<string> known = [.. Numbers(Said(run.Job.State))];
        for (int i = 0; i < MostAnswers && !run.IsOver; i++)
        {
            Prompt prompt = ScriptedLearner.At(run);
            known.UnionWith(Numbers(Limits(run, prompt)));
            string said = string.Join('\n', Texts(run, prompt));
            string[] numbers = [.. Secrets(run, prompt).Except(known, StringComparer.Ordinal)];
            string[] told =
            [
                .. Numbers(said).Intersect(numbers, StringComparer.Ordinal),
                .. Words(run, prompt).Where(words => said.Contains(words, StringComparison.OrdinalIgnoreCase)),
            ];
            if (told.Length > 0)
            {
                return $"{string.Join(", ", told)} at {prompt.Step.FullName}:\n{said}";
            }

            ScriptedLearner learner = new(run);
            learner.Answer();
            known.UnionWith(Numbers(learner.Trace[^1]));
            known.UnionWith(Numbers(Said(run.Job.State)));
            known.UnionWith(Numbers($"{run.Job.State.Find(prompt.At)?.Readings.LastOrDefault()?.Predicted}"));
        }

        return "";
    }

    // All that a lesson says before a step is answered, in every way of the coach.
    private static List<string> Texts(LessonRun run, Prompt prompt)
    {
        CoachMode before = run.Coach;
        List<string> texts =
        [
            .. run.TakeRemarks(),
            .. Titles(run, prompt),
            run.Lesson.Title,
            run.Told(prompt),
            .. new LessonLines(run).Beside(prompt).Where(_ => run.Shown(prompt).Count == 0),
        ];
        foreach (CoachMode mode in Enum.GetValues<CoachMode>())
        {
            run.Coach = mode;
            Desk first = new(RunScreen.Open(run));
            string page = first.Draw(120, 40, new Look(Glyphs.Utf8, DateTimeOffset.UnixEpoch)).ToString();
            texts.AddRange([.. Coach.Hint(run, prompt), .. new LessonLines(run).Hint(prompt)]);
            texts.AddRange(first.Top is LessonPage ? page.Split('\n').SkipLast(Bottom) : []);
        }

        run.Coach = before;
        return texts;
    }

    // In words: a fault that an inspection finds, before it is found; what is planted and the rule behind it, before it is
    // caught.
    private static IEnumerable<string> Words(LessonRun run, Prompt prompt)
    {
        bool isBad =
            prompt.Step.Work is Procedures.StepWork.Inspect inspect
            && inspect.Findings.Any(finding => !finding.Good && finding.Text == run.Seen(prompt));
        return run
            .Lesson.Planted.Where(fault => run.IsCaught(fault) != true)
            .SelectMany(fault => new[] { fault.What, fault.Why.TrimEnd('.') })
            .Concat(isBad && run.Sight(prompt).Count > 0 ? [run.Seen(prompt)] : []);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Name_title_and_first_page_dont_tell_what_is_planted_or_to_be_learned(string name)
    {
        Lesson lesson = LessonShelf.All().Single(one => one.Name == name);
        using LocalStore store = Room();
        LessonRun run = Open(store, lesson);
        Desk desk = new(RunScreen.Open(run));
        string page = desk.Draw(120, 40, new Look(Glyphs.Utf8, DateTimeOffset.UnixEpoch)).ToString();
        Assert.IsType<LessonPage>(desk.Top);
        Assert.Contains(lesson.Title, page, StringComparison.Ordinal);
        Assert.DoesNotContain(lesson.Learn[..30], page, StringComparison.Ordinal);

        // Where a lesson ends further back than it begins, to go back is the answer.
        bool isForward = StepOf(run, lesson.Until) >= StepOf(run, lesson.From);
        Assert.Equal(isForward, page.Contains(lesson.Until, StringComparison.Ordinal));
        IEnumerable<string> words = lesson
            .Planted.SelectMany(fault =>
                Word().Matches($"{fault.Name} {fault.Answer} {fault.OrChange}").Select(m => m.Value)
            )
            .Except(Objects, StringComparer.Ordinal);
        string titles = $"{lesson.Name} {lesson.Title}";
        Assert.All(words, word => Assert.DoesNotContain(word, titles, StringComparison.OrdinalIgnoreCase));
    }

    private static int StepOf(LessonRun run, string? name) =>
        name is not null && run.Job.State.Plan.TryStep(name, out int index) ? index : 0;

    // Everything that is on the record already, or asked for in the open: numbers that may be said.
    private static string Said(RunState state) =>
        string.Join(' ', state.Plan.Procedure.Characteristics.SelectMany((c, i) => Values(state, i)));

    private static IEnumerable<string> Values(RunState state, int characteristic) =>
        Enumerable
            .Range(-1, state.Plan.Head.Positions.Count + 1)
            .Select(position => state.Value(characteristic, position))
            .OfType<ValueRecord>()
            .Select(value => $"{value.Value} {value.AsFound}")
            .Concat(
                Enumerable
                    .Range(0, state.Plan.Head.Positions.Count)
                    .Select(i =>
                        state.Plan.Head.LimitOf(
                            state.Plan.Procedure.Characteristics[characteristic].Name,
                            state.Plan.PositionOf(i)
                        )
                    )
                    .OfType<Procedures.Limit>()
                    .Select(limit => $"{limit.Low} {limit.Aim} {limit.High}")
            );

    private static string Limits(LessonRun run, Prompt prompt) =>
        string.Join(
            ' ',
            [
                $"{prompt.Window.Low} {prompt.Window.Aim} {prompt.Window.High} {run.GaugeIn(prompt)?.Resolution}",
                $"{prompt.Window.Origin} {prompt.Target?.Working} {prompt.Target?.Show} {prompt.Target?.Left}",
                $"{prompt.NumberToSet} {prompt.Progress?.Readout} {prompt.Progress?.Zero.Set}",
                .. prompt.Numbers.Select(n => $"{n.Working} {n.Value}"),
                prompt.Step.Say,
                prompt.Step.Why,
            ]
        );

    // The line that names the gauge, for what has no figures.
    private static IEnumerable<string> Titles(LessonRun run, Prompt prompt) =>
        run.Shown(prompt)
            .Where(shown => GaugeFace.KindOf(run.GaugeOf(prompt).Character, shown) != FaceKind.Digits)
            .Select(shown => GaugeFace.Of(run.GaugeOf(prompt).Character, shown)[0]);

    // As shown, and as it is: at the gauge's own digits and at one more.
    private static IEnumerable<string> Secrets(LessonRun run, Prompt prompt)
    {
        int digits = run.GaugeIn(prompt)?.Resolution.Value.Scale ?? 0;
        return run.Shown(prompt)
            .Select(one => one.Value)
            .Concat(run.True(prompt).Select(one => Math.Round(one, digits)))
            .Concat(run.True(prompt).Select(one => Math.Round(one, digits + 1)))
            .Where(one => one != 0)
            .SelectMany(one => new[] { one, Math.Abs(one) })
            .Select(one => one.ToString(CultureInfo.InvariantCulture));
    }

    private static IEnumerable<string> Numbers(string text) => Number().Matches(text).Select(match => match.Value);

    [GeneratedRegex(@"-?\d+(\.\d+)?", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Number();

    [GeneratedRegex("[a-z]{4,}", RegexOptions.None, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Word();

    private LessonRun Open(LocalStore store, Lesson lesson)
    {
        (LessonRun? run, string fault) = TryOpen(store, lesson);
        return run ?? throw new InvalidOperationException(fault);
    }

    private (LessonRun? Run, string Fault) TryOpen(LocalStore store, Lesson lesson) =>
        LessonRun.Open(store, new DebriefBook(_folder["room"]), lesson, ScriptedLearner.Id, CoachMode.EachStep);

    private LocalStore Room()
    {
        (_, Practice.Bindings.Binding? binding, string fault) = LessonShelf.Bind(LessonShelf.All()[0]);
        Assert.True(binding is not null, fault);
        (LocalStore? store, fault) = PracticeRoom.Open(_folder["room"], binding.Setup);
        return store ?? throw new InvalidOperationException(fault);
    }
}
