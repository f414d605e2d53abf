using ProcRunner.Runs;
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
    private readonly LocalStore _store;

    public DemoJob(bool practice = false)
    {
        (LocalStore? store, string fault) = DemoShop.Open(_folder["shop"], "test");
        _store = store ?? throw new InvalidOperationException(fault);
        (PlanTexts? texts, _) = DemoShop.ReadPlan();
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

    /// <summary>Opens the job anew from its trail, as after a restart.</summary>
    public void Resume()
    {
        (JobRun? run, string fault) = JobRun.Resume(_store, Machine.Time, Job.State.JobId, DemoShop.Operator);
        Job = run ?? throw new InvalidOperationException(fault);
    }

    /// <summary>True when the whole store verifies.</summary>
    public bool Verifies => _store.Reader.ReadTrail(Job.State.JobId).Verdict is TrailVerdict.Holds;

    public void Dispose()
    {
        _store.Dispose();
        _folder.Dispose();
    }
}
