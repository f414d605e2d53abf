using ProcRunner.Quantities;
using ProcRunner.Runs;
using ProcRunner.Store.Local;
using ProcRunner.Tui.Demo;
using ProcRunner.Tui.Jobs;
using ProcRunner.Tui.Tests.Shop;

namespace ProcRunner.Tui.Tests.History;

/// <summary>A shop with a past: two heads that were built, one of them back, and the other head of its engine. All invented.</summary>
internal sealed class PastBench : IDisposable
{
    private static readonly decimal[] Recessions =
    [
        0.0581m,
        0.0574m,
        0.0588m,
        0.0579m,
        0.0586m,
        0.0577m,
        0.0632m,
        0.0583m,
    ];

    public PastBench()
    {
        JobRun first = Shop.Open("2417", "Upper Field irrigation (invented)");
        Build(first, 0m);
        Fit(first);
        Shop.Time.Advance(TimeSpan.FromDays(2));
        JobRun second = Shop.Open("2418", "Mill Lane haulage (invented)");
        Build(second, 0.0004m);
        Note(second, "done, pilot 8.5, cutter K4 edge 2");
        Shop.Time.Advance(TimeSpan.FromDays(300));
        Back = OpenBack("3020");
        Read(Back, "teardown", 0, 0.0671m);
        Shop.Time.Advance(TimeSpan.FromHours(1));
    }

    public ShopBench Shop { get; } = new();

    /// <summary>The head that came back, linked with the other one of its engine.</summary>
    public JobRun Back { get; }

    public void Dispose() => Shop.Dispose();

    private JobRun OpenBack(string stamp)
    {
        (OtherJobs? others, _) = OtherJobs.Find(Shop.Store, "2417", "2418");
        (PlanTexts? texts, _) = DemoShop.ReadPlan();
        JobHeader header = new()
        {
            Stamp = stamp,
            ProcedureDigest = texts!.ProcedureDigest.ToString(),
            HeadDigest = texts.HeadDigest.ToString(),
            Customer = "Upper Field irrigation (invented)",
            Complaint = "uses water again",
        };
        (JobRun? run, string fault) = Shop.Session.Begin(texts, header, others);
        return run ?? throw new InvalidOperationException(fault);
    }

    private void Build(JobRun run, decimal more)
    {
        for (int position = 0; position < Recessions.Length; position++)
        {
            Shop.Time.Advance(TimeSpan.FromMinutes(9));
            Read(run, "seat cut", position, Recessions[position] + more);
        }
    }

    private void Read(JobRun run, string stage, int position, decimal value)
    {
        Plan plan = run.State.Plan;
        int step = plan.Takers(plan.CharacteristicIndex("recession"))
            .First(s => plan.Steps[s].FullName.StartsWith(stage, StringComparison.Ordinal));
        Quantity In(decimal amount) => new(amount, Units.Inch);
        Verdict verdict = value > 0.0640m ? Verdict.Out : Verdict.In;
        Write(
            run,
            new RunEvent.ReadingTaken(
                new At(step, position),
                new TakenReading
                {
                    Characteristic = "recession",
                    Typed = value.ToString(System.Globalization.CultureInfo.InvariantCulture),
                    Places = [new("", In(value))],
                    Value = In(value),
                    Gauge = "D1",
                    Judgement = new(verdict, In(0.0520m), In(0.0580m), In(0.0640m), "maker", ""),
                    Worked = [],
                }
            )
        );
    }

    private void Fit(JobRun run)
    {
        int step = run.State.Plan.Steps.ToList().FindIndex(s => s.Work is Procedures.StepWork.Fit && !s.OfHead);
        Write(run, new RunEvent.PartFitted(new At(step, 2), "guide", "G-77", "LOT 4711"));
    }

    private static void Note(JobRun run, string text) =>
        Assert.IsType<JobAnswer.Recorded>(run.Do(new RunCommand.Note(null, text)));

    // The trail and the run in memory, as if it had been decided.
    private void Write(JobRun run, RunEvent happened)
    {
        EntryDraft draft = new("vale", [RunEventFormat.Write(run.State.Plan, happened)]);
        AppendResult.Written written = Assert.IsType<AppendResult.Written>(Shop.Store.Append(run.State.JobId, draft));
        run.State.Apply(written.Entry.Sequence, [happened]);
    }
}
