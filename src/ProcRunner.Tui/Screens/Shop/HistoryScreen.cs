using ProcRunner.Runs;
using ProcRunner.Tui.Drawing;
using ProcRunner.Tui.Jobs;
using ProcRunner.Tui.Screens.Parts;

namespace ProcRunner.Tui.Screens.Shop;

/// <summary>The whole story of a position, from its first entry to its last.</summary>
internal sealed class HistoryScreen : TextScreen
{
    private readonly JobRun _run;
    private readonly int _position;
    private readonly IReadOnlyList<TextLine> _lines;

    /// <summary>Reads the story from the job's trail.</summary>
    public HistoryScreen(ShopSession session, JobRun run, int position)
        : base(session)
    {
        (_run, _position) = (run, position);
        IReadOnlyList<TextLine> story = PositionStory.Of(
            run.State,
            session.Store.Reader.ReadTrail(run.State.JobId).Entries.Select(line => line.Entry),
            position,
            session.NameOf
        );
        _lines = story.Count > 0 ? story : [new("Nothing has happened here yet.", Ink.Quiet)];
    }

    /// <inheritdoc/>
    public override bool IsPractice => _run.State.Job is { Practice: true };

    /// <inheritdoc/>
    protected override string Title =>
        $"{_run.State.Job?.Stamp}: history of {(_position == At.Head ? "the head" : _run.State.Plan.PositionName(_position))}";

    /// <inheritdoc/>
    protected override IReadOnlyList<TextLine> Lines(int width) => _lines;
}
