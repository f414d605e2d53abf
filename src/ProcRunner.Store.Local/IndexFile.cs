using System.Collections.Immutable;
using LiteDB;
using ProcRunner.Trail;

namespace ProcRunner.Store.Local;

/// <summary>
/// The file behind the search index: used under its lock, checked before each use, brought up to the trails, made again from
/// them when it is missing or damaged. Where it can't be kept (a disk that is read-only or full, another program that is just making
/// it), the same is made in memory for one query.
/// </summary>
internal sealed class IndexFile(StorePaths paths, IndexProjection projection)
{
    // A query takes milliseconds; whoever has the lock for longer is making the whole index, and nobody waits for that.
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(1);

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

                BringUp();
                using LiteDatabase database = Open(readOnly: true);
                found = query(database);
                Trouble = null;
                return true;
            }
            catch (Exception e) when (attempt == 1 && e is not OutOfMemoryException)
            {
                Trouble = DiskTrouble.InWords(e);
            }
            catch (Exception e) when (e is LiteException || DiskTrouble.Is(e))
            {
                Trouble = DiskTrouble.InWords(e);
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
            Apply(memory, ChangesSince([]));
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
        Dictionary<string, TrailTip> recorded = [];
        if (!isNew)
        {
            using LiteDatabase database = Open(readOnly: true);
            recorded = IndexDocuments.Tips(database);
        }

        ImmutableArray<IndexChange> changes = ChangesSince(recorded);
        if (changes.IsEmpty && !isNew)
        {
            return;
        }

        IndexSum.Forget(paths);
        using (LiteDatabase database = Open(readOnly: false))
        {
            Apply(database, changes);
        }

        IndexSum.Write(paths);
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

    private void Apply(LiteDatabase database, ImmutableArray<IndexChange> changes)
    {
        IndexDocuments.Prepare(database);
        var reader = new StoreReader(paths);
        int done = 0;
        foreach (IndexChange change in changes)
        {
            IndexDocuments.Remove(database, change.JobId);
            if (change.State is { } state)
            {
                IEnumerable<TrailEntry> entries = reader.ReadTrail(change.JobId).Entries.Select(line => line.Entry);
                IndexDocuments.Write(database, change.JobId, state, projection(change.JobId, entries));
            }

            Progress?.Invoke(++done, changes.Length);
        }
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
