using System.Globalization;
using ProcRunner.Store.Local;

namespace ProcRunner.Tui.Shell;

/// <summary>Writes a file that only its owner may read, whole or not at all.</summary>
internal static class OwnFile
{
    private const UnixFileMode OwnerOnly = UnixFileMode.UserRead | UnixFileMode.UserWrite;

    /// <summary>Writes a new file; null, or why there is none.</summary>
    public static string? Write(string path, byte[] bytes)
    {
        if (Path.Exists(path))
        {
            return $"{path} is there already, and isn't written over.";
        }

        try
        {
            Replace(path, file => file.Write(bytes));
            return null;
        }
        catch (Exception e) when (DiskTrouble.Is(e))
        {
            return $"{path} can't be written. {DiskTrouble.InWords(e)}";
        }
    }

    /// <summary>
    /// Writes into a temporary file beside the wanted one, flushes it to the disk and gives it its name. Whatever ends the
    /// writing before that leaves what was there before, and no other file.
    /// </summary>
    /// <param name="path">The file; what stood there is replaced.</param>
    /// <param name="write">Writes it.</param>
    /// <exception cref="IOException">It couldn't be written.</exception>
    public static void Replace(string path, Action<Stream> write)
    {
        string whole = Path.GetFullPath(path);
        string process = Environment.ProcessId.ToString(CultureInfo.InvariantCulture);
        string beside = Path.Combine(Path.GetDirectoryName(whole)!, $".{Path.GetFileName(whole)}.{process}.part");
        try
        {
            using (FileStream file = new(beside, Options()))
            {
                if (!OperatingSystem.IsWindows())
                {
                    // The process's mask may have taken away what the owner needs.
                    File.SetUnixFileMode(file.SafeFileHandle, OwnerOnly);
                }

                write(file);
                file.Flush(flushToDisk: true);
            }

            File.Move(beside, whole, overwrite: true);
        }
        finally
        {
            TryDelete(beside);
        }
    }

    private static FileStreamOptions Options()
    {
        FileStreamOptions options = new()
        {
            Mode = FileMode.Create,
            Access = FileAccess.ReadWrite,
            Share = FileShare.None,
        };
        if (!OperatingSystem.IsWindows())
        {
            options.UnixCreateMode = OwnerOnly;
        }

        return options;
    }

    // Why it can't be deleted matters less than what went before.
    private static void TryDelete(string path)
    {
        try
        {
            File.Delete(path);
        }
        catch (Exception e) when (DiskTrouble.Is(e))
        {
            // What is left of it lies beside, under a name that says what it is.
        }
    }
}
