using ProcRunner.Tui.Jobs;
using ProcRunner.Tui.Screens.Parts;

namespace ProcRunner.Tui.Screens.Shop;

/// <summary>Why a head goes out although the other one of the engine differs or isn't known.</summary>
/// <param name="session">The session.</param>
/// <param name="run">The job.</param>
internal sealed class ApartForm(ShopSession session, JobRun run) : FormScreen(session)
{
    /// <inheritdoc/>
    public override bool IsPractice => run.State.Job is { Practice: true };

    /// <inheritdoc/>
    protected override string Title => $"{run.State.Job?.Stamp}: released apart";

    /// <inheritdoc/>
    protected override IReadOnlyList<Field> Fields { get; } =
    [
        new("Why")
        {
            Hint = () =>
                "Stands in the trail and the record, with who decided it. A number takes one of these; other words are typed.",
            Choices = () => StockAnswers.Apart,
        },
    ];

    /// <inheritdoc/>
    protected override string? Write()
    {
        string? fault = session.TakeOver(run) ?? ShopSession.FaultOf(run.DecideHeads(together: false, Fields[0].Text));
        session.LeaveWord(fault is null ? "Written down: released apart." : "");
        return fault;
    }
}
