using ProcRunner.Text;
using ProcRunner.Trail;

namespace ProcRunner.Store.Local;

/// <summary>
/// A store is a folder: <c>store.json</c> says its format, <c>store.lock</c> keeps a second writer out, <c>holder.txt</c>
/// says who writes, <c>book.trail</c> is the shop book, <c>jobs/</c> holds a trail for each job, <c>texts/</c> what they pin,
/// <c>index.db</c> makes them searchable and can be deleted at any time. Backup is copying the folder.
/// </summary>
public static class StoreFolder
{
    /// <summary>Makes a store in a folder that is empty or isn't there, and opens it.</summary>
    /// <param name="path">The folder.</param>
    /// <param name="name">The shop's name.</param>
    /// <param name="purpose">What the store is held for, in words for whoever is kept out.</param>
    /// <param name="time">The clock and the time zone.</param>
    /// <param name="entropy">Randomness for job ids.</param>
    /// <param name="bench">The bench's name; the machine's when null.</param>
    /// <param name="index">How jobs are searched for; null keeps no index.</param>
    public static StoreOpening Found(
        string path,
        string name,
        string purpose,
        TimeProvider time,
        EntropySource entropy,
        string? bench = null,
        IndexProjection? index = null
    ) => Start(path, purpose, time, entropy, bench, index).Run(SafeText.Clean(name));

    /// <summary>Opens a store for writing; puts torn ends aside and brings the shop book up to the trails.</summary>
    /// <param name="path">The folder.</param>
    /// <param name="purpose">What the store is held for, in words for whoever is kept out.</param>
    /// <param name="time">The clock and the time zone.</param>
    /// <param name="entropy">Randomness for job ids.</param>
    /// <param name="bench">The bench's name; the machine's when null.</param>
    /// <param name="index">How jobs are searched for; null keeps no index.</param>
    public static StoreOpening Open(
        string path,
        string purpose,
        TimeProvider time,
        EntropySource entropy,
        string? bench = null,
        IndexProjection? index = null
    ) => Start(path, purpose, time, entropy, bench, index).Run(null);

    /// <summary>True when there is a store of whatever format in the folder.</summary>
    public static bool Exists(string path) => File.Exists(new StorePaths(path).Format);

    private static StoreStart Start(
        string path,
        string purpose,
        TimeProvider time,
        EntropySource entropy,
        string? bench,
        IndexProjection? index
    )
    {
        string benchName = SafeText.Clean(bench ?? Environment.MachineName);
        return new(new(Path.GetFullPath(path)), Disk.Real, new(time, entropy, benchName), purpose)
        {
            Projection = index,
        };
    }
}
