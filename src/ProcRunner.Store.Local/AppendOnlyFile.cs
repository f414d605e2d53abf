namespace ProcRunner.Store.Local;

/// <summary>
/// A file that grows by whole lines. What is acknowledged is on the medium; what a failure left behind it is cut off before
/// anything else is written.
/// </summary>
/// <remarks>
/// After a failed write or flush the file is opened afresh, cut to the acknowledged length and written again: the system
/// may have dropped the pages that it couldn't write, so that repeating the flush alone would report a false success.
/// </remarks>
internal sealed class AppendOnlyFile(IDisk disk, string path, long length) : IDisposable
{
    private FileStream? _file;
    private bool _hasLeftovers;

    /// <summary>The bytes that are acknowledged.</summary>
    public long Length { get; private set; } = length;

    /// <summary>Puts a line on the medium, not yet acknowledged.</summary>
    /// <returns>Null, or what went wrong; then the file is at its acknowledged length or will be put there first.</returns>
    public string? TryWrite(ReadOnlySpan<byte> line)
    {
        if (!TryUndo())
        {
            return "what an earlier failure left behind can't be removed yet";
        }

        _hasLeftovers = true;
        for (int attempt = 1; ; attempt++)
        {
            try
            {
                FileStream file = attempt == 1 ? Opened() : Restored();
                disk.Write(file, Length, line);
                disk.Flush(file);
                return null;
            }
            catch (Exception e) when (Disk.IsTrouble(e))
            {
                if (attempt == 2)
                {
                    TryUndo();
                    return e.Message;
                }
            }
        }
    }

    /// <summary>What was written last is acknowledged from now on.</summary>
    public void Acknowledge(int count)
    {
        Length += count;
        _hasLeftovers = false;
    }

    /// <summary>Cuts off what isn't acknowledged; false when that fails, and it will be tried again.</summary>
    public bool TryUndo()
    {
        if (!_hasLeftovers)
        {
            return true;
        }

        try
        {
            disk.Flush(Restored());
            _hasLeftovers = false;
            return true;
        }
        catch (Exception e) when (Disk.IsTrouble(e))
        {
            return false;
        }
    }

    public void Dispose()
    {
        TryUndo();
        _file?.Dispose();
    }

    private FileStream Opened() => _file ??= disk.Open(path, FileMode.Open);

    private FileStream Restored()
    {
        _file?.Dispose();
        _file = null;
        FileStream file = Opened();
        disk.Cut(file, Length);
        return file;
    }
}
