using System.CommandLine;
using ProcRunner.Runs;
using ProcRunner.Shop;
using ProcRunner.Store.Local;
using ProcRunner.Tui.Demo;
using ProcRunner.Tui.Jobs;
using ProcRunner.Tui.Lines;
using ProcRunner.Tui.Shell;

namespace ProcRunner.Tui.Commands;

/// <summary><c>run [STAMP]</c>: one head from teardown to release.</summary>
internal static class RunVerb
{
    /// <summary>The verb.</summary>
    public static Command Create()
    {
        Argument<string> stamp = new("stamp")
        {
            Description = "the job's stamp; DEMO is the invented head of the demo shop",
            DefaultValueFactory = _ => DemoShop.Stamp,
        };
        Option<bool> plain = new("--plain") { Description = "line mode: prompts out, one entry a line in" };
        Option<string?> who = new("--as") { Description = "id of the person at the machine", HelpName = "person" };
        Option<bool> walks = new("--clock-walks")
        {
            Description = "demo job on piped lines: its times walk through invented working days that end now",
        };
        Command verb = new("run", "work on a job") { stamp, plain, who, walks };
        verb.SetAction(parsed =>
        {
            string wanted = parsed.GetValue(stamp)!.Trim();
            if (parsed.GetValue(walks))
            {
                return Walk(wanted, parsed.GetValue(who), StoreOption.OfStamp(parsed, wanted));
            }

            if (parsed.GetValue(plain) || Console.IsInputRedirected)
            {
                return Run(wanted, parsed.GetValue(who), StoreOption.OfStamp(parsed, wanted));
            }

            return parsed.GetValue(who) is null
                ? ScreenRun.Open(StoreOption.Given(parsed), wanted)
                : Say.Usage("--as goes with --plain: the screen asks who is at the machine.", "");
        });
        return verb;
    }

    // Only where all is invented: no way leads from here to the trail of a real shop.
    private static int Walk(string stamp, string? who, string folder)
    {
        bool isDemo =
            DemoShop.IsDemo(stamp)
            && (
                !StoreFolder.Exists(folder)
                || ShopFloor.Read(folder).Reader is { } reader && DemoShop.Is(reader.ReadShop().Shop)
            );
        if (!isDemo || !Console.IsInputRedirected)
        {
            return Say.Usage(
                "--clock-walks is for the demo job in the demo shop, on piped lines.",
                "procrunner run DEMO --clock-walks < procedures/demo/pump-four.entries"
            );
        }

        string[] lines = Console.In.ReadToEnd().Split('\n');
        DemoClock clock = new(Machine.Time.GetLocalNow(), Machine.Time.LocalTimeZone, lines);
        Machine.GoBy(clock);
        return Run(stamp, who, folder, new WalkedLines(lines, clock));
    }

    /// <summary>Works on a job in line mode; the exit status.</summary>
    /// <param name="stamp">The job's stamp.</param>
    /// <param name="who">Who is at the machine, or null.</param>
    /// <param name="folder">The store's folder.</param>
    /// <param name="lines">The lines that are entered; null: from the console.</param>
    public static int Run(string stamp, string? who, string folder, TextReader? lines = null)
    {
        bool demo = DemoShop.IsDemo(stamp);
        (LocalStore? opened, string fault) = demo
            ? DemoShop.Open(folder, $"run {stamp}")
            : ShopFloor.Open(folder, $"run {stamp}");
        if (opened is null)
        {
            // Where there is a store, the fault says what to do.
            return Say.Usage(
                fault,
                demo || StoreFolder.Exists(folder)
                    ? ""
                    : $"{PeopleVerb.HowToFound} To try the program: procrunner run DEMO"
            );
        }

        using LocalStore store = opened;
        foreach (StoreFinding finding in store.Findings)
        {
            Say.Aside(finding.Text);
        }

        (JobRun? job, fault) = demo ? DemoShop.OpenJob(store, stamp) : Resume(store, stamp, who);
        job = job is not null && who is not null ? InHandsOf(job, who, out fault) : job;
        if (job is null)
        {
            return Say.Usage(fault, "");
        }

        LineInput input = new(lines ?? Console.In, Console.IsInputRedirected, Console.Out);
        return new LineRun(job, input, Console.Out).Run();
    }

    private static (JobRun? Run, string Fault) Resume(LocalStore store, string stamp, string? who)
    {
        if (store.Shop.JobsWithStamp(stamp).FirstOrDefault() is not { } job)
        {
            return new ImportedJobs(store.Reader).WithStamp(stamp).IsEmpty
                ? (null, $"There is no job stamped {stamp}: see procrunner jobs, or open one with procrunner open.")
                : (null, $"Job {stamp} is from elsewhere: it can be looked at (procrunner show), not worked on here.");
        }

        string[] present = Present(store.Shop);
        string? person = who ?? (present.Length == 1 ? present[0] : null);
        return person is not null && present.Contains(person)
            ? JobRun.Resume(store, Machine.Time, job.Id, person)
            : (null, $"Say who is at the machine: --as with one of {string.Join(", ", present)}.");
    }

    // Who says that they are at the machine while the job is in another's hands takes it over, and the trail says so.
    private static JobRun? InHandsOf(JobRun job, string who, out string fault)
    {
        string[] present = Present(job.Shop);
        fault = present.Contains(who)
            ? ""
            : $"Nobody here is called {who}: --as takes one of {string.Join(", ", present)}.";
        if (fault.Length == 0 && job.Person != who && job.Do(new RunCommand.HandOver(who)) is JobAnswer.Refused no)
        {
            fault = no.Why;
        }

        return fault.Length == 0 ? job : null;
    }

    private static string[] Present(ShopState shop) =>
        [.. shop.People.Values.Where(p => p.RetiredAt is null).Select(p => p.Id)];
}
