using ProcRunner.Store.Local;

namespace ProcRunner.Tests.Storage;

/// <summary>The real disk, but its Nth operation fails, and as many after it as are asked for.</summary>
internal sealed class FailingDisk(int failAt, Failure how, int times = 1, Func<Exception>? trouble = null) : IDisk
{
    /// <summary>How often a disk fails that never works again.</summary>
    public const int ForGood = int.MaxValue;

    private int _count;

    /// <summary>True once an operation has failed.</summary>
    public bool HasFailed { get; private set; }

    public FileStream Open(string path, FileMode mode)
    {
        FileStream? file = null;
        Do(() => file = Disk.Real.Open(path, mode), null, () => file?.Dispose());
        return file!;
    }

    public void Write(FileStream file, long offset, ReadOnlySpan<byte> bytes)
    {
        byte[] copy = bytes.ToArray();
        Do(
            () => Disk.Real.Write(file, offset, copy),
            () => Disk.Real.Write(file, offset, copy.AsSpan(0, copy.Length / 2))
        );
    }

    // No power is cut here, so a flush that only counts shows the same and is much faster.
    public void Flush(FileStream file) => Do(() => { });

    public void Cut(FileStream file, long length) => Do(() => Disk.Real.Cut(file, length));

    // Nor is anything dropped from the cache, which would bring it to the disk first.
    public void Forget(FileStream file, long from) { }

    public void MakeFolder(string path) => Do(() => Disk.Real.MakeFolder(path));

    public void Rename(string from, string to) => Do(() => Disk.Real.Rename(from, to));

    public void Delete(string path) => Do(() => Disk.Real.Delete(path));

    public void FlushFolder(string path) => Do(() => { });

    private void Do(Action action, Action? half = null, Action? undo = null)
    {
        _count++;
        if (_count < failAt || _count - failAt >= times)
        {
            action();
            return;
        }

        HasFailed = true;
        if (how == Failure.After)
        {
            action();
            undo?.Invoke();
        }
        else if (how == Failure.Half)
        {
            half?.Invoke();
        }

        throw trouble?.Invoke() ?? new IOException("made to fail");
    }
}
