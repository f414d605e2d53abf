using ProcRunner.Store.Local;
using ProcRunner.Trail;
using ProcRunner.Tui.Demo;
using ProcRunner.Tui.Jobs;
using ProcRunner.Tui.Shell;

namespace ProcRunner.Tui.Commands;

/// <summary><c>verify FILE</c>: an exported job by itself, without any store.</summary>
internal static class VerifyFile
{
    /// <summary>Checks a file; the exit status.</summary>
    public static int Run(string path, bool json)
    {
        if (ImportedJobs.ReadFile(path) is not { } file)
        {
            return Say.Usage($"{path} can't be read, or is larger than an exported job can be.", "");
        }

        (ExportedJob? job, JobCheck? check, string fault) = JobFile.Check(file);
        if (job is null || check is null)
        {
            return Say.No($"{path}: IT DOESN'T HOLD. {fault}");
        }

        bool demo = job.Shop == DemoShop.Name;
        if (json)
        {
            Say.Json(VerifyAnswer.Of([(check, job)], demo));
        }
        else
        {
            VerifyAnswer.Tell(check, job);
            if (check.Holds)
            {
                TellWhatItProves(job);
            }

            VerifyAnswer.TellOfDemo(demo, job.Shop);
        }

        return check.Holds ? Status.Done : Status.No;
    }

    /// <summary>What the file proves and what has to come another way.</summary>
    public static void TellWhatItProves(ExportedJob job)
    {
        bool closed = job.ReadShop().Jobs.GetValueOrDefault(job.JobId) is { IsClosedOut: true };
        Say.Line("Every key in it is certified up to the shop's first lead, whose key has this fingerprint:");
        foreach (Digest root in job.Roots)
        {
            Say.Line("  " + string.Join(' ', Enumerable.Range(0, 16).Select(i => root.ToString().Substring(i * 4, 4))));
        }

        Say.Line(
            "Compare that with the fingerprint on the paper record, or ask the shop for it: the file alone can't prove whose key it is."
        );
        if (closed && job.ReadTrail(job.JobId).Entries is [.., var last])
        {
            Say.Line($"Its proof code, to compare with the one on paper: {ProofCode.Of(last.Digest)}");
        }
        else
        {
            Say.Line("The job wasn't closed out when the file was made: later entries may exist.");
        }
    }
}
