using System.CommandLine;
using ProcRunner.Lessons;
using ProcRunner.Practice.Bindings;
using ProcRunner.Store.Local;
using ProcRunner.Tui.Host;
using ProcRunner.Tui.Lines;
using ProcRunner.Tui.Screens;
using ProcRunner.Tui.Screens.Run;
using ProcRunner.Tui.Shell;
using ProcRunner.Tui.Training;

namespace ProcRunner.Tui.Commands;

/// <summary><c>practice [LESSON]</c>: lessons on a practice head.</summary>
internal static class PracticeVerb
{
    private const string Learner = "finch";

    /// <summary>The verb.</summary>
    public static Command Create()
    {
        Argument<string?> lesson = new("lesson")
        {
            Description = "the lesson's name; none: the list of them",
            Arity = ArgumentArity.ZeroOrOne,
        };
        Option<bool> plain = new("--plain") { Description = "line mode: prompts out, one entry a line in" };
        Option<string> who = new("--as")
        {
            Description = "id of the learner, one of the practice room's people",
            HelpName = "person",
            DefaultValueFactory = _ => Learner,
        };
        Option<bool> coach = new("--coach") { Description = "the coach speaks after every step; otherwise when asked" };
        Command verb = new("practice", "learn on a practice head that nobody owns") { lesson, plain, who, coach };
        verb.SetAction(parsed =>
            Act(
                parsed.GetValue(lesson),
                StoreOption.Given(parsed) ?? Path.Combine(Machine.DataFolder, "practice-room"),
                parsed.GetValue(who)!,
                parsed.GetValue(coach),
                parsed.GetValue(plain)
            )
        );
        return verb;
    }

    private static int Act(string? name, string folder, string person, bool coaches, bool plain)
    {
        IReadOnlyList<Lesson> lessons = LessonShelf.All();
        Lesson? lesson = lessons.FirstOrDefault(one => one.Name == name);
        if ((name is not null || plain) && lesson is null)
        {
            return Say.Usage(
                name is null ? "Line mode takes one lesson by its name." : $"There is no lesson {name}.",
                $"There is: {string.Join(", ", lessons.Select(one => one.Name))}"
            );
        }

        (_, Binding? binding, string fault) = LessonShelf.Bind(lesson ?? lessons[0]);
        if (binding is null)
        {
            return Say.Usage(fault, "");
        }

        (LocalStore? opened, fault) = PracticeRoom.Open(folder, binding.Setup);
        if (opened is null)
        {
            return Say.Usage(fault, "");
        }

        using LocalStore store = opened;
        DebriefBook book = new(folder);
        if (!store.Shop.People.ContainsKey(person))
        {
            return Say.Usage(
                $"Nobody in the practice room is called {person}.",
                $"There is: {string.Join(", ", store.Shop.People.Keys)}. The verb people adds others to --store {folder}."
            );
        }

        return plain ? InLines(store, book, lesson!, person, coaches) : OnScreen(store, book, lesson, person, coaches);
    }

    private static int InLines(LocalStore store, DebriefBook book, Lesson lesson, string person, bool coaches)
    {
        (LessonRun? run, string fault) = LessonRun.Open(store, book, lesson, person, coaches);
        if (run is null)
        {
            return Say.Usage(fault, "");
        }

        Say.Line($"PRACTICE. {lesson.Title} (invented). To be learned: {lesson.Learn}");
        LineInput input = new(Console.In, Console.IsInputRedirected, Console.Out);
        return new LineRun(run.Job, input, Console.Out)
        {
            Beside = prompt => GaugeView.Lines(run, prompt),
            Ending = () => run.IsOver ? ["", "LESSON OVER", .. run.Close().Lines(run.Job.State)] : null,
        }.Run();
    }

    private static int OnScreen(LocalStore store, DebriefBook book, Lesson? lesson, string person, bool coaches)
    {
        TerminalKind terminal = ScreenHost.Terminal(out string fault);
        if (fault.Length > 0)
        {
            return Say.Usage(fault, "Without one: procrunner practice LESSON --plain, one entry a line.");
        }

        List<Screen> screens = [new LessonsScreen(store, book, person, coaches)];
        if (lesson is not null)
        {
            (LessonRun? run, fault) = LessonRun.Open(store, book, lesson, person, coaches);
            if (run is null)
            {
                return Say.Usage(fault, "");
            }

            screens.Add(RunScreen.Open(run));
        }

        ScreenSettings settings = ScreenSettings.From(Path.Combine(Machine.DataFolder, "screen"));
        return ScreenHost.Run(
            new Desk([.. screens]) { Time = Machine.Time },
            new HostOptions(terminal, Machine.Time, () => settings.Bell, () => settings.Colours)
        );
    }
}
