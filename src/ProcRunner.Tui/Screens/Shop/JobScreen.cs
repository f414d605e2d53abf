using ProcRunner.Runs;
using ProcRunner.Tui.Jobs;
using ProcRunner.Tui.Screens.Parts;

namespace ProcRunner.Tui.Screens.Shop;

/// <summary>How a job stands: its header, what waits, what is to be rechecked, its values, parts, marks and notes.</summary>
internal sealed class JobScreen : TextScreen
{
    private readonly ShopSession _session;
    private readonly JobRun _run;
    private readonly bool _fromRun;
    private JobState _state;

    /// <summary>The screen.</summary>
    /// <param name="session">The session.</param>
    /// <param name="run">The job.</param>
    /// <param name="fromRun">True when it lies on the screen that the job is worked on.</param>
    public JobScreen(ShopSession session, JobRun run, bool fromRun = false)
        : base(session)
    {
        (_session, _run, _fromRun) = (session, run, fromRun);
        _state = new JobState(session, run);
    }

    /// <inheritdoc/>
    public override bool IsPractice => _run.State.Job is { Practice: true };

    /// <inheritdoc/>
    protected override string Title => $"{_run.State.Job?.Stamp}  {_run.State.Plan.Head.Title}";

    /// <inheritdoc/>
    protected override bool HasMenu => true;

    /// <inheritdoc/>
    protected override IReadOnlyList<string> Keys =>
        [CanGoOn ? "1 Enter goes on" : "", PageKeys, "/ menu: history, notes", "0 Enter back"];

    private bool CanGoOn => !_fromRun && _run.State.Standing == JobStanding.Open;

    /// <inheritdoc/>
    public override void Return()
    {
        base.Return();
        _state = new JobState(_session, _run);
    }

    /// <inheritdoc/>
    protected override IReadOnlyList<TextLine> Lines(int width) => _state.Lines(width);

    /// <inheritdoc/>
    protected override Turn Other(string text)
    {
        if (text != "1" || !CanGoOn)
        {
            return base.Other(text);
        }

        (Screen? screen, string fault) = _session.GoOn(_run);
        return screen is null ? Refuse(fault) : new Turn.Instead(screen);
    }

    /// <inheritdoc/>
    protected override Turn Menu() => new Turn.To(JobMenu.Of(_session, _run));
}
