using ProcRunner.Shop;
using ProcRunner.Store.Local;
using ProcRunner.Trail;

namespace ProcRunner.Tui.Jobs;

/// <summary>What checking one job, or the shop book, came to.</summary>
/// <param name="Of">The job's id, or <see cref="JobId.Shop"/>.</param>
/// <param name="Name">What people call it.</param>
/// <param name="Findings">What was found, the earliest entry that doesn't hold first.</param>
/// <param name="Signatures">How many signatures were checked.</param>
/// <param name="IsPractice">True for a job on a practice head.</param>
internal sealed record JobCheck(
    string Of,
    string Name,
    IReadOnlyList<StoreFinding> Findings,
    int Signatures,
    bool IsPractice
)
{
    /// <summary>True when nothing tells against it.</summary>
    public bool Holds => !Findings.Any(f => f.IsBroken);

    /// <summary>Checks the shop book and every job, or one.</summary>
    /// <param name="reader">The store.</param>
    /// <param name="shop">What its book comes to.</param>
    /// <param name="only">The one job, or null for all.</param>
    /// <param name="progress">Told how many of how many are done.</param>
    public static IReadOnlyList<JobCheck> Run(
        StoreReader reader,
        ShopState shop,
        ShopJob? only,
        Action<int, int>? progress
    )
    {
        IReadOnlyList<StoreFinding> found = only is null
            ? StoreCheck.All(reader, progress)
            : StoreCheck.Job(reader, only.Id);
        List<JobCheck> checks = [new(JobId.Shop, "Shop book", [.. found.Where(f => f.Of == JobId.Shop)], 0, false)];
        string[] ids = only is null ? [.. shop.Jobs.Keys.Union(reader.JobIds(), StringComparer.Ordinal)] : [only.Id];
        foreach (string id in ids)
        {
            string name = shop.Jobs.TryGetValue(id, out ShopJob? job) ? $"Job {job.Stamp}" : $"Job file {id}";
            checks.Add(Make(reader, id, name, found.Where(f => f.Of == id)));
        }

        return checks;
    }

    /// <summary>Checks an exported job by itself.</summary>
    public static JobCheck OfExported(ExportedJob job) =>
        Make(job, job.JobId, $"Job {job.Stamp}, from {job.Shop}", ExportedJobCheck.Of(job));

    private static JobCheck Make(ITrailReader reader, string id, string name, IEnumerable<StoreFinding> found)
    {
        SignatureCheck signatures = SignatureCheck.Of(reader, id);
        IEnumerable<StoreFinding> clock = ClockSetBack
            .In(reader.ReadTrail(id).Entries.Select(line => line.Entry))
            .Select(set => new StoreFinding(id, false, set.Entry, set.InWords()));
        StoreFinding[] findings =
        [
            .. found
                .Concat(signatures.Faults)
                .Concat(clock)
                .OrderBy(f => f.IsBroken ? 0 : 1)
                .ThenBy(f => f.Entry ?? long.MaxValue),
        ];
        return new(id, name, findings, signatures.Count, signatures.IsPractice);
    }
}
