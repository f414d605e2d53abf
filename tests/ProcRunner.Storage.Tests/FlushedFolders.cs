using ProcRunner.Store.Local;

namespace ProcRunner.Tests.Storage;

/// <summary>The real disk, which notes the folders that are flushed.</summary>
internal sealed class FlushedFolders : IDisk
{
    public List<string> Flushed { get; } = [];

    public FileStream Open(string path, FileMode mode) => Disk.Real.Open(path, mode);

    public void Write(FileStream file, long offset, ReadOnlySpan<byte> bytes) => Disk.Real.Write(file, offset, bytes);

    public void Flush(FileStream file) => Disk.Real.Flush(file);

    public void Cut(FileStream file, long length) => Disk.Real.Cut(file, length);

    public void Forget(FileStream file, long from) => Disk.Real.Forget(file, from);

    public void Rename(string from, string to) => Disk.Real.Rename(from, to);

    public void Delete(string path) => Disk.Real.Delete(path);

    public void MakeFolder(string path) => Disk.Real.MakeFolder(path);

    public void FlushFolder(string path)
    {
        Disk.Real.FlushFolder(path);
        Flushed.Add(path);
    }
}
