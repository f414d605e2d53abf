namespace ProcRunner.Store.Local;

/// <summary>
/// The store's lock: a file opened so that nobody else can open it. The system frees it when the process ends, however it
/// ends. The file itself is never deleted, or two programs could each lock a file of that name.
/// </summary>
internal static class StoreLock
{
    /// <summary>Takes the lock.</summary>
    /// <param name="path">The lock file.</param>
    /// <param name="open">Opens it exclusively; another way in tests.</param>
    /// <param name="held">The lock; null when it can't be had.</param>
    /// <returns>Null, or why it can't be had.</returns>
    public static StoreOpening? Take(string path, Func<string, FileStream> open, out FileStream? held)
    {
        held = null;
        try
        {
            held = open(path);
        }
        catch (IOException e) when (DiskTrouble.IsHeld(e))
        {
            return new StoreOpening.InUse(null);
        }

        // A lock that lets its own process in twice keeps nobody out.
        try
        {
            using FileStream second = open(path);
        }
        catch (IOException e) when (DiskTrouble.IsHeld(e))
        {
            return null;
        }

        held.Dispose();
        held = null;
        return new StoreOpening.LockingFails();
    }

    /// <summary>Opens a file so that nobody else can.</summary>
    public static FileStream OpenExclusively(string path) =>
        Disk.OpenShared(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
}
