namespace ProcRunner.Store.Local;

/// <summary>
/// The few file operations on which durability hangs. Behind an interface so that a test can let the Nth one fail.
/// All throw IOException or UnauthorizedAccessException.
/// </summary>
internal interface IDisk
{
    /// <summary>Opens a file for writing, readable by others meanwhile; owner-only when it is made.</summary>
    FileStream Open(string path, FileMode mode);

    /// <summary>Writes all the bytes at a place.</summary>
    void Write(FileStream file, long offset, ReadOnlySpan<byte> bytes);

    /// <summary>Returns once the file's bytes and length are on the medium.</summary>
    void Flush(FileStream file);

    /// <summary>Cuts a file to a length.</summary>
    void Cut(FileStream file, long length);

    /// <summary>
    /// Lets the system forget what it has read or flushed of a file from a place on, so that the next reading is of the medium. As
    /// far as the platform can; never fails.
    /// </summary>
    void Forget(FileStream file, long from);

    /// <summary>Renames a file, replacing what stands there.</summary>
    void Rename(string from, string to);

    /// <summary>Removes a file that was never acknowledged.</summary>
    void Delete(string path);

    /// <summary>Makes a folder that only its owner can enter; the one above it is there.</summary>
    void MakeFolder(string path);

    /// <summary>Returns once a folder's names are on the medium.</summary>
    void FlushFolder(string path);
}
