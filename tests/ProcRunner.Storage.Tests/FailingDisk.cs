using ProcRunner.Store.Local;

namespace ProcRunner.Tests.Storage;

/// <summary>The real disk, but its Nth operation fails, or all from the Nth on.</summary>
internal sealed class FailingDisk(int failAt, Failure how, bool forGood) : IDisk
{
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

    public void Rename(string from, string to) => Do(() => Disk.Real.Rename(from, to));

    public void Delete(string path) => Do(() => Disk.Real.Delete(path));

    public void FlushFolder(string path) => Do(() => { });

    private void Do(Action action, Action? half = null, Action? undo = null)
    {
        _count++;
        bool fails = forGood ? _count >= failAt : _count == failAt;
        if (!fails)
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

        throw new IOException("made to fail");
    }
}
