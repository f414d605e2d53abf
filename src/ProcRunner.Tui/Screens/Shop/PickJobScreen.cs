using ProcRunner.Tui.Jobs;
using ProcRunner.Tui.Screens.Parts;

namespace ProcRunner.Tui.Screens.Shop;

/// <summary>Jobs to look at rather than to work on.</summary>
/// <param name="session">The session.</param>
/// <param name="title">What the jobs have in common.</param>
/// <param name="read">The jobs, as they are now.</param>
internal sealed class PickJobScreen(ShopSession session, string title, Func<IReadOnlyList<JobEntry>> read)
    : ListScreen(session)
{
    private static readonly ListColumn[] Wide =
    [
        new("stamp", 0, 12),
        new("state", 0, 9),
        new("since", 0, 10),
        new("customer", 0, 32),
        new("", 0, 0),
    ];

    private static readonly ListColumn[] Narrow =
    [
        new("stamp", 8, 0),
        new("state", 8, 0),
        new("since", 10, 0),
        new("customer", 0, 0),
    ];

    private IReadOnlyList<JobEntry> _jobs = read();

    /// <inheritdoc/>
    protected override string Title => title;

    /// <inheritdoc/>
    protected override string Asks => Count > 0 ? "Number or stamp" : "Number";

    /// <inheritdoc/>
    protected override IReadOnlyList<ListColumn> Columns => IsWide ? Wide : Narrow;

    /// <inheritdoc/>
    protected override int Count => _jobs.Count;

    /// <inheritdoc/>
    protected override string Nothing => "There is none.";

    /// <inheritdoc/>
    public override void Return()
    {
        base.Return();
        _jobs = read();
    }

    /// <inheritdoc/>
    protected override IReadOnlyList<string> Cells(int index, Look look)
    {
        JobEntry job = _jobs[index];
        return [job.Stamp, job.State, Ago.Of(job.Since, look.Now), job.Customer, More(index)];
    }

    /// <inheritdoc/>
    protected override string? BelowOf(int index) => IsWide || More(index).Length == 0 ? null : More(index);

    /// <inheritdoc/>
    protected override Turn Other(string text)
    {
        int index = _jobs.ToList().FindIndex(j => string.Equals(j.Stamp, text, StringComparison.OrdinalIgnoreCase));
        return index < 0 ? Refuse($"Neither a number of this list nor a stamp in it: {text}") : Chosen(index);
    }

    /// <inheritdoc/>
    protected override Turn Chosen(int index)
    {
        (JobRun? run, string fault) = session.Job(_jobs[index].Id);
        return run is null ? Refuse(fault) : new Turn.To(new JobScreen(session, run));
    }

    private string More(int index) =>
        _jobs[index].Found.Length > 0 ? _jobs[index].Found
        : _jobs[index].IsClosed ? ""
        : _jobs[index].WaitsFor;
}
