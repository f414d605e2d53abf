using System.Collections.Immutable;
using LiteDB;
using ProcRunner.Trail;

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

    // Jobs written between two commits.
    private const int Batch = 200;

    private readonly StorePaths _paths;
    private readonly IndexProjection _projection;
    private readonly Lock _gate = new();
    private readonly Lock _marks = new();
    private readonly HashSet<string> _unseen = new(StringComparer.Ordinal);
    private readonly HashSet<string> _unwritten = new(StringComparer.Ordinal);
    private JobCatalogue? _catalogue;
    private string? _sum;
    private bool _isLookedThrough;

    internal SearchIndex(StorePaths paths, IndexProjection projection)
    {
        _paths = paths;
        _projection = projection;
    }

    /// <summary>Told how many jobs of how many have been read while the index is brought up to the trails.</summary>
    public Action<int, int>? Progress { get; set; }

    /// <summary>What went wrong with the index last, null when nothing did.</summary>
    public string? Trouble { get; private set; }

    /// <summary>
    /// True where this program alone writes the trails and says which job went on: then the trails are looked at once, and
    /// jobs are found in memory from there on.
    /// </summary>
    internal bool IsWriters { get; init; }

    /// <summary>A job's trail went on.</summary>
    internal void WentOn(string jobId)
    {
        // Not the gate: whoever writes an entry doesn't wait for an index that is being made.
        lock (_marks)
        {
            _unseen.Add(jobId);
            _unwritten.Add(jobId);
        }
    }

    /// <summary>Brings the index up to the trails; false when that fails, with <see cref="Trouble"/> saying why.</summary>
    public bool TryRefresh()
    {
        lock (_gate)
        {
            return Use<bool>(static _ => true);
        }
    }

    /// <summary>All jobs, the latest activity first; empty when the index can't be used.</summary>
    public ImmutableArray<IndexedJob> All() =>
        OrEmpty(In(catalogue => catalogue.Jobs.OrderByDescending(job => job.LastActivity).ToImmutableArray()));

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
        OrEmpty(In(catalogue => catalogue.Jobs.Where(j => j.Earlier == jobId).OrderBy(j => j.Opened).ToImmutableArray()));

    /// <summary>The jobs on other heads of the same engine, whichever of them says so.</summary>
    public ImmutableArray<IndexedJob> LinkedWith(string jobId) =>
        OrEmpty(
            In(catalogue =>
                catalogue
                    .Jobs.Where(j =>
                        j.Id != jobId && (j.Linked.Contains(jobId) || catalogue.Find(jobId)?.Linked.Contains(j.Id) == true)
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
            return OrEmpty(
                Use<ImmutableArray<T>>(database => [.. query(database, CatalogueFrom(database))])
            );
        }
    }

    private T? In<T>(Func<JobCatalogue, T> query)
    {
        lock (_gate)
        {
            if (!IsWriters || _catalogue is not { } catalogue)
            {
                return Use(database => query(CatalogueFrom(database)));
            }

            var reader = new StoreReader(_paths);
            foreach (string id in Taken(_unseen))
            {
                Renew(catalogue, id, Project(reader, id));
            }

            Trouble = null;
            return query(catalogue);
        }
    }

    private string[] Taken(HashSet<string> marks)
    {
        lock (_marks)
        {
            string[] taken = [.. marks];
            marks.Clear();
            return taken;
        }
    }

    private IndexedJob? Project(StoreReader reader, string id) =>
        _projection(id, reader.ReadTrail(id).Entries.Select(line => line.Entry));

    private static void Renew(JobCatalogue catalogue, string id, IndexedJob? job)
    {
        if (job is null)
        {
            catalogue.Remove(id);
        }
        else
        {
            catalogue.Put(job);
        }
    }

    // The jobs are read into memory once; after that they follow what is written.
    private JobCatalogue CatalogueFrom(LiteDatabase database)
    {
        if (_catalogue is null)
        {
            Taken(_unseen);
            JobCatalogue catalogue = new();
            foreach (IndexedJob job in IndexDocuments.All(database))
            {
                catalogue.Put(job);
            }

            _catalogue = catalogue;
        }

        return _catalogue;
    }

    private static ImmutableArray<T> OrEmpty<T>(ImmutableArray<T> found) => found.IsDefault ? [] : found;

    private T? Use<T>(Func<LiteDatabase, T> query)
    {
        using FileStream? held = IndexLock.Take(_paths.IndexLock);
        if (held is null)
        {
            Trouble = "the index is in use";
            return default;
        }

        // What damage does inside LiteDB can't be foreseen, and none of it matters: the second time the index is new.
        for (int attempt = 1; ; attempt++)
        {
            try
            {
                if (attempt == 2 || !IndexSum.Matches(_paths))
                {
                    IndexSum.Clear(_paths);
                }

                ForgetUnlessAsLeft();
                BringUp();
                using LiteDatabase database = Open(readOnly: true);
                T found = query(database);
                Trouble = null;
                return found;
            }
            catch (Exception e) when (attempt == 1 && e is not OutOfMemoryException)
            {
                (Trouble, _isLookedThrough) = (e.Message, false);
            }
            catch (Exception e) when (e is LiteException || Disk.IsTrouble(e))
            {
                (Trouble, _isLookedThrough) = (e.Message, false);
                return default;
            }
        }
    }

    // Somebody else wrote the index, or put another in its place.
    private void ForgetUnlessAsLeft()
    {
        string? sum = IndexSum.Read(_paths);
        if (sum is null || sum != _sum)
        {
            _isLookedThrough = false;
            _catalogue = IsWriters ? _catalogue : null;
        }

        _sum = sum;
    }

    private void BringUp()
    {
        bool isNew = !File.Exists(_paths.Index);
        string[] wentOn = Taken(_unwritten);
        ImmutableArray<IndexChange> changes = FindChanges(isNew, wentOn);
        if (changes.IsEmpty && !isNew)
        {
            return;
        }

        IndexSum.Forget(_paths);
        using (LiteDatabase database = Open(readOnly: false))
        {
            Write(database, changes, isNew);
        }

        IndexSum.Write(_paths);
        _sum = IndexSum.Read(_paths);
    }

    private void Write(LiteDatabase database, ImmutableArray<IndexChange> changes, bool isNew)
    {
        var reader = new StoreReader(_paths);
        for (int done = 0; done < changes.Length; )
        {
            database.BeginTrans();
            int end = Math.Min(changes.Length, done + Batch);
            while (done < end)
            {
                IndexChange change = changes[done];
                if (!isNew)
                {
                    IndexDocuments.Remove(database, change.JobId);
                }

                IndexedJob? job = change.State is null ? null : Project(reader, change.JobId);
                if (change.State is { } state)
                {
                    IndexDocuments.Write(database, change.JobId, state, job);
                }

                if (_catalogue is { } catalogue)
                {
                    Renew(catalogue, change.JobId, job);
                }

                done++;
                Progress?.Invoke(done, changes.Length);
            }

            database.Commit();
        }
    }

    private ImmutableArray<IndexChange> FindChanges(bool isNew, string[] wentOn)
    {
        if (!isNew && _isLookedThrough)
        {
            return [.. wentOn.Select(id => new IndexChange(id, TrailTip.Read(_paths.Trail(id))))];
        }

        var there = _paths
            .JobIds()
            .ToDictionary(id => id, id => TrailTip.Read(_paths.Trail(id)), StringComparer.Ordinal);
        Dictionary<string, TrailTip> recorded = [];
        if (!isNew)
        {
            using LiteDatabase database = Open(readOnly: true);
            recorded = IndexDocuments.Tips(database);
        }

        _isLookedThrough = IsWriters;
        return
        [
            .. there
                .Where(pair => recorded.GetValueOrDefault(pair.Key) != pair.Value)
                .Select(pair => new IndexChange(pair.Key, pair.Value)),
            .. recorded.Keys.Where(id => !there.ContainsKey(id)).Select(id => new IndexChange(id, null)),
        ];
    }

    private LiteDatabase Open(bool readOnly)
    {
        if (!readOnly && !File.Exists(_paths.Index))
        {
            Disk.OpenShared(_paths.Index, FileMode.CreateNew, FileAccess.Write, FileShare.None).Dispose();
        }

        return new(
            new ConnectionString
            {
                Filename = _paths.Index,
                Connection = ConnectionType.Direct,
                ReadOnly = readOnly,
                Collation = Collation.Binary,
            }
        );
    }
}
