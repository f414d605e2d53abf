using System.Globalization;
using ProcRunner.Store.Local;
using ProcRunner.Tui.Jobs;
using ProcRunner.Tui.Screens.Parts;

namespace ProcRunner.Tui.Screens.Shop;

/// <summary>The heads that a search found, the best first; / narrows it to one field or to some days.</summary>
internal sealed class FoundScreen : ListScreen
{
    private static readonly ListColumn[] Wide =
    [
        new("stamp", 0, 12),
        new("state", 0, 9),
        new("since", 0, 8),
        new("customer", 0, 32),
        new("", 0, 0),
    ];

    private static readonly ListColumn[] Narrow =
    [
        new("stamp", 8, 0),
        new("state", 8, 0),
        new("since", 7, 0),
        new("customer", 0, 0),
    ];

    private static readonly (JobField Field, string Words)[] Fields =
    [
        (JobField.Stamp, "only stamps"),
        (JobField.Customer, "only customers"),
        (JobField.Head, "only head families"),
        (JobField.Part, "only part numbers and names"),
        (JobField.Lot, "only lots"),
        (JobField.Gauge, "only gauges"),
        (JobField.Cutter, "only cutters"),
        (JobField.Person, "only people"),
        (JobField.Note, "only notes"),
        (JobField.Proof, "only proof codes"),
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
    protected override string Title =>
        _count > _jobs.Count
            ? string.Create(CultureInfo.InvariantCulture, $"Found: the first {_jobs.Count} of {_count}")
            : string.Create(CultureInfo.InvariantCulture, $"Found: {_count}");

    /// <inheritdoc/>
    protected override IReadOnlyList<string> Keys =>
        [Count > 0 ? "number Enter looks at it" : "", PageKeys, "/ narrow it", "0 Enter back", "* keys"];

    /// <inheritdoc/>
    protected override IReadOnlyList<ListColumn> Columns => IsWide ? Wide : Narrow;

    /// <inheritdoc/>
    protected override int Count => _jobs.Count;

    /// <inheritdoc/>
    protected override string Nothing => "There is none.";

    /// <inheritdoc/>
    protected override bool HasMenu => true;

    /// <inheritdoc/>
    public override void Return()
    {
        base.Return();
        Read();
    }

    /// <inheritdoc/>
    protected override IReadOnlyList<string> Cells(int index, Look look)
    {
        JobEntry job = _jobs[index];
        return [job.Stamp, job.State, Ago.Of(job.Since, look.Now), job.Customer, More(index)];
    }

    /// <inheritdoc/>
    protected override string? BelowOf(int index) => IsWide ? null : More(index);

    /// <inheritdoc/>
    protected override Turn Chosen(int index)
    {
        (JobRun? run, string fault) = _session.Job(_jobs[index].Id);
        return run is null ? Refuse(fault) : new Turn.To(new JobScreen(_session, run));
    }

    /// <inheritdoc/>
    protected override Turn Menu() =>
        new Turn.To(
            new MenuScreen(
                _session,
                "Narrow it",
                () => "",
                () =>
                    [
                        .. _query.Text.Length == 0
                            ? []
                            : Fields.Select(f =>
                                MenuItem.Instead(f.Words, () => new FoundScreen(_session, Only(f.Field)))
                            ),
                        MenuItem.Instead("only some days", () => new DaysForm(_session, _query)),
                    ]
            )
        );

    private JobQuery Only(JobField field) => _query with { Text = "", In = [.. _query.In, (field, _query.Text)] };

    private void Read() => (_jobs, _count, Trouble) = JobLedger.Find(_session.Store, _query);

    private string More(int index) => _jobs[index].Found.Length > 0 ? _jobs[index].Found : _jobs[index].WaitsFor;
}
