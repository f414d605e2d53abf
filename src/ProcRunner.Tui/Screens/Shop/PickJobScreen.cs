namespace ProcRunner.Tui.Screens.Shop;

/// <summary>Jobs that have something in common.</summary>
/// <param name="session">The session.</param>
/// <param name="title">What it is.</param>
/// <param name="read">The jobs, as they are now.</param>
internal sealed class PickJobScreen(ShopSession session, string title, Func<IReadOnlyList<JobEntry>> read)
    : JobsToLookAt(session)
{
    private IReadOnlyList<JobEntry> _jobs = read();

    /// <inheritdoc/>
    protected override string Title => title;

    /// <inheritdoc/>
    protected override IReadOnlyList<JobEntry> Jobs => _jobs;

    /// <inheritdoc/>
    public override void Return()
    {
        base.Return();
        _jobs = read();
    }
}
