using ProcRunner.Runs;
using ProcRunner.Tui.Jobs;
using ProcRunner.Tui.Screens.Parts;
using ProcRunner.Tui.Shell;

namespace ProcRunner.Tui.Screens.Shop;

/// <summary>What can be done with a job besides the work itself.</summary>
internal static class JobMenu
{
    /// <summary>The menu; it can lie on any screen of the job.</summary>
    public static Screen Of(ShopSession session, JobRun run) =>
        new MenuScreen(session, $"{run.State.Job?.Stamp}", () => Standing(run), () => Items(session, run));

    private static string Standing(JobRun run) =>
        run.State.Standing switch
        {
            JobStanding.Held => $"On hold: {Fitting.Words(run.State.StandingReason)}",
            JobStanding.Released => "Released: nothing follows in its trail.",
            JobStanding.Scrapped => $"Scrapped: {Fitting.Words(run.State.StandingReason)}",
            _ => "",
        };

    private static List<MenuItem> Items(ShopSession session, JobRun run)
    {
        bool closed = run.State.Standing is JobStanding.Released or JobStanding.Scrapped;
        List<MenuItem> items =
        [
            MenuItem.Instead("history of a position", () => Positions(session, run)),
            MenuItem.Instead(closed ? "notes" : "notes: read them, write one", () => new NotesScreen(session, run)),
        ];
        if (run.State.Standing == JobStanding.Open)
        {
            items.Add(MenuItem.Instead("hand over to somebody else", () => new HandOverScreen(session, run)));
            items.Add(MenuItem.Instead("put it on hold", () => new HoldForm(session, run)));
        }

        if (run.State.Standing == JobStanding.Held)
        {
            items.Add(new(() => "take it up again", () => TakeUp(session, run)));
        }

        items.Add(
            MenuItem.Instead("build record: write it to a file", () => new RecordForm(session, run, Machine.HomeFolder))
        );
        bool cameBack = session.Store.Index?.ComebacksOf(run.State.JobId).IsEmpty == false;
        if (cameBack || run.State.Earlier is not null || run.State.Linked.Count > 0)
        {
            items.Add(
                MenuItem.Instead(
                    cameBack ? "beside how it came back" : "beside the earlier job, or the other head",
                    () => new LinksScreen(session, run)
                )
            );
        }

        if (run.State.Standing == JobStanding.Open)
        {
            items.Add(MenuItem.Instead("another head of the same engine", () => new LinkForm(session, run)));
        }

        return items;
    }

    private static Turn TakeUp(ShopSession session, JobRun run)
    {
        string? fault = session.TakeOver(run) ?? ShopSession.FaultOf(run.Do(new RunCommand.TakeUp()));
        session.LeaveWord(fault ?? "Taken up again.");
        return fault is null ? Turn.Back : Turn.Stay;
    }

    private static MenuScreen Positions(ShopSession session, JobRun run) =>
        new(
            session,
            $"{run.State.Job?.Stamp}: history of",
            () => "",
            () =>
                [
                    MenuItem.To("the head itself", () => new HistoryScreen(session, run, At.Head)),
                    .. run.State.Plan.Positions.Select(
                        (p, i) => MenuItem.To(p.Name, () => new HistoryScreen(session, run, i))
                    ),
                ]
        );
}
