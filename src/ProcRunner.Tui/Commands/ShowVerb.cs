using System.CommandLine;
using ProcRunner.Shop;
using ProcRunner.Store.Local;
using ProcRunner.Tui.Jobs;
using ProcRunner.Tui.Shell;

namespace ProcRunner.Tui.Commands;

/// <summary><c>show STAMP</c>: one job's state and final values.</summary>
internal static class ShowVerb
{
    /// <summary>The verb.</summary>
    public static Command Create()
    {
        Argument<string> stamp = new("stamp") { Description = "the job's stamp, or its proof code" };
        Option<bool> json = JsonOption.Create();
        Command verb = new("show", "one job: its state, final values, parts, decisions, sign-offs, notes, what is open")
        {
            stamp,
            json,
        };
        verb.SetAction(parsed =>
        {
            string wanted = parsed.GetValue(stamp)!.Trim();
            return Run(StoreOption.OfStamp(parsed, wanted), wanted, parsed.GetValue(json));
        });
        return verb;
    }

    private static int Run(string folder, string stamp, bool json)
    {
        (StoreReader? reader, string fault) = ShopFloor.Read(folder);
        if (reader is null)
        {
            return Say.Usage(fault, "");
        }

        ShopJob? job = reader.ReadShop().Shop.FindJob(stamp);
        ExportedJob? elsewhere = job is null ? new ImportedJobs(reader).WithStamp(stamp).FirstOrDefault().Job : null;
        if (job is null && elsewhere is null)
        {
            return Say.No($"There is no job stamped {stamp}.", "procrunner jobs lists them.");
        }

        if (elsewhere is not null)
        {
            Say.Aside($"FROM ELSEWHERE: a job of {elsewhere.Shop}, imported. It can only be looked at.");
            if (!JobCheck.OfExported(elsewhere).Holds)
            {
                return Say.No("Its file doesn't hold any more.", $"procrunner verify {stamp} says what is wrong.");
            }
        }

        (JobAccount? account, fault) = elsewhere is null
            ? JobAccount.Read(reader, job!.Id)
            : JobAccount.Read(elsewhere, elsewhere.JobId);
        if (account is null)
        {
            return Say.No(fault, $"procrunner verify {stamp} says what is wrong with its trail.");
        }

        if (json)
        {
            Say.Json(JobAccountJson.Of(account));
            return Status.Done;
        }

        foreach (string line in JobAccountLines.Of(account))
        {
            Say.Line(line);
        }

        return Status.Done;
    }
}
