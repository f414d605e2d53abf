using ProcRunner.Runs;
using ProcRunner.Tui.Jobs;
using ProcRunner.Tui.Screens.Parts;

namespace ProcRunner.Tui.Screens.Shop;

/// <summary>Puts a job on hold, with a reason.</summary>
/// <param name="session">The session.</param>
/// <param name="run">The job.</param>
internal sealed class HoldForm(ShopSession session, JobRun run) : FormScreen(session)
{
    /// <inheritdoc/>
    public override bool IsPractice => run.State.Job is { Practice: true };

    /// <inheritdoc/>
    protected override string Title => $"{run.State.Job?.Stamp}: put on hold";

    /// <inheritdoc/>
    protected override IReadOnlyList<Field> Fields { get; } =
    [
        new("Why")
        {
            Hint = () => "Why it waits. A number takes one of these; other words are typed.",
            Choices = () => StockAnswers.Hold,
        },
    ];

    /// <inheritdoc/>
    protected override string? Write()
    {
        string? fault = session.TakeOver(run) ?? ShopSession.FaultOf(run.Do(new RunCommand.Hold(Fields[0].Text)));
        session.LeaveWord(fault is null ? "On hold." : "");
        return fault;
    }
}
