using System.Runtime.InteropServices;
using Microsoft.Win32.SafeHandles;

namespace ProcRunner.Store.Local;

/// <summary>The POSIX calls that .NET doesn't offer: fdatasync, and fsync on a folder.</summary>
internal static partial class UnixFlush
{
    private const int ReadOnly = 0;
    private const int Interrupted = 4; // EINTR, the same number on Linux and macOS.

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
            throw new IOException($"open {path}: {Marshal.GetLastPInvokeErrorMessage()}");
        }

        while (FSync(folder) != 0)
        {
            ThrowUnlessInterrupted("fsync");
        }
    }

    private static void ThrowUnlessInterrupted(string call)
    {
        if (Marshal.GetLastPInvokeError() != Interrupted)
        {
            throw new IOException($"{call}: {Marshal.GetLastPInvokeErrorMessage()}");
        }
    }

    [LibraryImport("libc", EntryPoint = "fdatasync", SetLastError = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static partial int FDataSync(SafeFileHandle file);

    [LibraryImport("libc", EntryPoint = "fsync", SetLastError = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static partial int FSync(SafeFileHandle file);

    [LibraryImport("libc", EntryPoint = "open", SetLastError = true, StringMarshalling = StringMarshalling.Utf8)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static partial SafeFileHandle Open(string path, int flags);
}
