using System.CommandLine;
using System.Globalization;
using ProcRunner.Shop;
using ProcRunner.Store.Local;
using ProcRunner.Tui.Jobs;
using ProcRunner.Tui.Shell;

namespace ProcRunner.Tui.Commands;

/// <summary><c>export STAMP -o FILE</c>: a job with all that proves it, as one file.</summary>
internal static class ExportVerb
{
    /// <summary>The verb.</summary>
    public static Command Create()
    {
        Argument<string> stamp = new("stamp") { Description = "the job's stamp" };
        Option<string> file = new("--out", "-o")
        {
            Description = "the file to write; one that is there isn't written over",
            HelpName = "file",
            Required = true,
        };
        Command verb = new("export", "write a job with its trail, texts and people's public keys to one file")
        {
            stamp,
            file,
        };
        verb.SetAction(parsed =>
        {
            string wanted = parsed.GetValue(stamp)!.Trim();
            return Run(StoreOption.OfStamp(parsed, wanted), wanted, parsed.GetValue(file)!);
        });
        return verb;
    }

    private static int Run(string folder, string stamp, string path)
    {
        (StoreReader? reader, string fault) = ShopFloor.Read(folder);
        if (reader is null)
        {
            return Say.Usage(fault, "");
        }

        if (reader.ReadShop().Shop.JobsWithStamp(stamp).FirstOrDefault() is not { } job)
        {
            return Say.No($"There is no job stamped {stamp} in this shop.", "procrunner jobs lists them.");
        }

        (byte[]? bytes, fault) = JobFile.Of(reader, job.Id);
        if (bytes is null)
        {
            return Say.No(fault, $"procrunner verify {stamp} says what is wrong.");
        }

        if (OwnFile.Write(path, bytes) is { } notWritten)
        {
            return Say.Usage(notWritten, "");
        }

        Tell(path, bytes.Length, job);
        return Status.Done;
    }

    private static void Tell(string path, int length, ShopJob job)
    {
        Say.Line(string.Create(CultureInfo.InvariantCulture, $"Job {job.Stamp} is in {path}, {length} bytes."));
        Say.Line($"Whoever gets it checks it with: procrunner verify {Path.GetFileName(path)}");
        if (!job.IsClosedOut)
        {
            Say.Line("The job isn't closed out: what follows from here isn't in the file.");
        }
    }
}
