namespace ProcRunner.Tui.Screens.Shop;

/// <summary>A job in a list.</summary>
/// <param name="Id">The job's id.</param>
/// <param name="Stamp">Its stamp.</param>
/// <param name="Customer">Whose head it is.</param>
/// <param name="State">open, held, released or scrapped.</param>
/// <param name="WaitsFor">What it waits for.</param>
/// <param name="Since">Since when; null when that isn't known.</param>
/// <param name="Person">The id of whoever was at work last.</param>
/// <param name="Bench">The bench of its last entry; empty when that isn't known.</param>
/// <param name="Found">What of it a search found; empty without one.</param>
internal sealed record JobEntry(
    string Id,
    string Stamp,
    string Customer,
    string State,
    string WaitsFor,
    DateTimeOffset? Since,
    string Person,
    string Bench = "",
    string Found = ""
)
{
    /// <summary>True when nothing can follow in it.</summary>
    public bool IsClosed => State is "released" or "scrapped";
}
