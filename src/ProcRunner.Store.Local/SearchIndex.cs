using System.Collections.Immutable;
using LiteDB;

namespace ProcRunner.Store.Local;

/// <summary>
/// The searchable copy of the trails: LiteDB with the collections jobs and readings. Nothing hangs on it: it is
/// checked before each use, and made again from the trails when it is missing, damaged or behind.
/// </summary>
/// <remarks>
/// LiteDB neither flushes a commit nor sums its pages, and two programs that open one file lose each other's data unseen. So
/// nobody keeps it open: it is used under <c>index.lock</c>, for one batch or one query, and <c>index.sum</c> holds the
/// length and SHA-256 of the whole file, written after each batch.
/// </remarks>
public sealed class SearchIndex
{
    /// <summary>How many jobs a search gives at most.</summary>
    public const int MostHits = 500;

    private readonly StorePaths _paths;
    private readonly IndexProjection _projection;
    private readonly Lock _gate = new();
    private readonly JobMemory _memory;
    private readonly IndexFile _file;

    internal SearchIndex(StorePaths paths, IndexProjection projection, bool looksOnce = false)
    {
        (_paths, _projection, _memory) = (paths, projection, new JobMemory(looksOnce));
        _file = new IndexFile(paths, projection, _memory);
    }

    /// <summary>Told how many jobs of how many have been read while the index is brought up to the trails.</summary>
    public Action<int, int>? Progress
    {
        get => _file.Progress;
        set => _file.Progress = value;
    }

    /// <summary>What went wrong with the index last, null when nothing did.</summary>
    public string? Trouble { get; private set; }

    /// <summary>A job's trail went on.</summary>
    internal void WentOn(string jobId) => _memory.WentOn(jobId);

    /// <summary>Brings the index up to the trails; false when that fails, with <see cref="Trouble"/> saying why.</summary>
    public bool TryRefresh()
    {
        lock (_gate)
        {
            bool fresh = _file.TryRefresh();
            Trouble = _file.Trouble;
            return fresh;
        }
    }

    /// <summary>All jobs, the latest activity first; empty when the index can't be used.</summary>
    public ImmutableArray<IndexedJob> All() => OrEmpty(In(catalogue => catalogue.Latest()));

    /// <summary>The jobs that fit, the best first.</summary>
    /// <param name="query">What is looked for.</param>
    /// <param name="most">How many are given.</param>
    /// <returns>The first of them, and how many there are.</returns>
    public (ImmutableArray<JobHit> Hits, int Count) Find(JobQuery query, int most = MostHits)
    {
        ArgumentNullException.ThrowIfNull(query);
        (ImmutableArray<JobHit> hits, int count) = In(catalogue => catalogue.Find(query, most));
        return (hits.IsDefault ? [] : hits, count);
    }

    /// <summary>The job with exactly this stamp, null when there is none.</summary>
    public IndexedJob? ByStamp(string stamp) => In(catalogue => catalogue.Jobs.FirstOrDefault(j => j.Stamp == stamp));

    /// <summary>A job by its id, null when there is none.</summary>
    public IndexedJob? ById(string jobId) => In(catalogue => catalogue.Find(jobId));

    /// <summary>The jobs that came back: those that were opened against this one.</summary>
    public ImmutableArray<IndexedJob> ComebacksOf(string jobId) =>
        OrEmpty(
            In(catalogue => catalogue.Jobs.Where(j => j.Earlier == jobId).OrderBy(j => j.Opened).ToImmutableArray())
        );

    /// <summary>The jobs on other heads of the same engine, whichever of them says so.</summary>
    public ImmutableArray<IndexedJob> LinkedWith(string jobId) =>
        OrEmpty(
            In(catalogue =>
                catalogue
                    .Jobs.Where(j =>
                        j.Id != jobId
                        && (j.Linked.Contains(jobId) || catalogue.Find(jobId)?.Linked.Contains(j.Id) == true)
                    )
                    .OrderBy(j => j.Opened)
                    .ToImmutableArray()
            )
        );

    /// <summary>The jobs that hold a part of exactly this number, and of this lot when one is given; the oldest first.</summary>
    public ImmutableArray<IndexedJob> Holding(string number, string? lot) =>
        OrEmpty(In(catalogue => catalogue.Holding(number, lot)));

    /// <summary>Every reading of a characteristic, practice too, in all jobs.</summary>
    public ImmutableArray<(IndexedJob Job, IndexedReading Reading)> ReadingsOf(string name) =>
        With<(IndexedJob, IndexedReading)>(
            (database, catalogue) =>
                IndexDocuments
                    .ReadingsOf(database, name)
                    .SelectMany(found =>
                        catalogue.Find(found.JobId) is { } job ? found.Readings.Select(r => (job, r)) : []
                    )
        );

    /// <summary>The names of all characteristics that were ever read.</summary>
    public ImmutableArray<string> ReadingNames() => With((database, _) => IndexDocuments.Names(database));

    /// <summary>Every reading that was taken with a gauge at or after a moment.</summary>
    public ImmutableArray<(IndexedJob Job, IndexedReading Reading)> ReadingsWith(string gauge, DateTimeOffset since) =>
        With<(IndexedJob, IndexedReading)>(
            (database, catalogue) =>
                catalogue
                    .Using(gauge, since)
                    .SelectMany(job =>
                        IndexDocuments
                            .ReadingsIn(database, job.Id)
                            .Where(r => r.Gauge == gauge && r.At >= since)
                            .OrderBy(r => r.At)
                            .Select(r => (job, r))
                    )
        );

    private ImmutableArray<T> With<T>(Func<LiteDatabase, JobCatalogue, IEnumerable<T>> query)
    {
        lock (_gate)
        {
            return OrEmpty(Use<ImmutableArray<T>>(database => [.. query(database, CatalogueFrom(database))]));
        }
    }

    private T? In<T>(Func<JobCatalogue, T> query)
    {
        lock (_gate)
        {
            if (_memory.Trusted is not { } catalogue)
            {
                return Use(database => query(CatalogueFrom(database)));
            }

            var reader = new StoreReader(_paths);
            foreach (string id in _memory.TakeUnseen())
            {
                _memory.Renew(id, _projection(id, reader.ReadTrail(id).Entries.Select(line => line.Entry)));
            }

            Trouble = null;
            return query(catalogue);
        }
    }

    private JobCatalogue CatalogueFrom(LiteDatabase database) => _memory.Jobs(() => IndexDocuments.All(database));

    private T? Use<T>(Func<LiteDatabase, T> query)
    {
        T? found = _file.Use(query);
        Trouble = _file.Trouble;
        return found;
    }

    private static ImmutableArray<T> OrEmpty<T>(ImmutableArray<T> found) => found.IsDefault ? [] : found;
}
