using ProcRunner.Store.Local;

namespace ProcRunner.Tui.Jobs;

/// <summary>The shop's day.</summary>
/// <param name="InHand">Heads in work, then those on hold; in each the latest activity first.</param>
/// <param name="ThisWeek">Released since Monday, the latest first.</param>
/// <param name="Closed">Released before, or scrapped, the latest first.</param>
internal sealed record ShopDay(
    IReadOnlyList<IndexedJob> InHand,
    IReadOnlyList<IndexedJob> ThisWeek,
    IReadOnlyList<IndexedJob> Closed
)
{
    /// <summary>The day of a shop.</summary>
    /// <param name="jobs">All jobs, the latest activity first.</param>
    /// <param name="now">Now, with the shop's offset.</param>
    public static ShopDay Of(IEnumerable<IndexedJob> jobs, DateTimeOffset now)
    {
        DateTimeOffset monday = new(now.Date.AddDays(-(((int)now.DayOfWeek + 6) % 7)), now.Offset);
        List<IndexedJob> open = [];
        List<IndexedJob> held = [];
        List<IndexedJob> week = [];
        List<IndexedJob> closed = [];
        foreach (IndexedJob job in jobs)
        {
            List<IndexedJob> to = job.State switch
            {
                "open" => open,
                "held" => held,
                "released" when job.LastActivity >= monday => week,
                _ => closed,
            };
            to.Add(job);
        }

        return new([.. open, .. held], week, closed);
    }
}
