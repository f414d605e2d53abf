namespace ProcRunner.Store.Local;

/// <summary>
/// The store's lock while it is held. After trouble it is in doubt: the folder may have been away, and another program may
/// have taken the store meanwhile.
/// </summary>
internal sealed class HeldLock(StorePaths paths, Func<string, FileStream> open, FileStream held) : IDisposable
{
    private FileStream _held = held;
    private bool _isDoubtful;

    /// <summary>Something has failed: before the next writing the lock is taken anew.</summary>
    public void Doubt() => _isDoubtful = true;

    /// <summary>Takes it anew where it is in doubt; null when it is held, else why it isn't.</summary>
    public string? Keep()
    {
        if (!_isDoubtful)
        {
            return null;
        }

        try
        {
            FileStream again = open(paths.Lock);
            _held.Dispose();
            _held = again;
        }
        catch (Exception e) when (DiskTrouble.IsHeld(e))
        {
            if (Holder.Read(paths.Holder) is { IsThisProgram: false } other)
            {
                return $"The store is in use by {other.InWords()} now.";
            }
        }
        catch (Exception e) when (DiskTrouble.Is(e))
        {
            return DiskTrouble.InWords(e);
        }

        _isDoubtful = false;
        return null;
    }

    public void Dispose() => _held.Dispose();
}
