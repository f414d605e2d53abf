using System.CommandLine;
using ProcRunner.Store.Local;
using ProcRunner.Tui.Shell;

namespace ProcRunner.Tui.Commands;

/// <summary><c>backup FOLDER</c>: a copy of the store, while somebody works on it or not.</summary>
internal static class BackupVerb
{
    /// <summary>The verb.</summary>
    public static Command Create()
    {
        Argument<string> folder = new("folder") { Description = "where to: a folder that is empty or isn't there" };
        Option<bool> agreed = new("--what-agrees")
        {
            Description =
                "of a folder whose files are of different moments, since it was copied while somebody worked: take what they agree on, and say what is left out",
        };
        Command verb = new(
            "backup",
            "copy the store, also while somebody works on it; the copy is read back and checked"
        )
        {
            folder,
            agreed,
        };
        verb.SetAction(parsed =>
            Run(StoreOption.OfShop(parsed), Path.GetFullPath(parsed.GetValue(folder)!), parsed.GetValue(agreed))
        );
        return verb;
    }

    private static int Run(string from, string to, bool agreed)
    {
        (StoreReader? reader, string fault) = ShopFloor.Read(from);
        if (reader is null)
        {
            return Say.Usage(fault, "");
        }

        Progress progress = new(Machine.Time, Console.Error, "jobs copied");
        List<string> leftOut = [];
        if (StoreCopy.Make(reader, to, progress.Report, agreed ? leftOut.Add : null) is { } trouble)
        {
            return Say.No(
                $"There is no good copy in {to}: {trouble}",
                $"procrunner verify says what holds in the store itself.{(agreed ? "" : " Was it copied while somebody worked? --what-agrees takes what its files agree on.")}"
            );
        }

        foreach (string line in leftOut)
        {
            Say.Line($"LEFT OUT: {line}");
        }

        Say.Line($"Copied to {to}, read back and checked. To use it: procrunner --store {to}");
        return Status.Done;
    }
}
