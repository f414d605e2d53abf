using ProcRunner.Procedures;
using ProcRunner.Runs;

namespace ProcRunner.Tui.Screens.Run;

/// <summary>What comes after the step in hand, if it goes well.</summary>
internal static class NextStep
{
    /// <summary>Its name; empty when nothing comes after.</summary>
    public static string Of(RunWork work, At at)
    {
        Outlook outlook = work.Outlook;
        At[] ahead =
        [
            .. outlook.All.Where(a => a != at && outlook.ViewOf(a) is StepView.Open or StepView.Waiting && a != at),
        ];
        Stage stage = work.Plan.Procedure.Stages[work.Plan.Steps[at.Step].StageIndex];
        At[] inStage = [.. ahead.Where(a => work.Plan.Steps[a.Step].StageIndex == stage.Index)];
        IEnumerable<At> first =
            stage.Walk == Walk.ByStep || at.Position == At.Head
                ? inStage.OrderBy(a => a.Step == at.Step ? 0 : 1).ThenBy(a => a.Step)
                : inStage.Where(a => a.Position == at.Position).Concat(inStage);
        return first.Concat(ahead).Cast<At?>().FirstOrDefault() is { } next ? Name(work.Plan, at, next) : "";
    }

    private static string Name(Plan plan, At from, At to)
    {
        Step step = plan.Steps[to.Step];
        bool sameStage = step.StageIndex == plan.Steps[from.Step].StageIndex;
        string name = sameStage ? step.Name : step.FullName;
        return to.Position == At.Head ? name : $"{name} at {plan.PositionName(to.Position)}";
    }
}
