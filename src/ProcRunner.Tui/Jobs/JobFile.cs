using ProcRunner.Records;
using ProcRunner.Runs;
using ProcRunner.Store.Local;
using ProcRunner.Trail;

namespace ProcRunner.Tui.Jobs;

/// <summary>A job out of a store as one file, and such a file into another store.</summary>
internal static class JobFile
{
    /// <summary>The file of a job; null with the reason when it doesn't hold.</summary>
    public static (byte[]? File, string Fault) Of(StoreReader reader, string jobId)
    {
        HashSet<string> people = new(StringComparer.Ordinal);
        (RunState? state, string fault) = JobReading.Fold(
            reader,
            jobId,
            reader.ReadTrail(jobId).Entries.Select(line => line.Entry),
            (_, entry, events) => people.UnionWith(Named(entry, events))
        );
        if (state is null)
        {
            return (null, fault);
        }

        (ExportedJob? job, fault) = JobExport.Take(reader, jobId, people);
        if (job is null)
        {
            return (null, fault);
        }

        byte[] file = ExportFile.Write(job);
        return file.Length <= ExportFile.MostBytes ? (file, "") : (null, "The job is too large for one file.");
    }

    /// <summary>Reads a file; null with the reason when there is nothing in it that could be a job.</summary>
    public static (ExportedJob? Job, JobCheck? Check, string Fault) Check(byte[] file)
    {
        (ExportedJob? job, string fault) = ExportFile.Read(file);
        if (job is null)
        {
            return (null, null, fault);
        }

        JobCheck check = JobCheck.OfExported(job);
        return fault.Length == 0
            ? (job, check, "")
            : (job, check with { Findings = [.. check.Findings, new(job.JobId, true, null, fault)] }, "");
    }

    /// <summary>Keeps a file in a store, apart from the store's own jobs.</summary>
    /// <returns>Why it isn't taken; empty when it is, or was there already.</returns>
    public static string Import(StoreReader reader, byte[] file, ExportedJob job)
    {
        ImportedJobs kept = new(reader);
        if (kept.Has(file))
        {
            return "";
        }

        if (reader.JobIds().Contains(job.JobId))
        {
            return "The job is this shop's own: it isn't imported over itself.";
        }

        foreach ((string _, ExportedJob there) in kept.All().Where(k => k.Job.JobId == job.JobId))
        {
            if (!Continues(there, job) && !Continues(job, there))
            {
                return "The same job is here already, with another trail: both can't be true. Nothing was imported.";
            }
        }

        kept.Put(file);
        return "";
    }

    /// <summary>Checks every job from elsewhere that a store keeps; one whose file can't be read doesn't hold.</summary>
    public static IEnumerable<(JobCheck Check, ITrailReader Reader)> CheckKept(StoreReader reader)
    {
        foreach (string path in new ImportedJobs(reader).Files())
        {
            (ExportedJob? job, JobCheck? check, string fault) = ImportedJobs.ReadFile(path) is { } file
                ? Check(file)
                : (null, null, "The file can't be read.");
            yield return job is not null && check is not null
                ? (check, job)
                : (
                    new(
                        "",
                        $"Job from elsewhere, {Path.GetFileName(path)}",
                        [new("", true, null, fault)],
                        Signatures: 0,
                        IsPractice: false
                    ),
                    reader
                );
        }
    }

    private static bool Continues(ExportedJob shorter, ExportedJob longer) =>
        longer.Trail.Span.StartsWith(shorter.Trail.Span);

    private static IEnumerable<string> Named(TrailEntry entry, IReadOnlyList<RunEvent> events)
    {
        yield return entry.Operator;
        foreach (RunEvent happened in events)
        {
            if (happened is RunEvent.HandedOver over)
            {
                yield return over.To;
            }

            if (JobMark.Of(entry.Sequence, happened) is { } mark)
            {
                yield return mark.Mark.Person;
                yield return mark.Beside?.Person ?? "";
            }
        }
    }
}
