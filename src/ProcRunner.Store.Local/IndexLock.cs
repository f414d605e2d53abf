namespace ProcRunner.Store.Local;

/// <summary>The lock under which the index is used. It is held for a batch or a query, so waiting for it is short.</summary>
internal static class IndexLock
{
    private const int Attempts = 1000;
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(10);

    /// <summary>Takes the lock; null when it can't be had within ten seconds.</summary>
    public static FileStream? Take(string path)
    {
        for (int attempt = 0; attempt < Attempts; attempt++)
        {
            try
            {
                return StoreLock.OpenExclusively(path);
            }
            catch (IOException e) when (e is not DirectoryNotFoundException)
            {
                Thread.Sleep(Pause);
            }
            catch (Exception e) when (DiskTrouble.Is(e))
            {
                return null;
            }
        }

        return null;
    }
}
