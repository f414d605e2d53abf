using ProcRunner.Lessons;
using ProcRunner.Practice.Bindings;
using ProcRunner.Problems;
using ProcRunner.Procedures;
using ProcRunner.Runs;
using ProcRunner.Tui.Jobs;
using ProcRunner.Tui.Shell;
using ProcRunner.Yaml;

namespace ProcRunner.Tui.Training;

/// <summary>The lessons that come with the program, and what is needed to work on one.</summary>
internal static class LessonShelf
{
    private const string LessonKey = "lesson:";
    private const string SetupKey = "practice:";

    private static string Folder => Path.Combine(Machine.ProceduresFolder, "practice");

    /// <summary>Every lesson that can be read, in the order of their files.</summary>
    public static IReadOnlyList<Lesson> All() =>
        [.. Files(LessonKey).Select(file => PracticeFile.OpenLesson(file).Value).OfType<Lesson>()];

    /// <summary>A lesson's plan and practice head; null with every reason why not.</summary>
    public static (PlanTexts? Texts, Binding? Binding, string Fault) Bind(Lesson lesson)
    {
        PracticeSetup? setup = Files(SetupKey)
            .Select(file => PracticeFile.OpenSetup(file).Value)
            .FirstOrDefault(one => one?.Name == lesson.Practice);
        if (setup is null)
        {
            return (null, null, $"There is no practice setup called {lesson.Practice}.");
        }

        string procedure = Path.Combine(Machine.ProceduresFolder, $"{setup.Procedure}.yaml");
        string head = Path.Combine(Machine.ProceduresFolder, "heads", $"{lesson.HeadSpec ?? setup.Head}.yaml");
        (PlanTexts? texts, IReadOnlyList<Problem> problems) = PlanTexts.Read(
            procedure,
            File.ReadAllBytes(procedure),
            head,
            File.ReadAllBytes(head)
        );
        if (texts is null)
        {
            return (null, null, string.Join(Environment.NewLine, problems));
        }

        (Binding? binding, problems) = Binding.Of(texts.Plan, lesson.On(setup));
        string[] faults = [.. problems.Select(one => one.ToString()), .. Unknown(lesson, texts)];
        return binding is null || faults.Length > 0
            ? (null, null, string.Join(Environment.NewLine, faults))
            : (texts, binding, "");
    }

    // Steps and positions that a lesson names and the plan doesn't have.
    private static IEnumerable<string> Unknown(Lesson lesson, PlanTexts texts)
    {
        IEnumerable<string?> steps =
        [
            lesson.From,
            lesson.Until,
            .. lesson.Planted.Select(fault => fault.Step),
            .. lesson.Hints.Keys,
            .. lesson.Told.Keys,
        ];
        foreach (string step in steps.OfType<string>().Where(step => !texts.Plan.TryStep(step, out _)))
        {
            yield return $"Lesson {lesson.Name}: there is no step {step}.";
        }

        if (lesson.At is { } at && !texts.Plan.TryPosition(at, out _))
        {
            yield return $"Lesson {lesson.Name}: there is no position {at}.";
        }

        if (lesson.UntilWay is { } way && texts.Plan.Steps.All(step => step.WaysOn.All(one => one.Text != way)))
        {
            yield return $"Lesson {lesson.Name}: no step has a way on called {way}.";
        }

        foreach (PlantedFault fault in lesson.Planted)
        {
            if (fault.Position is { } position && !texts.Plan.TryPosition(position, out _))
            {
                yield return $"{fault.Source}: there is no position {position}.";
            }

            if (fault.ShownBy is { } shown && !IsTaken(texts.Plan, shown))
            {
                yield return $"{fault.Source}: there is no reading or inspection {shown}.";
            }
        }
    }

    private static bool IsTaken(Plan plan, string name) =>
        plan.TryCharacteristic(name, out _)
        || plan.Steps.Any(step => step.Work is StepWork.Inspect && step.Subject == name);

    private static IEnumerable<string> Files(string key) =>
        Directory.Exists(Folder)
            ? Directory
                .EnumerateFiles(Folder, "*.yaml")
                .Order(StringComparer.Ordinal)
                .Where(file =>
                    File.ReadLines(file).FirstOrDefault(line => line.Length > 0 && line[0] != '#') is { } first
                    && first.StartsWith(key, StringComparison.Ordinal)
                )
            : [];
}
