using System.Runtime.InteropServices;
using Microsoft.Win32.SafeHandles;

namespace ProcRunner.Store.Local;

/// <summary>The POSIX calls that .NET doesn't offer: fdatasync, fsync on a folder, posix_fadvise.</summary>
internal static partial class UnixFlush
{
    private const int ReadOnly = 0;
    private const int Interrupted = 4; // EINTR, the same number on Linux and macOS.
    private const int NotAllowed = 13; // EACCES, likewise.
    private const int DontNeed = 4; // POSIX_FADV_DONTNEED on Linux.

    /// <summary>Flushes a file's data and length.</summary>
    public static void Data(SafeFileHandle file)
    {
        while (FDataSync(file) != 0)
        {
            ThrowUnlessInterrupted("fdatasync");
        }
    }

    /// <summary>Flushes a folder's names.</summary>
    public static void Folder(string path)
    {
        using SafeFileHandle folder = Open(path, ReadOnly);
        if (folder.IsInvalid)
        {
            string why = $"open {path}: {Marshal.GetLastPInvokeErrorMessage()}";
            int error = Marshal.GetLastPInvokeError();
            throw error == NotAllowed ? new UnauthorizedAccessException(why) : new IOException(why, error);
        }

        while (FSync(folder) != 0)
        {
            ThrowUnlessInterrupted("fsync");
        }
    }

    /// <summary>Drops a file's clean pages, from a place on, from the system's cache. Advice, so an error is none.</summary>
    public static void Forget(SafeFileHandle file, long from) => _ = FAdvise(file, from, 0, DontNeed);

    private static void ThrowUnlessInterrupted(string call)
    {
        int error = Marshal.GetLastPInvokeError();
        if (error != Interrupted)
        {
            throw new IOException($"{call}: {Marshal.GetLastPInvokeErrorMessage()}", error);
        }
    }

    [LibraryImport("libc", EntryPoint = "fdatasync", SetLastError = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static partial int FDataSync(SafeFileHandle file);

    [LibraryImport("libc", EntryPoint = "fsync", SetLastError = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static partial int FSync(SafeFileHandle file);

    [LibraryImport("libc", EntryPoint = "posix_fadvise64")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static partial int FAdvise(SafeFileHandle file, long offset, long length, int advice);

    [LibraryImport("libc", EntryPoint = "open", SetLastError = true, StringMarshalling = StringMarshalling.Utf8)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static partial SafeFileHandle Open(string path, int flags);
}
