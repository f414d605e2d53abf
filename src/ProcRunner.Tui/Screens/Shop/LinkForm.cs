using ProcRunner.Tui.Jobs;
using ProcRunner.Tui.Screens.Parts;

namespace ProcRunner.Tui.Screens.Shop;

/// <summary>Links another head of the same engine.</summary>
/// <param name="session">The session.</param>
/// <param name="run">The job.</param>
internal sealed class LinkForm(ShopSession session, JobRun run) : FormScreen(session)
{
    /// <inheritdoc/>
    public override bool IsPractice => run.State.Job is { Practice: true };

    /// <inheritdoc/>
    protected override string Title => $"{run.State.Job?.Stamp}: another head";

    /// <inheritdoc/>
    protected override IReadOnlyList<Field> Fields { get; } =
    [
        new("stamp of the other")
        {
            Hint = () => "Another head of the same engine. Neither is released then without both being compared.",
            Fault = stamp => session.Store.Shop.JobsWithStamp(stamp).Any() ? null : "No job has this stamp.",
        },
    ];

    /// <inheritdoc/>
    protected override string? Write()
    {
        (JobRun? other, string fault) = session.Job(session.Store.Shop.JobsWithStamp(Fields[0].Text).First().Id);
        return other is null ? fault : session.TakeOver(run) ?? EngineHeads.Link(run, other);
    }

    /// <inheritdoc/>
    protected override Turn Done() => new Turn.Instead(new LinksScreen(session, run));
}
