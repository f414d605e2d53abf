using System.Collections.Immutable;
using LiteDB;

namespace ProcRunner.Store.Local;

/// <summary>
/// The file behind the search index: used under its lock, checked before each use, brought up to the trails, made again from
/// them when it is missing or damaged. Where it can't be kept (a disk that is read-only or full, another program that is just making
/// it), the same is made in memory for one query.
/// </summary>
internal sealed class IndexFile(StorePaths paths, IndexProjection projection, JobMemory jobs)
{
    // A query takes milliseconds; whoever has the lock for longer is making the whole index, and nobody waits for that.
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(1);

    // Jobs written between two commits.
    private const int Batch = 200;

    /// <summary>Told how many jobs of how many have been read while the index is brought up to the trails.</summary>
    public Action<int, int>? Progress { get; set; }

    /// <summary>What went wrong last, null when nothing did.</summary>
    public string? Trouble { get; private set; }

    /// <summary>Brings the file up to the trails; false when that fails, with <see cref="Trouble"/> saying why.</summary>
    public bool TryRefresh() => TryUse(static _ => true, out _);

    /// <summary>Asks the index; nothing, with <see cref="Trouble"/> saying why, when not even the trails can be read.</summary>
    public T? Use<T>(Func<LiteDatabase, T> query) => TryUse(query, out T? found) ? found : WithoutFile(query);

    private bool TryUse<T>(Func<LiteDatabase, T> query, out T? found)
    {
        found = default;
        (FileStream? held, string why) = IndexLock.Take(paths.IndexLock, Patience);
        using FileStream? whileHeld = held;
        if (held is null)
        {
            Trouble = why;
            return false;
        }

        // What damage does inside LiteDB can't be foreseen, and none of it matters: the second time the index is new.
        for (int attempt = 1; ; attempt++)
        {
            try
            {
                if (attempt == 2 || !IndexSum.Matches(paths))
                {
                    IndexSum.Clear(paths);
                }

                jobs.Found(IndexSum.Read(paths));
                BringUp();
                using LiteDatabase database = Open(readOnly: true);
                found = query(database);
                Trouble = null;
                return true;
            }
            catch (Exception e) when (attempt == 1 && e is not OutOfMemoryException)
            {
                Trouble = DiskTrouble.InWords(e);
                jobs.Doubt();
            }
            catch (Exception e) when (e is LiteException || DiskTrouble.Is(e))
            {
                Trouble = DiskTrouble.InWords(e);
                jobs.Doubt();
                return false;
            }
        }
    }

    private T? WithoutFile<T>(Func<LiteDatabase, T> query)
    {
        try
        {
            // A folder that is gone isn't one without jobs.
            if (!File.Exists(paths.Format))
            {
                throw new DirectoryNotFoundException();
            }

            using LiteDatabase memory = new(
                new ConnectionString { Filename = ":memory:", Collation = Collation.Binary }
            );
            Apply(memory, ChangesSince([]), isNew: true);
            T found = query(memory);
            Trouble = null;
            return found;
        }
        catch (Exception e) when (e is LiteException || DiskTrouble.Is(e))
        {
            Trouble = DiskTrouble.InWords(e);
            return default;
        }
    }

    private void BringUp()
    {
        bool isNew = !File.Exists(paths.Index);
        string[] wentOn = jobs.TakeUnwritten();
        ImmutableArray<IndexChange> changes =
            !isNew && jobs.KnowsWhatWentOn
                ? [.. wentOn.Select(id => new IndexChange(id, TrailTip.Read(paths.Trail(id))))]
                : ChangesSince(isNew ? [] : Recorded());
        if (!changes.IsEmpty || isNew)
        {
            IndexSum.Forget(paths);
            using (LiteDatabase database = Open(readOnly: false))
            {
                Apply(database, changes, isNew);
            }

            IndexSum.Write(paths);
        }

        jobs.BroughtUp(IndexSum.Read(paths));
    }

    private Dictionary<string, TrailTip> Recorded()
    {
        using LiteDatabase database = Open(readOnly: true);
        return IndexDocuments.Tips(database);
    }

    private ImmutableArray<IndexChange> ChangesSince(Dictionary<string, TrailTip> recorded)
    {
        var there = paths.JobIds().ToDictionary(id => id, id => TrailTip.Read(paths.Trail(id)), StringComparer.Ordinal);
        return
        [
            .. there
                .Where(pair => recorded.GetValueOrDefault(pair.Key) != pair.Value)
                .Select(pair => new IndexChange(pair.Key, pair.Value)),
            .. recorded.Keys.Where(id => !there.ContainsKey(id)).Select(id => new IndexChange(id, null)),
        ];
    }

    private void Apply(LiteDatabase database, ImmutableArray<IndexChange> changes, bool isNew)
    {
        var reader = new StoreReader(paths);
        int done = 0;
        foreach (IndexChange[] batch in changes.Chunk(Batch))
        {
            database.BeginTrans();
            foreach (IndexChange change in batch)
            {
                Apply(database, change, reader, isNew);
                done++;
                Progress?.Invoke(done, changes.Length);
            }

            database.Commit();
        }
    }

    private void Apply(LiteDatabase database, IndexChange change, StoreReader reader, bool isNew)
    {
        if (!isNew)
        {
            IndexDocuments.Remove(database, change.JobId);
        }

        IndexedJob? job = null;
        if (change.State is { } state)
        {
            job = projection(change.JobId, reader.ReadTrail(change.JobId).Entries.Select(line => line.Entry));
            IndexDocuments.Write(database, change.JobId, state, job);
        }

        jobs.Renew(change.JobId, job);
    }

    private LiteDatabase Open(bool readOnly)
    {
        if (!readOnly)
        {
            // LiteDB would make both for everyone to read.
            MakeOwn(paths.Index);
            MakeOwn(paths.IndexLog);
        }

        return new(
            new ConnectionString
            {
                Filename = paths.Index,
                Connection = ConnectionType.Direct,
                ReadOnly = readOnly,
                Collation = Collation.Binary,
            }
        );
    }

    private static void MakeOwn(string path)
    {
        if (!File.Exists(path))
        {
            Disk.OpenShared(path, FileMode.CreateNew, FileAccess.Write, FileShare.None).Dispose();
        }
    }
}
