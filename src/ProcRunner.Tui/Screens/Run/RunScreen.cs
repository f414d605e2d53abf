using ProcRunner.Runs;
using ProcRunner.Runs.Prompts;
using ProcRunner.Tui.Jobs;
using ProcRunner.Tui.Training;

namespace ProcRunner.Tui.Screens.Run;

/// <summary>
/// A job at the machine. Which page is seen follows from where the run stands; every page leads to the next by taking its
/// own place, so that on a desk a run is one screen, and leaving it is one step back.
/// </summary>
internal static class RunScreen
{
    /// <summary>The screen of a job, at the step it waits at.</summary>
    public static Screen Open(JobRun job) => Now(new RunWork(job));

    /// <summary>The screen of a lesson, at the step it waits at.</summary>
    public static Screen Open(LessonRun lesson) => Now(new RunWork(lesson.Job) { Lesson = lesson });

    /// <summary>The page for where the run stands now.</summary>
    public static RunPage Now(RunWork work)
    {
        if (work.Lesson?.TakeRemarks() is { Count: > 0 } remarks)
        {
            return new TextPage(work, "The coach", remarks);
        }

        if (work.Lesson is { IsOver: true } lesson)
        {
            return new DebriefPage(work, lesson);
        }

        if (work.State.Standing is JobStanding.Released or JobStanding.Scrapped)
        {
            return new ClosedPage(work);
        }

        if (work.State.Standing == JobStanding.Held)
        {
            return RunMenu.Held(work);
        }

        if (work.Prompt is not { } prompt)
        {
            return RunMenu.NothingOpen(work);
        }

        if (work.CautionsDue is { Count: > 0 })
        {
            return new CautionPage(work);
        }

        return prompt.Awaits switch
        {
            Awaited.WayOn => new RefusalPage(work, prompt),
            Awaited.Signature => SignPages.Who(work, prompt),
            _ when GaugeDue(work, prompt) is { } kind => RunMenu.GaugeOf(work, kind),
            _ => new StepPage(work, prompt),
        };
    }

    // Of several gauges of a kind one is chosen, once, before the first reading with it.
    private static string? GaugeDue(RunWork work, Prompt prompt) =>
        prompt.Awaits == Awaited.Reading
        && prompt.Step.Taking?.GaugeKind is { } kind
        && !work.State.Gauges.ContainsKey(kind)
        && work.Job.Shop.Gauges.Values.Count(g => g.Kind == kind) > 1
            ? kind
            : null;
}
