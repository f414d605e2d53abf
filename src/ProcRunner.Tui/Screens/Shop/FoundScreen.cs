using System.Globalization;
using ProcRunner.Store.Local;
using ProcRunner.Tui.Screens.Parts;

namespace ProcRunner.Tui.Screens.Shop;

/// <summary>The heads that a search found, the best first; / narrows it to one field or to some days.</summary>
internal sealed class FoundScreen : JobsToLookAt
{
    private static readonly (JobField Field, string Words)[] Fields =
    [
        (JobField.Stamp, "stamps"),
        (JobField.Customer, "customers"),
        (JobField.Head, "head families"),
        (JobField.Part, "part numbers and names"),
        (JobField.Lot, "lots"),
        (JobField.Gauge, "gauges"),
        (JobField.Cutter, "cutters"),
        (JobField.Person, "people"),
        (JobField.Note, "notes"),
        (JobField.Proof, "proof codes"),
    ];

    private readonly ShopSession _session;
    private readonly JobQuery _query;
    private IReadOnlyList<JobEntry> _jobs = [];
    private int _count;

    /// <summary>Searches.</summary>
    public FoundScreen(ShopSession session, JobQuery query)
        : base(session)
    {
        (_session, _query) = (session, query);
        Read();
    }

    /// <summary>What keeps the search from being made; empty for nothing.</summary>
    public string Trouble { get; private set; } = "";

    /// <summary>True when nothing was found.</summary>
    public bool IsEmpty => _jobs.Count == 0;

    /// <inheritdoc/>
    protected override string Title => $"{Sought}: {Counted}";

    /// <inheritdoc/>
    protected override IReadOnlyList<string> Keys =>
        [Count > 0 ? "number Enter looks at it" : "", PageKeys, "/ narrow it", "0 Enter back", "* keys"];

    /// <inheritdoc/>
    protected override IReadOnlyList<JobEntry> Jobs => _jobs;

    /// <inheritdoc/>
    protected override bool HasMenu => true;

    /// <inheritdoc/>
    public override void Return()
    {
        base.Return();
        Read();
    }

    /// <inheritdoc/>
    protected override Turn Menu() => new Turn.To(new MenuScreen(_session, "Narrow it", () => "", () => Narrower()));

    private string Sought =>
        string.Join(
            ", ",
            new[] { _query.Text }
                .Where(text => text.Length > 0)
                .Concat(_query.In.Select(i => $"{i.Text} in {Fields.First(f => f.Field == i.Field).Words}"))
                .Concat(_query.From is null && _query.Before is null ? [] : ["some days"])
        );

    private string Counted =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{(_count > _jobs.Count ? $"the first {_jobs.Count} of " : "")}{_count} {(_count == 1 ? "head" : "heads")}"
        );

    // Only where there is something to be found.
    private List<MenuItem> Narrower()
    {
        List<MenuItem> items = [];
        foreach ((JobField field, string words) in _query.Text.Length == 0 ? [] : Fields)
        {
            int count = JobLedger.Count(_session.Store, Only(field));
            if (count > 0)
            {
                string text = string.Create(CultureInfo.InvariantCulture, $"only in {words}: {count}");
                items.Add(MenuItem.Instead(text, () => new FoundScreen(_session, Only(field))));
            }
        }

        items.Add(MenuItem.Instead("only some days", () => new DaysForm(_session, _query)));
        return items;
    }

    private JobQuery Only(JobField field) => _query with { Text = "", In = [.. _query.In, (field, _query.Text)] };

    private void Read() => (_jobs, _count, Trouble) = JobLedger.Find(_session.Store, _query);
}
