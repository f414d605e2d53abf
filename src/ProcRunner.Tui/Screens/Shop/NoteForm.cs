using ProcRunner.Runs;
using ProcRunner.Tui.Jobs;
using ProcRunner.Tui.Screens.Parts;

namespace ProcRunner.Tui.Screens.Shop;

/// <summary>Writes a note.</summary>
/// <param name="session">The session.</param>
/// <param name="run">The job.</param>
/// <param name="at">The step and position it is about; null for the job.</param>
internal sealed class NoteForm(ShopSession session, JobRun run, At? at) : FormScreen(session)
{
    /// <inheritdoc/>
    public override bool IsPractice => run.State.Job is { Practice: true };

    /// <inheritdoc/>
    protected override string Title => $"{run.State.Job?.Stamp}: a note";

    /// <inheritdoc/>
    protected override IReadOnlyList<Field> Fields { get; } =
    [
        new("Note")
        {
            Hint = () =>
                $"About {(at is { } place ? run.State.Plan.NameOf(place) : "the whole job")}. A number takes one of these; other words are typed.",
            Choices = () => StockAnswers.Notes,
        },
    ];

    /// <inheritdoc/>
    protected override string? Write()
    {
        string? fault = session.TakeOver(run) ?? ShopSession.FaultOf(run.Do(new RunCommand.Note(at, Fields[0].Text)));
        session.LeaveWord(fault is null ? "Noted." : "");
        return fault;
    }
}
