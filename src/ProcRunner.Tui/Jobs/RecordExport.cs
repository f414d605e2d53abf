using ProcRunner.Records;
using ProcRunner.Shop;
using ProcRunner.Store.Local;
using ProcRunner.Trail;
using ProcRunner.Tui.Shell;

namespace ProcRunner.Tui.Jobs;

/// <summary>Writes a job's build record to a file, if its trail holds.</summary>
internal static class RecordExport
{
    /// <summary>The endings in words.</summary>
    public static string Endings => string.Join(", ", RecordFile.Forms.Select(f => f.Ending));

    /// <summary>Writes it.</summary>
    /// <returns>Why it wasn't written; empty when it was.</returns>
    /// <exception cref="IOException">The file couldn't be written.</exception>
    /// <exception cref="OperationCanceledException">The writing was stopped.</exception>
    public static string Write(StoreReader reader, ShopJob job, string path, WritingProgress progress)
    {
        if (Broken(reader, job) is { } finding)
        {
            return $"No record is made of a trail that doesn't hold. {finding.Text}";
        }

        (JobAccount? account, string fault) = JobAccount.Read(reader, job.Id);
        if (account is null)
        {
            return fault;
        }

        OwnFile.Replace(path, file => RecordFile.Write(account.Record, path, file, progress));
        return "";
    }

    // The book too: a job's record names the shop's first key.
    private static StoreFinding? Broken(StoreReader reader, ShopJob job) =>
        JobCheck
            .Run(reader, reader.ReadShop().Shop, job, progress: null)
            .Where(c => c.Of == job.Id || c.Of == JobId.Shop)
            .SelectMany(c => c.Findings)
            .FirstOrDefault(f => f.IsBroken);
}
