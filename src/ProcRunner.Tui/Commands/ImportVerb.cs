using System.CommandLine;
using ProcRunner.Store.Local;
using ProcRunner.Tui.Jobs;
using ProcRunner.Tui.Shell;

namespace ProcRunner.Tui.Commands;

/// <summary><c>import FILE</c>: a job from elsewhere, to be looked at here.</summary>
internal static class ImportVerb
{
    /// <summary>The verb.</summary>
    public static Command Create()
    {
        Argument<string> file = new("file") { Description = "an exported job" };
        Command verb = new("import", "keep an exported job from elsewhere, apart from this shop's own jobs") { file };
        verb.SetAction(parsed => Run(StoreOption.ToRead(parsed), parsed.GetValue(file)!));
        return verb;
    }

    private static int Run(string folder, string path)
    {
        (StoreReader? reader, string fault) = ShopFloor.Read(folder);
        if (reader is null)
        {
            return Say.Usage(fault, PeopleVerb.HowToFound);
        }

        if (ImportedJobs.ReadFile(path) is not { } file)
        {
            return Say.Usage($"{path} can't be read, or is larger than an exported job can be.", "");
        }

        (ExportedJob? job, JobCheck? check, fault) = JobFile.Check(file);
        if (job is null || check is null)
        {
            return Say.No($"{path} isn't imported. {fault}");
        }

        if (check.Findings.FirstOrDefault(f => f.IsBroken) is { } broken)
        {
            return Say.No(
                $"{path} isn't imported, since it doesn't hold. {broken.Text}",
                "procrunner verify with the file's name says all that is wrong."
            );
        }

        if (JobFile.Import(reader, file, job) is { Length: > 0 } why)
        {
            return Say.No(why);
        }

        Say.Line($"Job {job.Stamp} from {job.Shop} is kept here as a job from elsewhere.");
        VerifyFile.TellWhatItProves(job);
        Say.Line($"Look at it with: procrunner show {job.Stamp}. It can't be worked on here.");
        return Status.Done;
    }
}
