using System.Globalization;
using ProcRunner.Lessons;
using ProcRunner.Practice.Bindings;
using ProcRunner.Runs;
using ProcRunner.Store.Local;
using ProcRunner.Tui.Demo;
using ProcRunner.Tui.Jobs;
using ProcRunner.Tui.Shell;

namespace ProcRunner.Tui.Training;

/// <summary>Begins a lesson, or takes it up where it was left: the same head in the same state, found again from its trail.</summary>
/// <param name="store">The practice room's store.</param>
/// <param name="book">Where it is written how lessons went.</param>
/// <param name="time">The clock; null: the machine's.</param>
internal sealed class LessonOpening(LocalStore store, DebriefBook book, TimeProvider? time = null)
{
    private TimeProvider Time => time ?? Machine.Time;

    /// <summary>The lesson as it stands for a learner; null with the reason when it can't be worked on.</summary>
    /// <param name="lesson">The lesson.</param>
    /// <param name="person">Id of the learner.</param>
    /// <param name="coach">When the coach speaks.</param>
    public (LessonRun? Run, string Fault) Open(Lesson lesson, string person, CoachMode coach)
    {
        (PlanTexts? texts, Binding? binding, string fault) = LessonShelf.Bind(lesson);
        if (texts is null || binding is null)
        {
            return (null, fault);
        }

        // Everybody has heads of their own.
        string stamp = $"{lesson.Name} {person}".ToUpperInvariant().Replace(' ', '-');
        string[] mine = [.. store.Shop.Jobs.Values.Where(j => IsTry(j.Stamp, stamp)).Select(j => j.Id)];
        foreach (string id in mine)
        {
            (LessonRun? open, fault) = Resume(lesson, binding, id, person, coach);
            if (open is null || !open.IsOver)
            {
                return (open, fault);
            }
        }

        JobHeader header = new()
        {
            Stamp = mine.Length == 0 ? stamp : FormattableString.Invariant($"{stamp}-{mine.Length + 1}"),
            ProcedureDigest = texts.ProcedureDigest.ToString(),
            HeadDigest = texts.HeadDigest.ToString(),
            Customer = "practice (invented)",
            Complaint = lesson.Title,
            Practice = true,
        };
        return Begin(lesson, binding, texts, header, person, coach);
    }

    private (LessonRun? Run, string Fault) Begin(
        Lesson lesson,
        Binding binding,
        PlanTexts texts,
        JobHeader header,
        string person,
        CoachMode coach
    )
    {
        // Who goes before the learner is somebody else: the trail shows where the learner takes over.
        string before = DemoShop.People.Select(p => p.Id).First(id => id != person);
        (JobRun? job, string fault) = JobRun.Begin(store, Time, texts, header, before);
        if (job is null)
        {
            return (null, fault);
        }

        LessonRun run = new(lesson, binding, job, book, person);
        run.Listen();
        fault = run.Others.WorkUpToTheLesson();
        run.Coach = coach;
        return fault.Length > 0 ? (null, $"The lesson can't be made ready: {fault}") : (run, "");
    }

    private (LessonRun? Run, string Fault) Resume(
        Lesson lesson,
        Binding binding,
        string id,
        string person,
        CoachMode coach
    )
    {
        (JobRun? job, string fault) = JobRun.Resume(store, Time, id, person);
        if (job is null)
        {
            return (null, fault);
        }

        LessonRun run = new(lesson, binding, job, book, person) { Coach = coach };
        IReadOnlyList<RunEvent> last = [];
        (RunState? state, fault) = JobReading.Fold(
            store.Reader,
            id,
            store.Reader.ReadTrail(id).Entries.Select(e => e.Entry),
            (before, _, events) =>
            {
                run.Take(before, last);
                last = events;
            }
        );
        if (state is null)
        {
            return (null, fault);
        }

        run.Take(state, last);
        run.TakeUpTheTool();
        run.Listen();

        // A program that was killed while somebody else was at work left the rest of it to be done.
        fault =
            run.IsOver ? ""
            : run.IsBegun ? run.Others.Work()
            : run.Others.WorkUpToTheLesson();
        return fault.Length > 0 ? (null, fault) : (run, "");
    }

    private static bool IsTry(string stamp, string of) =>
        stamp == of
        || (
            stamp.StartsWith(of + "-", StringComparison.Ordinal)
            && int.TryParse(stamp[(of.Length + 1)..], NumberStyles.None, CultureInfo.InvariantCulture, out _)
        );
}
