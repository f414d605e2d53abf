using ProcRunner.People;
using ProcRunner.Procedures;
using ProcRunner.Runs;
using ProcRunner.Runs.Prompts;
using ProcRunner.Tui.Jobs;

namespace ProcRunner.Tui.Screens.Run;

/// <summary>What a way on asks before it is taken: a reason; for concession and scrap a lead and a PIN besides.</summary>
internal static class WayPages
{
    /// <summary>Takes a way on, or asks first.</summary>
    public static Turn Take(RunWork work, At at, WayOn way, RefusalPage from) =>
        way.Kind == WayKind.Again
            ? from.Go(work.Do(new RunCommand.TakeWay(at, way.Text, "", null)), "")
            : new Turn.Instead(
                RunMenu.Reason(
                    work,
                    $"{way.Text} at {work.Plan.PositionName(at.Position)}: why?",
                    StockAnswers.WaysOn,
                    (page, reason) =>
                        way.Kind is WayKind.Concession or WayKind.Scrap
                            ? Lead(work, at, way, reason)
                            : page.Go(work.Do(new RunCommand.TakeWay(at, way.Text, reason, null)), reason),
                    [Note(work.Plan, way)]
                )
            );

    /// <summary>What a way on leads to.</summary>
    public static string Note(Plan plan, WayOn way) =>
        way.Kind switch
        {
            WayKind.Concession => "use it as it is: a lead, PIN and reason",
            WayKind.Scrap => "gives the head up: a lead, PIN and reason",
            WayKind.Again => "every reading is kept",
            _ when way.BackTo is { } step => $"back to {plan.Steps[step].FullName}",
            _ => "",
        };

    private static Turn.Instead Lead(RunWork work, At at, WayOn way, string reason)
    {
        string title = $"{way.Text}, {work.Plan.NameOf(at)}: which lead?";
        IReadOnlyList<Option> leads = SignPages.People(
            work,
            leadsOnly: true,
            lead =>
                SignPages.Pin(
                    work,
                    $"{way.Text}, {work.Plan.NameOf(at)}",
                    lead,
                    (page, pin) => page.Go(work.Took(Given(work, at, way, reason, lead, pin)), "")
                )
        );
        IReadOnlyList<string> faults = work.Prompt is { Awaits: Awaited.WayOn } prompt ? prompt.Faults : [];
        return new Turn.Instead(
            new AskPage(work, title)
            {
                About =
                [
                    .. faults,
                    $"reason: {reason}",
                    way.Kind == WayKind.Scrap
                        ? "The head is given up: nothing follows in this job."
                        : "The lead's signature covers this result and this reason.",
                ],
                Options = leads,
                OnEnter = leads.Count == 1 ? (leads[0].Text, leads[0].Take) : null,
            }
        );
    }

    private static JobAnswer Given(RunWork work, At at, WayOn way, string reason, Person lead, string pin) =>
        work.Job.TakeWayByLead(at, way, reason, lead.Id, pin);
}
