using System.Collections.Immutable;
using LiteDB;
using ProcRunner.Trail;

namespace ProcRunner.Store.Local;

/// <summary>
/// The searchable copy of the trails: LiteDB with the collections jobs, parts and values. Nothing hangs on it: it is
/// checked before each use, and made again from the trails when it is missing, damaged or behind.
/// </summary>
/// <remarks>
/// LiteDB neither flushes a commit nor sums its pages, and two programs that open one file lose each other's data unseen. So
/// nobody keeps it open: it is used under <c>index.lock</c>, for one batch or one query, and <c>index.sum</c> holds the
/// length and SHA-256 of the whole file, written after each batch.
/// </remarks>
public sealed class SearchIndex
{
    private readonly StorePaths _paths;
    private readonly IndexProjection _projection;

    internal SearchIndex(StorePaths paths, IndexProjection projection)
    {
        _paths = paths;
        _projection = projection;
    }

    /// <summary>Told how many jobs of how many have been read while the index is brought up to the trails.</summary>
    public Action<int, int>? Progress { get; set; }

    /// <summary>What went wrong with the index last, null when nothing did.</summary>
    public string? Trouble { get; private set; }

    /// <summary>Brings the index up to the trails; false when that fails, with <see cref="Trouble"/> saying why.</summary>
    public bool TryRefresh() => Use<bool>(static _ => true);

    /// <summary>All jobs, the latest activity first; empty when the index can't be used.</summary>
    public ImmutableArray<IndexedJob> All() => Search("");

    /// <summary>The jobs whose stamp, customer, part or lot holds the text, whatever the case; latest activity first.</summary>
    public ImmutableArray<IndexedJob> Search(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        string wanted = text.ToUpperInvariant();
        return OrEmpty(
            Use<ImmutableArray<IndexedJob>>(database =>
                [
                    .. database
                        .GetCollection(IndexDocuments.Jobs)
                        .FindAll()
                        .Where(job => job[IndexDocuments.Words].AsString.Contains(wanted, StringComparison.Ordinal))
                        .OrderByDescending(job => job[IndexDocuments.LastActivity].AsInt64)
                        .Select(job => IndexDocuments.Read(database, job)),
                ]
            )
        );
    }

    /// <summary>The job with exactly this stamp, null when there is none.</summary>
    public IndexedJob? ByStamp(string stamp) =>
        Use(database =>
            database.GetCollection(IndexDocuments.Jobs).FindOne("$.stamp = @0", stamp) is { } job
                ? IndexDocuments.Read(database, job)
                : null
        );

    /// <summary>Every value of a characteristic, in all jobs.</summary>
    public ImmutableArray<(string JobId, IndexedValue Value)> ValuesOf(string name) =>
        OrEmpty(
            Use<ImmutableArray<(string, IndexedValue)>>(database =>
                [
                    .. database
                        .GetCollection(IndexDocuments.Values)
                        .Find(BsonExpression.Create("$.name = @0", name))
                        .Select(value => (value[IndexDocuments.Job].AsString, IndexDocuments.ReadValue(value))),
                ]
            )
        );

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

                BringUp();
                using LiteDatabase database = Open(readOnly: true);
                T found = query(database);
                Trouble = null;
                return found;
            }
            catch (Exception e) when (attempt == 1 && e is not OutOfMemoryException)
            {
                Trouble = e.Message;
            }
            catch (Exception e) when (e is LiteException || DiskTrouble.Is(e))
            {
                Trouble = e.Message;
                return default;
            }
        }
    }

    private void BringUp()
    {
        bool isNew = !File.Exists(_paths.Index);
        ImmutableArray<IndexChange> changes = FindChanges(isNew);
        if (changes.IsEmpty && !isNew)
        {
            return;
        }

        IndexSum.Forget(_paths);
        using (LiteDatabase database = Open(readOnly: false))
        {
            IndexDocuments.Prepare(database);
            var reader = new StoreReader(_paths);
            int done = 0;
            foreach (IndexChange change in changes)
            {
                IndexDocuments.Remove(database, change.JobId);
                if (change.State is { } state)
                {
                    IEnumerable<TrailEntry> entries = reader.ReadTrail(change.JobId).Entries.Select(line => line.Entry);
                    IndexDocuments.Write(database, change.JobId, state, _projection(change.JobId, entries));
                }

                Progress?.Invoke(++done, changes.Length);
            }
        }

        IndexSum.Write(_paths);
    }

    private ImmutableArray<IndexChange> FindChanges(bool isNew)
    {
        var there = _paths
            .JobIds()
            .ToDictionary(id => id, id => TrailTip.Read(_paths.Trail(id)), StringComparer.Ordinal);
        Dictionary<string, TrailTip> recorded = [];
        if (!isNew)
        {
            using LiteDatabase database = Open(readOnly: true);
            recorded = IndexDocuments.Tips(database);
        }

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
