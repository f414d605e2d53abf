using ProcRunner.Runs;
using ProcRunner.Shop;
using ProcRunner.Store.Local;
using ProcRunner.Testing;
using ProcRunner.Trail;
using ProcRunner.Tui.Demo;
using ProcRunner.Tui.Jobs;
using ProcRunner.Tui.Lines;
using ProcRunner.Tui.Shell;

namespace ProcRunner.Tui.Tests.Lines;

/// <summary>
/// The demo shop with its job, made on disk once; any number of runs of that job in memory, each begun after any entry of
/// a trail. Only what is written is kept in memory: deciding, line mode and the entries' form are the program's own.
/// </summary>
internal sealed class DemoBench
{
    private static readonly Lazy<DemoBench> Made = new(() => new DemoBench());

    private DemoBench()
    {
        using TempFolder folder = new();
        (LocalStore? opened, string fault) = DemoShop.Open(folder["shop"], "tests");
        using LocalStore store = opened ?? throw new InvalidOperationException(fault);
        (JobRun? job, fault) = DemoShop.OpenJob(store, DemoShop.Stamp);
        Plan = (job ?? throw new InvalidOperationException(fault)).State.Plan;
        JobId = job.State.JobId;
        Opened = (job.LastEvents, job.Last);
        Shop = store.Shop;
    }

    public static DemoBench Shared => Made.Value;

    /// <summary>The lines of the demo's file of entries.</summary>
    public static string[] EntryLines { get; } =
        File.ReadAllLines(RepoRoot.PathOf("procedures/demo/pump-four.entries"));

    public Plan Plan { get; }

    public ShopState Shop { get; }

    /// <summary>The job's first entry.</summary>
    public (IReadOnlyList<RunEvent> Events, Digest Digest) Opened { get; }

    private string JobId { get; }

    /// <summary>The job as it was opened.</summary>
    public JobRun Begin() => After([Opened]);

    /// <summary>The job after these entries.</summary>
    public JobRun After(IEnumerable<(IReadOnlyList<RunEvent> Events, Digest Digest)> entries)
    {
        RunState state = new(Plan, JobId);
        long sequence = 0;
        Digest last = Digest.Zero;
        IReadOnlyList<RunEvent> lastEvents = [];
        foreach ((IReadOnlyList<RunEvent> events, Digest digest) in entries)
        {
            state.Apply(++sequence, events);
            (last, lastEvents) = (digest, events);
        }

        string person = state.Worker.Length > 0 ? state.Worker : DemoShop.Operator;
        return new JobRun(
            () => Shop,
            (_, draft) => Written(state, draft),
            TimeProvider.System,
            state,
            last,
            person,
            lastEvents,
            new PinGate(() => Shop, (_, _) => new AppendResult.Refused("nothing is written here"), TimeProvider.System)
        );
    }

    /// <summary>Runs lines; the exit status and what was printed.</summary>
    public static (int Status, string Output) Run(JobRun job, string lines, bool piped = true)
    {
        using StringWriter output = new();
        using StringReader input = new(lines);
        return (Run(job, input, output, piped), output.ToString());
    }

    /// <summary>Runs lines from a reader; the exit status.</summary>
    public static int Run(JobRun job, TextReader input, TextWriter output, bool piped = true) =>
        new LineRun(job, new LineInput(input, piped, output), output).Run();

    private AppendResult.Written Written(RunState state, EntryDraft draft)
    {
        TrailEntry entry = new()
        {
            Of = JobId,
            Sequence = state.Sequence + 1,
            Previous = Digest.Zero,
            At = DateTimeOffset.UnixEpoch,
            Offset = TimeSpan.Zero,
            Operator = draft.Operator,
            Bench = "test",
            Book = Shop.Mark,
            Anchor = draft.Anchor,
            Events = draft.Events,
        };
        return new(entry, TrailLine.DigestOf(TrailLine.Encode(entry)));
    }
}
