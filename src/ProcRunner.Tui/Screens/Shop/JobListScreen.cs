using ProcRunner.Tui.Drawing;
using ProcRunner.Tui.Jobs;
using ProcRunner.Tui.Screens.Parts;

namespace ProcRunner.Tui.Screens.Shop;

/// <summary>
/// The shop's day: the jobs in hand, what each waits for, since when, on which bench, who had it last; and what was signed off
/// this week. The lowest screen of a shop.
/// </summary>
internal sealed class JobListScreen : ListScreen
{
    private static readonly ListColumn[] Wide =
    [
        new("stamp", 0, 12),
        new("waits for", 0, 40),
        new("since", 0, 10),
        new("bench", 0, 10),
        new("who", 0, 14),
        new("customer", 0, 0),
    ];

    private static readonly ListColumn[] Narrow =
    [
        new("stamp", 8, 0),
        new("waits for", 35, 0),
        new("since", 10, 0),
        new("who", 0, 0),
    ];

    private readonly ShopSession _session;
    private IReadOnlyList<JobEntry> _jobs = [];

    /// <summary>The list.</summary>
    /// <param name="session">The session.</param>
    /// <param name="word">What is to be said first; empty for nothing.</param>
    public JobListScreen(ShopSession session, string word = "")
        : base(session)
    {
        _session = session;
        Read();
        if (word.Length > 0)
        {
            Say(word, Ink.Strong);
        }
    }

    /// <inheritdoc/>
    protected override string Title => "Heads in the shop";

    /// <inheritdoc/>
    protected override string Asks => Next is { } job ? $"Number or stamp; Enter: {job.Stamp}" : "Enter: a new job";

    /// <inheritdoc/>
    protected override IReadOnlyList<string> Keys =>
        [Count > 0 ? "number Enter goes on" : "", "/ menu: new job, find, people", PageKeys, "* keys"];

    /// <inheritdoc/>
    protected override IReadOnlyList<ListColumn> Columns => IsWide ? Wide : Narrow;

    /// <inheritdoc/>
    protected override int Count => _jobs.Count;

    /// <inheritdoc/>
    protected override string Nothing =>
        "No head is in work. Enter opens a new job; / the menu, with gauges and people.";

    /// <inheritdoc/>
    protected override bool HasMenu => true;

    // The head that was worked at last.
    private JobEntry? Next => _jobs is [{ State: "open" } job, ..] ? job : null;

    /// <inheritdoc/>
    public override void Return()
    {
        _session.LeftWork();
        base.Return();
        Read();
    }

    /// <inheritdoc/>
    protected override IReadOnlyList<string> Cells(int index, Look look)
    {
        JobEntry job = _jobs[index];
        string since = Ago.Of(job.Since, look.Now);
        string who = _session.NameOf(job.Person);
        string waits = job.IsClosed ? job.State : job.WaitsFor;
        return IsWide ? [job.Stamp, waits, since, job.Bench, who, job.Customer] : [job.Stamp, waits, since, who];
    }

    /// <inheritdoc/>
    protected override string? BelowOf(int index) =>
        IsWide ? null
        : _jobs[index].Bench.Length == 0 ? _jobs[index].Customer
        : $"{_jobs[index].Customer}  ({_jobs[index].Bench})";

    /// <inheritdoc/>
    protected override string SectionOf(int index) =>
        _jobs[index].State switch
        {
            "held" => "ON HOLD",
            "open" => "IN WORK",
            _ => "SIGNED OFF THIS WEEK",
        };

    /// <inheritdoc/>
    protected override Turn Chosen(int index) => Open(_jobs[index].Id);

    /// <inheritdoc/>
    protected override Turn Other(string text) =>
        _session.Store.Shop.JobsWithStamp(text).FirstOrDefault() is { } job ? Open(job.Id)
        : Count == 0 && text == "1" ? NewJob()
        : Refuse($"Neither a number of this list nor a stamp: {text}");

    /// <inheritdoc/>
    protected override Turn Bare() => Next is { } job ? Open(job.Id) : NewJob();

    /// <inheritdoc/>
    protected override Turn Zero() => Menu();

    /// <inheritdoc/>
    protected override Turn Escaped() => Menu();

    /// <inheritdoc/>
    protected override Turn Menu() => new Turn.To(ShopMenu.Of(_session));

    private Turn.To NewJob() => new Turn.To(new NewJobForm(_session));

    private Turn Open(string jobId)
    {
        (JobRun? run, string fault) = _session.Job(jobId);
        if (run is null)
        {
            return Refuse(fault);
        }

        (Screen? screen, fault) = _session.GoOn(run);
        return screen is null ? Refuse(fault) : new Turn.To(screen);
    }

    private void Read()
    {
        (_jobs, string trouble) = JobLedger.Day(_session.Store, _session.Time.GetLocalNow());
        if (trouble.Length > 0)
        {
            Say(trouble, Ink.Mind);
        }
    }
}
