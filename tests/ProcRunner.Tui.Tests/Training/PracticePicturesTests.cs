using System.Globalization;
using ProcRunner.Lessons;
using ProcRunner.Runs.Prompts;
using ProcRunner.Store.Local;
using ProcRunner.Testing;
using ProcRunner.Tui.Drawing;
using ProcRunner.Tui.Screens;
using ProcRunner.Tui.Screens.Run;
using ProcRunner.Tui.Tests.Shop;
using ProcRunner.Tui.Training;

namespace ProcRunner.Tui.Tests.Training;

/// <summary>The pictures of lessons on the page about them and in the readme are the screens as they are now.</summary>
public sealed class PracticePicturesTests : IDisposable
{
    private readonly TempFolder _folder = new(inMemory: true);

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void A_micrometer_to_read()
    {
        using LocalStore store = Room();
        LessonRun run = Open(store, "reading gauges");
        new ScriptedLearner(run).Answer();

        Holds("README.md", Picture(Desk(run)));
    }

    [Fact]
    public void A_tool_in_the_metal()
    {
        using LocalStore store = Room();
        Desk desk = Desk(Open(store, "to the aim"));
        desk.Press(new KeyPress(KeyKind.Down, ""));

        Holds("docs/practice.md", Picture(desk));
    }

    [Fact]
    public void A_debrief()
    {
        using LocalStore store = Room();
        LessonRun run = Open(store, "springs");
        Prompt first = ScriptedLearner.At(run);
        run.Job.Do(new Runs.RunCommand.Enter(first.At, "43"));
        new ScriptedLearner(run, (_, at) => at.Step.FullName == "teardown / spring" ? "keep" : null).ToTheEnd();

        // The day it was taken on is today.
        string today = TimeProvider.System.GetUtcNow().ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
        Holds(
            "docs/practice.md",
            Picture(new Desk(RunScreen.Open(run))).Replace(today, "2031-05-06", StringComparison.Ordinal)
        );
    }

    private static void Holds(string file, string picture)
    {
        string page = File.ReadAllText(RepoRoot.PathOf(file)).ReplaceLineEndings("\n");
        Assert.True(page.Contains($"```\n{picture}\n```", StringComparison.Ordinal), $"{file} doesn't have\n{picture}");
    }

    private static Desk Desk(LessonRun run)
    {
        Desk desk = new(RunScreen.Open(run));
        while (desk.Top is not StepPage)
        {
            desk.Type("\n");
        }

        return desk;
    }

    private static string Picture(Desk desk)
    {
        string drawn = desk.Draw(80, 24, new Look(Glyphs.Utf8, DateTimeOffset.UnixEpoch)).ToString();
        return string.Join('\n', drawn.Split('\n').Select(line => line.TrimEnd())).TrimEnd();
    }

    private LessonRun Open(LocalStore store, string name)
    {
        Lesson lesson = LessonShelf.All().Single(one => one.Name == name);
        (LessonRun? run, string fault) = LessonRun.Open(
            store,
            new DebriefBook(_folder["room"]),
            lesson,
            ScriptedLearner.Id,
            CoachMode.Asked
        );
        return run ?? throw new InvalidOperationException(fault);
    }

    private LocalStore Room()
    {
        (_, Practice.Bindings.Binding? binding, string fault) = LessonShelf.Bind(LessonShelf.All()[0]);
        Assert.True(binding is not null, fault);
        (LocalStore? store, fault) = PracticeRoom.Open(_folder["room"], binding.Setup);
        return store ?? throw new InvalidOperationException(fault);
    }
}
