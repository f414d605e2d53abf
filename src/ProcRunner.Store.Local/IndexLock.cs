using System.Diagnostics;

namespace ProcRunner.Store.Local;

/// <summary>The lock under which the index is used. It is held for a batch or a query, so waiting for it is short.</summary>
internal static class IndexLock
{
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(10);

    /// <summary>Takes the lock.</summary>
    /// <param name="path">The lock's file.</param>
    /// <param name="patience">How long is waited while another program has it.</param>
    /// <returns>The lock, or why it can't be had.</returns>
    public static (FileStream? Held, string Why) Take(string path, TimeSpan patience)
    {
        for (long start = Stopwatch.GetTimestamp(); ; Thread.Sleep(Pause))
        {
            try
            {
                return (StoreLock.OpenExclusively(path), "");
            }
            catch (Exception e) when (DiskTrouble.IsHeld(e))
            {
                if (Stopwatch.GetElapsedTime(start) >= patience)
                {
                    return (null, "another program is using the search index");
                }
            }
            catch (Exception e) when (DiskTrouble.Is(e))
            {
                return (null, DiskTrouble.InWords(e));
            }
        }
    }
}
