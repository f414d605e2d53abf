using System.CommandLine;
using ProcRunner.Records;
using ProcRunner.Store.Local;
using ProcRunner.Tui.Jobs;
using ProcRunner.Tui.Shell;

namespace ProcRunner.Tui.Commands;

/// <summary><c>record STAMP -o FILE</c>: the build record, in the form that the file's ending picks.</summary>
internal static class RecordVerb
{
    /// <summary>The verb.</summary>
    public static Command Create()
    {
        Argument<string> stamp = new("stamp") { Description = "the job's stamp" };
        Option<string> output = new("--output", "-o")
        {
            Description = $"the file; its ending picks the form: {RecordExport.Endings}",
            HelpName = "file",
            Required = true,
        };
        Command verb = new("record", "the build record of a job: what was found, done and left, for customer and shop")
        {
            stamp,
            output,
        };
        verb.SetAction(parsed =>
        {
            string wanted = parsed.GetValue(stamp)!.Trim();
            return Run(StoreOption.OfStamp(parsed, wanted), wanted, parsed.GetValue(output)!);
        });
        return verb;
    }

    private static int Run(string folder, string stamp, string path)
    {
        if (!RecordFile.CanWrite(path))
        {
            return Say.Usage(
                $"{path} doesn't say which form it is to have.",
                $"The ending picks it: {string.Join(", ", RecordFile.Forms.Select(f => $"{f.Ending} {f.Meaning}"))}."
            );
        }

        (StoreReader? reader, string fault) = ShopFloor.Read(folder);
        if (reader is null)
        {
            return Say.Usage(fault, "");
        }

        if (reader.ReadShop().Shop.JobsWithStamp(stamp).FirstOrDefault() is not { } job)
        {
            return Say.No($"There is no job stamped {stamp}.", "procrunner jobs lists them.");
        }

        Progress progress = new(Machine.Time, Console.Error, "pieces written");
        using StopSignals signals = new();
        try
        {
            fault = RecordExport.Write(reader, job, path, new WritingProgress(progress.Report, signals.Token));
        }
        catch (OperationCanceledException)
        {
            return Say.No("Stopped. Nothing was written.");
        }

        if (fault.Length > 0)
        {
            return Say.No(fault, $"procrunner verify {stamp} checks its trail.");
        }

        Say.Line($"Written: {path}");
        return Status.Done;
    }
}
