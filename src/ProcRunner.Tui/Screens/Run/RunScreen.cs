using ProcRunner.Procedures;
using ProcRunner.Runs;
using ProcRunner.Runs.Prompts;
using ProcRunner.Shop;
using ProcRunner.Tui.Jobs;
using ProcRunner.Tui.Screens.Shop;
using ProcRunner.Tui.Training;

namespace ProcRunner.Tui.Screens.Run;

/// <summary>
/// A job at the machine. Which page is seen follows from where the run stands; every page leads to the next by taking its
/// own place, so that on a desk a run is one screen, and leaving it is one step back.
/// </summary>
internal static class RunScreen
{
    /// <summary>The screen of a job, at the step it waits at.</summary>
    /// <param name="job">The job.</param>
    /// <param name="session">The shop around it; null where there is none to be changed.</param>
    public static Screen Open(JobRun job, ShopSession? session = null) => Now(new RunWork(job) { Session = session });

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

        if (work is { Lesson: { } due, IsBegun: false })
        {
            return new LessonPage(work, due);
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
            _ when prompt.Step.Work is StepWork.Zero && work.Job.Shop.Readout is null => GaugePages.NoReadout(work),
            _ when GaugeDue(work, prompt) is { } kind => GaugePages.GaugeOf(work, kind),
            _ => new StepPage(work, prompt),
        };
    }

    // Of several gauges of a kind one is chosen, once, before the first reading with it. Where there is none, or the one in
    // use is past its calibration, it is told before anything is measured.
    private static string? GaugeDue(RunWork work, Prompt prompt)
    {
        if (prompt.Awaits != Awaited.Reading || prompt.Step.Taking?.GaugeKind is not { } kind)
        {
            return null;
        }

        Gauge[] known = [.. work.Job.Shop.Gauges.Values.Where(g => g.Kind == kind)];
        Gauge? inUse =
            work.State.Gauges.TryGetValue(kind, out string? id) ? known.FirstOrDefault(g => g.Id == id)
            : known.Length == 1 ? known[0]
            : null;
        return inUse is null || inUse.CalibratedUntil < work.Job.Today ? kind : null;
    }
}
