using Microsoft.Win32.SafeHandles;

namespace ProcRunner.Store.Local;

/// <summary>The real disk. All that it makes is its owner's alone, whatever the process's file mode mask says.</summary>
internal sealed class Disk : IDisk
{
    public const UnixFileMode OwnerFile = UnixFileMode.UserRead | UnixFileMode.UserWrite;
    public const UnixFileMode OwnerFolder = OwnerFile | UnixFileMode.UserExecute;

    public static Disk Real { get; } = new();

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
        bool mayMake = mode is FileMode.Create or FileMode.CreateNew or FileMode.OpenOrCreate;
        if (OperatingSystem.IsWindows() || !mayMake)
        {
            return new(path, options);
        }

        options.UnixCreateMode = OwnerFile;
        FileStream file = new(path, options);
        try
        {
            // The mask may have taken bits away that the owner needs.
            if (File.GetUnixFileMode(file.SafeFileHandle) != OwnerFile)
            {
                File.SetUnixFileMode(file.SafeFileHandle, OwnerFile);
            }
        }
        catch
        {
            file.Dispose();
            throw;
        }

        return file;
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

    public void Forget(FileStream file, long from)
    {
        if (OperatingSystem.IsLinux())
        {
            UnixFlush.Forget(file.SafeFileHandle, from);
        }
    }

    public void Rename(string from, string to) => File.Move(from, to, overwrite: true);

    public void Delete(string path) => File.Delete(path);

    public void MakeFolder(string path)
    {
        if (OperatingSystem.IsWindows())
        {
            Directory.CreateDirectory(path);
            return;
        }

        Directory.CreateDirectory(path, OwnerFolder);
        if (File.GetUnixFileMode(path) != OwnerFolder)
        {
            File.SetUnixFileMode(path, OwnerFolder);
        }
    }

    public void FlushFolder(string path)
    {
        // Windows has no such call; NTFS journals names by itself.
        if (!OperatingSystem.IsWindows())
        {
            UnixFlush.Folder(path);
        }
    }
}
