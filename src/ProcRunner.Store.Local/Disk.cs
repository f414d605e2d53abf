using Microsoft.Win32.SafeHandles;

namespace ProcRunner.Store.Local;

/// <summary>The real disk.</summary>
internal sealed class Disk : IDisk
{
    public const UnixFileMode OwnerFile = UnixFileMode.UserRead | UnixFileMode.UserWrite;
    public const UnixFileMode OwnerFolder = OwnerFile | UnixFileMode.UserExecute;

    public static Disk Real { get; } = new();

    /// <summary>True for what the world does to files, as against a programmer's mistake.</summary>
    public static bool IsTrouble(Exception e) => e is IOException or UnauthorizedAccessException;

    /// <summary>Makes a folder that only its owner can enter.</summary>
    public static void MakeFolder(string path)
    {
        if (OperatingSystem.IsWindows())
        {
            Directory.CreateDirectory(path);
        }
        else
        {
            Directory.CreateDirectory(path, OwnerFolder);
        }
    }

    /// <summary>Opens a file without buffering; owner-only when it is made.</summary>
    public static FileStream OpenShared(string path, FileMode mode, FileAccess access, FileShare share)
    {
        var options = new FileStreamOptions
        {
            Mode = mode,
            Access = access,
            Share = share,
            BufferSize = 0,
        };
        if (!OperatingSystem.IsWindows() && mode is FileMode.Create or FileMode.CreateNew or FileMode.OpenOrCreate)
        {
            options.UnixCreateMode = OwnerFile;
        }

        return new(path, options);
    }

    /// <summary>Opens a file for reading beside its writer.</summary>
    public static FileStream OpenForReading(string path) =>
        OpenShared(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);

    public FileStream Open(string path, FileMode mode) =>
        OpenShared(path, mode, FileAccess.ReadWrite, FileShare.ReadWrite | FileShare.Delete);

    public void Write(FileStream file, long offset, ReadOnlySpan<byte> bytes) =>
        RandomAccess.Write(file.SafeFileHandle, bytes, offset);

    public void Flush(FileStream file)
    {
        SafeFileHandle handle = file.SafeFileHandle;
        if (OperatingSystem.IsLinux())
        {
            // fdatasync also brings the new length to the medium; it leaves out the times, which costs a third of fsync.
            UnixFlush.Data(handle);
        }
        else
        {
            RandomAccess.FlushToDisk(handle);
        }
    }

    public void Cut(FileStream file, long length) => RandomAccess.SetLength(file.SafeFileHandle, length);

    public void Rename(string from, string to) => File.Move(from, to, overwrite: true);

    public void Delete(string path) => File.Delete(path);

    public void FlushFolder(string path)
    {
        // Windows has no such call; NTFS journals names by itself.
        if (!OperatingSystem.IsWindows())
        {
            UnixFlush.Folder(path);
        }
    }
}
