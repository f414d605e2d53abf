using ProcRunner.Tui.Jobs;
using ProcRunner.Tui.Screens.Parts;

namespace ProcRunner.Tui.Screens.Shop;

/// <summary>Jobs to look at rather than to work on: by number or by stamp.</summary>
/// <param name="session">The session.</param>
internal abstract class JobsToLookAt(ShopSession session) : ListScreen(session)
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

    /// <summary>The jobs, as they are now.</summary>
    protected abstract IReadOnlyList<JobEntry> Jobs { get; }

    /// <inheritdoc/>
    protected sealed override string Asks => Count > 0 ? "Number or stamp" : "Number";

    /// <inheritdoc/>
    protected sealed override IReadOnlyList<ListColumn> Columns => IsWide ? Wide : Narrow;

    /// <inheritdoc/>
    protected sealed override int Count => Jobs.Count;

    /// <inheritdoc/>
    protected sealed override string Nothing => "There is none.";

    /// <inheritdoc/>
    protected sealed override IReadOnlyList<string> Cells(int index, Look look)
    {
        JobEntry job = Jobs[index];
        return [job.Stamp, job.State, Ago.Of(job.Since, look.Now), job.Customer, More(index)];
    }

    /// <inheritdoc/>
    protected sealed override string? BelowOf(int index) => IsWide || More(index).Length == 0 ? null : More(index);

    /// <inheritdoc/>
    protected sealed override Turn Other(string text)
    {
        int index = Jobs.ToList().FindIndex(j => string.Equals(j.Stamp, text, StringComparison.OrdinalIgnoreCase));
        return index < 0 ? Refuse($"Neither a number of this list nor a stamp in it: {text}") : Chosen(index);
    }

    /// <inheritdoc/>
    protected sealed override Turn Chosen(int index)
    {
        (JobRun? run, string fault) = session.Job(Jobs[index].Id);
        return run is null ? Refuse(fault) : new Turn.To(new JobScreen(session, run));
    }

    private string More(int index) =>
        Jobs[index].Found.Length > 0 ? Jobs[index].Found
        : Jobs[index].IsClosed ? ""
        : Jobs[index].WaitsFor;
}
