using System.Text;
using ProcRunner.Runs;
using ProcRunner.Shop;
using ProcRunner.Store.Local;
using ProcRunner.Testing;
using ProcRunner.Trail;
using ProcRunner.Tui.Demo;
using ProcRunner.Tui.Jobs;
using ProcRunner.Tui.Lines;
using ProcRunner.Tui.Shell;

namespace ProcRunner.Tui.Tests.Run;

/// <summary>A demo shop of its own with one job, which line mode or the screen works on.</summary>
public sealed class DemoJob : IDisposable
{
    private readonly TempFolder _folder = new();
    private LocalStore _store;

    /// <summary>A job; the head spec can be made to differ in one text, or the gauges in one more.</summary>
    public DemoJob(bool practice = false, (string Old, string New)? head = null, Gauge? gauge = null)
    {
        (LocalStore? store, string fault) = DemoShop.Open(_folder["shop"], "test");
        _store = store ?? throw new InvalidOperationException(fault);
        if (gauge is not null)
        {
            Assert.IsType<AppendResult.Written>(_store.AppendShop("moss", new ShopEvent.GaugeAdded(gauge)));
        }

        byte[] procedure = File.ReadAllBytes(RepoRoot.PathOf("procedures/two-valve-iron.yaml"));
        string spec = File.ReadAllText(RepoRoot.PathOf("procedures/heads/pump-four.yaml"));
        spec = head is { } change ? spec.Replace(change.Old, change.New, StringComparison.Ordinal) : spec;
        (PlanTexts? texts, _) = PlanTexts.Read("procedure", procedure, "head", Encoding.UTF8.GetBytes(spec));
        JobHeader header = new()
        {
            Stamp = DemoShop.Stamp,
            ProcedureDigest = texts!.ProcedureDigest.ToString(),
            HeadDigest = texts.HeadDigest.ToString(),
            Customer = "Lower Field irrigation (invented)",
            Complaint = "hard to start, low compression on 2",
            Practice = practice,
        };
        (JobRun? run, fault) = JobRun.Begin(_store, Machine.Time, texts, header, DemoShop.Operator);
        Job = run ?? throw new InvalidOperationException(fault);
    }

    /// <summary>The entries of the demo, line by line, without remarks.</summary>
    public static IReadOnlyList<string> Entries { get; } =
    [
        .. File.ReadAllLines(RepoRoot.PathOf("procedures/demo/pump-four.entries"))
            .Select(line => line.Trim())
            .Where(line => line.Length > 0 && line[0] != '#'),
    ];

    internal JobRun Job { get; private set; }

    internal LocalStore Store => _store;

    /// <summary>Gives lines to line mode; its exit status.</summary>
    public int Lines(IEnumerable<string> lines)
    {
        using StringReader input = new(string.Join('\n', lines));
        return new LineRun(Job, new LineInput(input, isPiped: true, TextWriter.Null), TextWriter.Null).Run();
    }

    /// <summary>Gives the demo's lines up to the one that asserts a step for the nth time.</summary>
    public void UpTo(string step, int nth = 1)
    {
        int at = Entries
            .Select((line, i) => (line, i))
            .Where(l => l.line == $"@ {step}")
            .Select(l => l.i)
            .ElementAt(nth - 1);
        Assert.Equal(Status.Done, Lines(Entries.Take(at + 1)));
    }

    /// <summary>Closes the store and opens it and the job again, as after a restart.</summary>
    public void Reopen()
    {
        string job = Job.State.JobId;
        _store.Dispose();
        (LocalStore? store, string fault) = DemoShop.Open(_folder["shop"], "test");
        _store = store ?? throw new InvalidOperationException(fault);
        (JobRun? run, fault) = JobRun.Resume(_store, Machine.Time, job, DemoShop.Operator);
        Job = run ?? throw new InvalidOperationException(fault);
    }

    /// <summary>The trail's file.</summary>
    public string TrailFile =>
        Assert.Single(
            Directory.GetFiles(_folder["shop"], $"*{Job.State.JobId}*", SearchOption.AllDirectories),
            path => !path.EndsWith(".lock", StringComparison.Ordinal)
        );

    /// <summary>True when the whole store verifies.</summary>
    public bool Verifies => _store.Reader.ReadTrail(Job.State.JobId).Verdict is TrailVerdict.Holds;

    public void Dispose()
    {
        _store.Dispose();
        _folder.Dispose();
    }
}
