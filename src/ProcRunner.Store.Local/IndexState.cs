using System.Globalization;
using LiteDB;
using ProcRunner.Trail;

namespace ProcRunner.Store.Local;

/// <summary>How the search index stands to the trails, for a check; nothing is made good here.</summary>
internal static class IndexState
{
    private const string Harmless = "The next search makes that good from the trails; nothing is lost with it.";

    /// <summary>What is to be said of it; null when it is up to the trails, when there is none yet, or while it is in use.</summary>
    public static StoreFinding? Of(StorePaths paths)
    {
        if (!File.Exists(paths.Index))
        {
            return null;
        }

        (FileStream? held, _) = IndexLock.Take(paths.IndexLock, TimeSpan.Zero);
        using FileStream? whileHeld = held;
        if (held is null)
        {
            return null;
        }

        try
        {
            if (!IndexSum.Matches(paths))
            {
                return Finding("The search index was damaged, exchanged, or not finished.");
            }

            int behind = Behind(paths);
            return behind == 0
                ? null
                : Finding(
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"The search index is behind the trails, by {behind} {(behind == 1 ? "job" : "jobs")}."
                    )
                );
        }
        catch (Exception e) when (e is LiteException || DiskTrouble.Is(e))
        {
            return Finding("The search index can't be read.");
        }
    }

    private static int Behind(StorePaths paths)
    {
        using LiteDatabase database = new(new ConnectionString { Filename = paths.Index, ReadOnly = true });
        Dictionary<string, TrailTip> recorded = IndexDocuments.Tips(database);
        return paths.JobIds().Count(id => recorded.GetValueOrDefault(id) != TrailTip.Read(paths.Trail(id)));
    }

    private static StoreFinding Finding(string what) => new(JobId.Shop, false, null, $"{what} {Harmless}");
}
