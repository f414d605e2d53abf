using System.CommandLine;
using ProcRunner.Lessons;
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
    private static string Learner => PracticeDoor.Invented.Id;

    /// <summary>The verb.</summary>
    public static Command Create()
    {
        Argument<string?> lesson = new("lesson")
        {
            Description = "the lesson's name; none: the list of them",
            Arity = ArgumentArity.ZeroOrOne,
        };
        Option<bool> plain = new("--plain") { Description = "line mode: prompts out, one entry a line in" };
        Option<string?> who = new("--as")
        {
            Description = "id of the learner; without it the screen asks, and one lesson is taken by an invented one",
            HelpName = "person",
        };
        Option<string?> coach = new("--coach")
        {
            Description =
                "when the coach speaks in this start: off, asked or each-step; without it as the learner chose last",
            HelpName = "when",
        };
        coach.AcceptOnlyFromAmong([.. CoachBook.Words.Keys]);
        Option<bool> progress = new("--progress")
        {
            Description = "every lesson the learner took, as a chart in lines",
        };
        Command verb = new("practice", "learn on a practice head that nobody owns")
        {
            lesson,
            plain,
            who,
            coach,
            progress,
        };
        verb.SetAction(parsed =>
            parsed.GetValue(progress)
                ? Progress(StoreOption.Given(parsed) ?? Machine.PracticeFolder, parsed.GetValue(who))
                : Act(
                    parsed.GetValue(lesson),
                    StoreOption.Given(parsed) ?? Machine.PracticeFolder,
                    parsed.GetValue(who),
                    parsed.GetValue(coach) is { } word ? CoachBook.Words[word] : null,
                    parsed.GetValue(plain)
                )
        );
        return verb;
    }

    private static int Act(string? name, string folder, string? person, CoachMode? coach, bool plain)
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

        (PracticeDoor? opened, string fault) = PracticeDoor.Open(folder, coach);
        if (opened is null)
        {
            return Say.Usage(fault, "");
        }

        using PracticeDoor door = opened;
        if (person is not null && !door.Store.Shop.People.ContainsKey(person))
        {
            return Say.Usage(
                $"Nobody in the practice room is called {person}.",
                $"There is: {string.Join(", ", door.Store.Shop.People.Keys)}. Without --as the screen asks a name."
            );
        }

        return plain ? InLines(door, lesson!, person ?? Learner) : OnScreen(door, lesson, person);
    }

    // The book is read without the room's lock: somebody may be learning meanwhile.
    private static int Progress(string folder, string? person)
    {
        DebriefBook book = new(folder);
        IReadOnlyList<DebriefBook.Line> lines = person is null ? book.Read() : book.Of(person);
        Say.Line(ProgressChart.Summary(lines, LessonShelf.All().Count));
        foreach (IGrouping<string, DebriefBook.Line> of in lines.GroupBy(line => line.Person, StringComparer.Ordinal))
        {
            Say.Line("");
            Say.Line($"{of.Key}:");
            foreach (string row in ProgressChart.Rows([.. of], 78))
            {
                Say.Line(row);
            }
        }

        if (book.UnreadableInWords.Length > 0)
        {
            Say.Line(book.UnreadableInWords);
        }

        return Status.Done;
    }

    private static int InLines(PracticeDoor door, Lesson lesson, string person)
    {
        (LessonRun? run, string fault) = LessonRun.Open(door.Store, door.Book, lesson, person, door.CoachOf(person));
        if (run is null)
        {
            return Say.Usage(fault, "");
        }

        LessonLines lines = new(run);
        Say.Line(lines.Opening);
        LineInput input = new(Console.In, Console.IsInputRedirected, Console.Out);
        return new LineRun(run.Job, input, Console.Out)
        {
            Beside = lines.Beside,
            Hint = lines.Hint,
            Ending = lines.Ending,
            Own = lines.Own,
            OwnWords = LessonLines.Words,
        }.Run();
    }

    private static int OnScreen(PracticeDoor door, Lesson? lesson, string? person)
    {
        TerminalKind terminal = ScreenHost.Terminal(out string fault);
        if (fault.Length > 0)
        {
            return Say.Usage(fault, "Without one: procrunner practice LESSON --plain, one entry a line.");
        }

        List<Screen> screens = [lesson is null && person is null ? door.First() : door.Lessons(person ?? Learner)];
        if (lesson is not null)
        {
            (LessonRun? run, fault) = LessonRun.Open(
                door.Store,
                door.Book,
                lesson,
                person ?? Learner,
                door.CoachOf(person ?? Learner)
            );
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
