using System.CommandLine;
using ProcRunner.People;
using ProcRunner.Problems;
using ProcRunner.Runs;
using ProcRunner.Store.Local;
using ProcRunner.Tui.Demo;
using ProcRunner.Tui.Jobs;
using ProcRunner.Tui.Shell;

namespace ProcRunner.Tui.Commands;

/// <summary><c>open [STAMP]</c>: a new job on a head spec and a procedure.</summary>
internal static class OpenVerb
{
    /// <summary>The verb.</summary>
    public static Command Create()
    {
        Argument<string?> stamp = new("stamp")
        {
            Description = "the number stamped on the head; none: the next free number",
            Arity = ArgumentArity.ZeroOrOne,
        };
        Option<string> procedure = new("--procedure")
        {
            Description = "the procedure's file, or the name of one that comes with the program",
            HelpName = "file",
            Required = true,
        };
        Option<string> head = new("--head")
        {
            Description = "the head spec's file, or the name of one that comes with the program",
            HelpName = "file",
            Required = true,
        };
        Option<string> customer = Words("--customer", "whose head it is");
        Option<string> complaint = Words("--complaint", "what the customer complains of");
        Option<string> earlier = Words("--earlier", "what is known of earlier work");
        Option<string?> comeback = Stamp("--comeback-of", "the stamp of the earlier job on this head");
        Option<string?> linked = Stamp("--linked-with", "the stamp of another head of the same engine");
        Option<string?> by = ByOption.Create("id of the person who takes the head in");
        Command verb = new("open", "open a job")
        {
            stamp,
            procedure,
            head,
            customer,
            complaint,
            earlier,
            comeback,
            linked,
            by,
        };
        verb.SetAction(parsed =>
            Run(
                StoreOption.OfShop(parsed),
                (parsed.GetValue(procedure)!, parsed.GetValue(head)!),
                new JobHeader
                {
                    Stamp = parsed.GetValue(stamp)?.Trim() ?? "",
                    ProcedureDigest = "",
                    HeadDigest = "",
                    Customer = parsed.GetValue(customer) ?? "",
                    Complaint = parsed.GetValue(complaint) ?? "",
                    EarlierWork = parsed.GetValue(earlier) ?? "",
                },
                (parsed.GetValue(comeback)?.Trim(), parsed.GetValue(linked)?.Trim()),
                parsed.GetValue(by)
            )
        );
        return verb;
    }

    private static Option<string?> Stamp(string name, string description) =>
        new(name) { Description = description, HelpName = "stamp" };

    private static Option<string> Words(string name, string description) =>
        new(name) { Description = description, HelpName = "words" };

    private static int Run(
        string folder,
        (string Procedure, string Head) files,
        JobHeader job,
        (string? Earlier, string? Linked) others,
        string? by
    )
    {
        if (DemoShop.IsDemo(job.Stamp))
        {
            return Say.Usage($"{job.Stamp} is kept for the demo job.", "Choose another stamp.");
        }

        (PlanTexts? texts, string fault) = Texts(files.Procedure, files.Head);
        if (texts is null)
        {
            return Say.Usage(fault, "");
        }

        (LocalStore? opened, fault) = ShopFloor.Open(folder, "open");
        if (opened is null)
        {
            return Say.Usage(fault, PeopleVerb.HowToFound);
        }

        using LocalStore store = opened;
        (Person? person, fault) = ByOption.Pick(store.Shop, by, lead: false);
        if (person is null)
        {
            return Say.Usage(fault, "");
        }

        (OtherJobs? known, fault) = OtherJobs.Find(store, others.Earlier, others.Linked);
        if (known is null)
        {
            return Say.No(fault, "procrunner find looks for stamps like it.");
        }

        JobHeader header = job with
        {
            Stamp = job.Stamp.Length > 0 ? job.Stamp : store.ProposeStamp(),
            ProcedureDigest = texts.ProcedureDigest.ToString(),
            HeadDigest = texts.HeadDigest.ToString(),
        };
        (JobRun? run, fault) = JobRun.Begin(store, Machine.Time, texts, header, person.Id, known);
        if (run is null)
        {
            return Say.No(fault);
        }

        if (known.Linked is { } linked)
        {
            (JobRun? other, _) = JobRun.Resume(store, Machine.Time, linked.Job, person.Id);
            other?.StandIn(person.Id);
            if (other is not null && EngineHeads.Tell(other, run) is { } notTold)
            {
                Say.Aside($"{linked.Stamp} couldn't be told of this head: {notTold}");
            }
        }

        Say.Line($"Job {header.Stamp} is open: {texts.Plan.Head.Title}.");
        Say.Line($"Stamp {header.Stamp} on the head. Go on with: procrunner run {header.Stamp}");
        return Status.Done;
    }

    private static (PlanTexts? Texts, string Fault) Texts(string procedure, string head)
    {
        string? procedureFile = Find(procedure, Machine.ProceduresFolder);
        string? headFile = Find(head, Path.Combine(Machine.ProceduresFolder, "heads"));
        if (procedureFile is null || headFile is null)
        {
            return (null, $"There is no file {(procedureFile is null ? procedure : head)}.{Shipped()}");
        }

        (PlanTexts? texts, IReadOnlyList<Problem> problems) = PlanTexts.Read(
            procedureFile,
            File.ReadAllBytes(procedureFile),
            headFile,
            File.ReadAllBytes(headFile)
        );
        return (texts, problems.Count == 0 ? "" : $"{problems[0]} (procrunner check lists every problem.)");
    }

    private static string? Find(string name, string shippedIn)
    {
        string shipped = Path.Combine(shippedIn, name + ".yaml");
        bool isName = Path.GetFileName(name) == name;
        return File.Exists(name) ? Path.GetFullPath(name)
            : isName && File.Exists(shipped) ? shipped
            : null;
    }

    private static string Shipped()
    {
        if (!Directory.Exists(Machine.ProceduresFolder))
        {
            return "";
        }

        string Names(string folder) =>
            string.Join(", ", Directory.EnumerateFiles(folder, "*.yaml").Select(Path.GetFileNameWithoutExtension));
        string heads = Path.Combine(Machine.ProceduresFolder, "heads");
        return $" Those that come with the program: procedures {Names(Machine.ProceduresFolder)}; heads {Names(heads)}.";
    }
}
