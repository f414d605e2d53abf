using System.Collections.Immutable;
using ProcRunner.Shop;
using ProcRunner.Trail;

namespace ProcRunner.Store.Local;

/// <summary>
/// A copy of a store, made beside whoever writes to it. Trails and shop book vouch for each other, so that files copied one after
/// the other while entries are written don't fit together; here the book is taken as it stands, and of each trail what was
/// written up to there.
/// </summary>
public static class StoreCopy
{
    /// <summary>Copies a store.</summary>
    /// <param name="reader">The store.</param>
    /// <param name="target">A folder that is empty or isn't there.</param>
    /// <param name="progress">Told how many trails of how many are copied.</param>
    /// <param name="leavingOut">
    /// Null: the files must agree. Otherwise of files that don't, as in a folder that was itself copied while somebody worked, what
    /// they agree on is taken, and this is told what is left out, a line for each file.
    /// </param>
    /// <returns>Why there is no copy, or null when it is there and was read back.</returns>
    public static string? Make(
        StoreReader reader,
        string target,
        Action<int, int>? progress = null,
        Action<string>? leavingOut = null
    )
    {
        ArgumentNullException.ThrowIfNull(reader);
        StorePaths from = reader.Paths;
        StorePaths to = new(Path.GetFullPath(target));
        try
        {
            if (Directory.Exists(to.Root) && Directory.EnumerateFileSystemEntries(to.Root).Any())
            {
                return "The folder isn't empty.";
            }

            if (to.Root.StartsWith(from.Root + Path.DirectorySeparatorChar, StringComparison.Ordinal))
            {
                return "The folder lies inside the store.";
            }

            TrailReading book = reader.ReadTrail(JobId.Shop);
            if (book.Verdict is TrailVerdict.Broken { Fault: not TrailFault.TornTail } broken)
            {
                return $"The shop book doesn't hold. {broken.InWords()}";
            }

            if (Copy(reader, book, to, progress, leavingOut) is { } trouble)
            {
                return trouble;
            }
        }
        catch (Exception e) when (DiskTrouble.Is(e))
        {
            return DiskTrouble.InWords(e);
        }

        (StoreReader? copy, StoreOpening? fault) = StoreReader.Open(to.Root);
        return copy is null ? fault!.InWords() : StoreCheck.All(copy).FirstOrDefault(f => f.IsBroken)?.Text;
    }

    private static string? Copy(
        StoreReader reader,
        TrailReading book,
        StorePaths to,
        Action<int, int>? progress,
        Action<string>? leavingOut
    )
    {
        AgreedState? agreed = null;
        if (leavingOut is not null)
        {
            (agreed, string fault) = AgreedState.Find(reader, book, progress);
            if (agreed is null)
            {
                return fault;
            }
        }

        Disk.Real.MakeFolder(to.Root);
        Disk.Real.MakeFolder(to.Jobs);
        Write(to.Book, book.Entries.Select(line => line.Entry).Take((int)(agreed?.Book ?? book.Entries.Length)));
        if (agreed is null)
        {
            CopyTrails(reader, book, to, progress);
        }
        else
        {
            foreach ((string id, long entries) in agreed.Trails)
            {
                Write(to.Trail(id), reader.ReadTrail(id).Entries.Select(line => line.Entry).Take((int)entries));
            }
        }

        // A text is there before the trail that pins it. What makes the folder a store comes last.
        CopyRest(reader.Paths, to);
        File.Copy(reader.Paths.Format, to.Format);
        foreach (string line in agreed?.LeftOut ?? [])
        {
            leavingOut!(line);
        }

        return null;
    }

    private static void CopyTrails(StoreReader reader, TrailReading book, StorePaths to, Action<int, int>? progress)
    {
        ShopState shop = book.Entries.Aggregate(ShopState.Empty, (state, line) => state.After(line.Entry, line.Digest));
        int done = 0;
        foreach (string id in shop.Jobs.Keys)
        {
            ImmutableArray<(TrailEntry Entry, Digest Digest)> trail = reader.ReadTrail(id).Entries;
            Write(to.Trail(id), trail.Select(line => line.Entry).TakeWhile(e => e.Book.Sequence <= shop.Mark.Sequence));
            done++;
            progress?.Invoke(done, shop.Jobs.Count);
        }
    }

    private static void Write(string path, IEnumerable<TrailEntry> entries)
    {
        using FileStream file = Disk.OpenShared(path, FileMode.CreateNew, FileAccess.Write, FileShare.Read);
        foreach (TrailEntry entry in entries)
        {
            file.Write(TrailLine.Encode(entry));
        }

        file.Flush(flushToDisk: true);
    }

    private static void CopyRest(StorePaths from, StorePaths to)
    {
        string[] own =
        [
            from.Format,
            from.Lock,
            from.Holder,
            from.Book,
            from.Index,
            from.IndexLog,
            from.IndexSum,
            from.IndexLock,
        ];
        foreach (string file in Directory.EnumerateFiles(from.Root, "*", SearchOption.AllDirectories))
        {
            bool isTrail =
                Path.GetDirectoryName(file) == from.Jobs && !file.Contains(StorePaths.Torn, StringComparison.Ordinal);
            if (isTrail || own.Contains(file) || file.EndsWith(StorePaths.Temporary, StringComparison.Ordinal))
            {
                continue;
            }

            string copy = Path.Combine(to.Root, Path.GetRelativePath(from.Root, file));
            Disk.Real.MakeFolder(Path.GetDirectoryName(copy)!);
            File.Copy(file, copy);
        }
    }
}
