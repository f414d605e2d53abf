namespace ProcRunner.Store.Local;

/// <summary>Folders that are still there after a power cut: each one's name is flushed in the folder above it.</summary>
internal static class Folders
{
    /// <summary>Makes a folder and those above it that are missing.</summary>
    public static void Make(IDisk disk, string path)
    {
        if (Directory.Exists(path))
        {
            return;
        }

        string? above = Path.GetDirectoryName(path);
        if (above is not null)
        {
            Make(disk, above);
        }

        disk.MakeFolder(path);
        FlushName(disk, path);
    }

    /// <summary>Flushes a folder's own name.</summary>
    public static void FlushName(IDisk disk, string path)
    {
        try
        {
            if (Path.GetDirectoryName(path) is { } above)
            {
                disk.FlushFolder(above);
            }
        }
        catch (UnauthorizedAccessException)
        {
            // A folder that may be passed through but not read can't be flushed; whoever made it such has to know.
        }
    }
}
