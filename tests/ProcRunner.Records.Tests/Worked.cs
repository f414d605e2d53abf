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

    private static readonly Lazy<Worked> MadeBack = new(() =>
    {
        string[] lines = File.ReadAllLines(RepoRoot.PathOf("procedures/demo/pump-four.entries"));
        int teardown = Array.FindIndex(lines, l => l.StartsWith("@ guide", StringComparison.Ordinal));
        return new Worked(lines.Take(teardown), h => h with { Stamp = "DEMO-2" }, before: lines);
    });

    // The demo on a head whose inserts have to lie 0.006 to 0.010 in below the deck: both are set 0.008 in below it.
    private static readonly Lazy<Worked> MadePeened = new(() =>
    {
        string entries = File.ReadAllText(RepoRoot.PathOf("procedures/demo/pump-four.entries"));
        const string Deeper = "\n.2890\n.2889 .2890 .2889 .2889\n";
        return new Worked(
            entries
                .Replace(
                    "\n.2770\n.2770 .2771 .2770 .2770\n",
                    "\n.2840\n.2840 .2841 .2840 .2840\n",
                    StringComparison.Ordinal
                )
                .Replace("\n.2815\n.2815 .2816 .2815 .2815\n", Deeper, StringComparison.Ordinal)
                .Replace("\n.2815\n.2816 .2817 .2815 .2816\n", Deeper, StringComparison.Ordinal)
                .Split('\n'),
            head: spec =>
                spec.Replace(
                    "insert set-back: {low: 0.000, aim: 0.001, high: 0.002",
                    "insert set-back: {low: 0.006, aim: 0.008, high: 0.010",
                    StringComparison.Ordinal
                )
        );
    });

    private Worked(
        IEnumerable<string> lines,
        Func<JobHeader, JobHeader>? header = null,
        IEnumerable<string>? before = null,
        Func<string, string>? head = null
    )
    {
        using TempFolder folder = new();
        (LocalStore? opened, string fault) = DemoShop.Open(folder["shop"], "tests");
        using LocalStore store = opened ?? throw new InvalidOperationException(fault);
        OtherJobs others = OtherJobs.None;
        if (before is not null)
        {
            JobRun first = Open(store, h => h, others, head);
            Work(first, before);
            others = OtherJobs.Find(store, first.State.Job!.Stamp, linked: null).Jobs!;
            EarlierTrail = File.ReadAllText(Directory.GetFiles(folder["shop/jobs"], "*.trail").Single());
        }

        JobRun job = Open(store, header ?? (h => h), others, head);
        (Status, Output) = Work(job, lines);
        (JobAccount? account, fault) = JobAccount.Read(store.Reader, job.State.JobId);
        Record = (account ?? throw new InvalidOperationException(fault)).Record;
        Trail = File.ReadAllText(folder[$"shop/jobs/{job.State.JobId}.trail"]);
        Book = File.ReadAllText(folder["shop/book.trail"]);
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

    /// <summary>The demo's head come back: its teardown is done, held against the released demo.</summary>
    public static Worked Back => MadeBack.Value;

    /// <summary>The demo's head with inserts that have to lie below the deck.</summary>
    public static Worked Peened => MadePeened.Value;

    /// <summary>Every one of them.</summary>
    public static IEnumerable<(string Name, Worked Job)> All =>
        [("demo", Demo), ("conceded", Conceded), ("hostile", WithHostileText), ("practice", Practice), ("back", Back)];

    /// <summary>How the run ended.</summary>
    public int Status { get; }

    /// <summary>What the run said.</summary>
    public string Output { get; }

    /// <summary>Its record.</summary>
    public BuildRecord Record { get; }

    /// <summary>Its trail's file.</summary>
    public string Trail { get; }

    /// <summary>The shop book's file.</summary>
    public string Book { get; }

    /// <summary>The file of the trail of the job it came back from; empty for another.</summary>
    public string EarlierTrail { get; } = "";

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

    private static (PlanTexts? Texts, IReadOnlyList<Problems.Problem> Problems) PlanOf(Func<string, string> head) =>
        PlanTexts.Read(
            "procedures/two-valve-iron.yaml",
            File.ReadAllBytes(RepoRoot.PathOf("procedures/two-valve-iron.yaml")),
            "procedures/heads/pump-four.yaml",
            System.Text.Encoding.UTF8.GetBytes(
                head(File.ReadAllText(RepoRoot.PathOf("procedures/heads/pump-four.yaml")))
            )
        );

    private static (int Status, string Output) Work(JobRun job, IEnumerable<string> lines)
    {
        using StringReader input = new(string.Join('\n', lines));
        using StringWriter output = new();
        return (new LineRun(job, new LineInput(input, isPiped: true, output), output).Run(), output.ToString());
    }

    private static JobRun Open(
        LocalStore store,
        Func<JobHeader, JobHeader> header,
        OtherJobs others,
        Func<string, string>? head
    )
    {
        PlanTexts texts = (head is null ? DemoShop.ReadPlan() : PlanOf(head)).Texts!;
        JobHeader plain = new()
        {
            Stamp = "DEMO",
            ProcedureDigest = texts.ProcedureDigest.ToString(),
            HeadDigest = texts.HeadDigest.ToString(),
            Customer = "Lower Field irrigation (invented)",
            Complaint = "hard to start, low compression on 2",
            EarlierWork = "skimmed once by another shop, 0.009 in by the stamp beside the casting number",
        };
        (JobRun? job, string fault) = JobRun.Begin(
            store,
            Machine.Time,
            texts,
            header(plain),
            DemoShop.Operator,
            others
        );
        return job ?? throw new InvalidOperationException(fault);
    }
}
