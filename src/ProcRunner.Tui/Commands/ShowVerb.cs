using System.CommandLine;
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

        if (reader.ReadShop().Shop.FindJob(stamp) is not { } job)
        {
            return Say.No($"There is no job stamped {stamp}.", "procrunner jobs lists them.");
        }

        (JobAccount? account, fault) = JobAccount.Read(reader, job.Id);
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
