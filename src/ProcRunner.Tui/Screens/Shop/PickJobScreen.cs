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
    private IReadOnlyList<JobEntry> _jobs = read();

    /// <inheritdoc/>
    protected override string Title => title;

    /// <inheritdoc/>
    protected override IReadOnlyList<ListColumn> Columns { get; } =
    [new("stamp", 8, 12), new("state", 8, 9), new("since", 7, 8), new("customer", 18, 30), new("", 0, 0)];

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
        string last = job.Found.Length > 0 ? job.Found : job.WaitsFor;
        return [job.Stamp, job.State, Ago.Of(job.Since, look.Now), job.Customer, last];
    }

    /// <inheritdoc/>
    protected override Turn Chosen(int index)
    {
        (JobRun? run, string fault) = session.Job(_jobs[index].Id);
        return run is null ? Refuse(fault) : new Turn.To(new JobScreen(session, run));
    }
}
