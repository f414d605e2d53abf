using ProcRunner.Runs;
using ProcRunner.Store.Local;
using ProcRunner.Testing;
using ProcRunner.Tui.Demo;
using ProcRunner.Tui.Jobs;
using ProcRunner.Tui.Lines;
using ProcRunner.Tui.Shell;

namespace ProcRunner.Records.Tests;

/// <summary>Jobs of the demo shop, worked entry by entry on a real store, each made once for all tests.</summary>
internal sealed class Worked
{
    private static readonly Lazy<Worked> MadeDemo = new(() =>
        new Worked(File.ReadAllLines(RepoRoot.PathOf("procedures/demo/pump-four.entries")))
    );
    private static readonly Lazy<Worked> MadeConceded = new(() =>
        new Worked(File.ReadAllLines(RepoRoot.PathOf("tests/ProcRunner.Records.Tests/Jobs/conceded.entries")))
    );
    private static readonly Lazy<Worked> MadeHostile = new(() => new Worked(Hostile.Entries(), Hostile.Header));
    private static readonly Lazy<Worked> MadePractice = new(() =>
        new Worked(
            File.ReadLines(RepoRoot.PathOf("procedures/demo/pump-four.entries")).Take(40),
            h => h with { Practice = true }
        )
    );

    private Worked(IEnumerable<string> lines, Func<JobHeader, JobHeader>? header = null)
    {
        using TempFolder folder = new();
        (LocalStore? opened, string fault) = DemoShop.Open(folder["shop"], "tests");
        using LocalStore store = opened ?? throw new InvalidOperationException(fault);
        JobRun job = Open(store, header ?? (h => h));
        using StringReader input = new(string.Join('\n', lines));
        using StringWriter output = new();
        Status = new LineRun(job, new LineInput(input, isPiped: true, output), output).Run();
        Output = output.ToString();
        (JobAccount? account, fault) = JobAccount.Read(store.Reader, job.State.JobId);
        Record = (account ?? throw new InvalidOperationException(fault)).Record;
        Trail = File.ReadAllText(Directory.GetFiles(folder["shop/jobs"], "*.trail").Single());
        Texts = [.. Directory.GetFiles(folder["shop/texts"]).Select(File.ReadAllText)];
    }

    /// <summary>The demo, released.</summary>
    public static Worked Demo => MadeDemo.Value;

    /// <summary>The job with an overshoot, a concession and stale readings, released.</summary>
    public static Worked Conceded => MadeConceded.Value;

    /// <summary>A job with hostile text wherever a person types.</summary>
    public static Worked WithHostileText => MadeHostile.Value;

    /// <summary>A practice job under way.</summary>
    public static Worked Practice => MadePractice.Value;

    /// <summary>Every one of them.</summary>
    public static IEnumerable<(string Name, Worked Job)> All =>
        [("demo", Demo), ("conceded", Conceded), ("hostile", WithHostileText), ("practice", Practice)];

    /// <summary>How the run ended.</summary>
    public int Status { get; }

    /// <summary>What the run said.</summary>
    public string Output { get; }

    /// <summary>Its record.</summary>
    public BuildRecord Record { get; }

    /// <summary>Its trail's file.</summary>
    public string Trail { get; }

    /// <summary>The texts it pins.</summary>
    public IReadOnlyList<string> Texts { get; }

    /// <summary>The record in a form.</summary>
    public byte[] Written(string ending)
    {
        using MemoryStream to = new();
        RecordFile.Write(Record, "record" + ending, to, WritingProgress.None);
        return to.ToArray();
    }

    /// <summary>The record in a form that is text.</summary>
    public string Text(string ending) => System.Text.Encoding.UTF8.GetString(Written(ending));

    private static JobRun Open(LocalStore store, Func<JobHeader, JobHeader> header)
    {
        PlanTexts texts = DemoShop.ReadPlan().Texts!;
        JobHeader plain = new()
        {
            Stamp = "DEMO",
            ProcedureDigest = texts.ProcedureDigest.ToString(),
            HeadDigest = texts.HeadDigest.ToString(),
            Customer = "Lower Field irrigation (invented)",
            Complaint = "hard to start, low compression on 2",
            EarlierWork = "skimmed once by another shop, 0.009 in by the stamp beside the casting number",
        };
        (JobRun? job, string fault) = JobRun.Begin(store, Machine.Time, texts, header(plain), DemoShop.Operator);
        return job ?? throw new InvalidOperationException(fault);
    }
}
