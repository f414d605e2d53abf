namespace ProcRunner.Store.Local;

/// <summary>Files that appear whole or not at all: written beside, flushed, renamed, and the folder flushed.</summary>
internal static class WholeFile
{
    public static void Put(IDisk disk, string path, ReadOnlySpan<byte> bytes)
    {
        string temporary = path + StorePaths.Temporary;
        using (FileStream file = disk.Open(temporary, FileMode.Create))
        {
            disk.Write(file, 0, bytes);
            disk.Flush(file);
        }

        disk.Rename(temporary, path);
        disk.FlushFolder(Path.GetDirectoryName(path)!);
    }
}
