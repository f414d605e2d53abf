using ProcRunner.Store.Local;

namespace ProcRunner.Tui.Shell;

/// <summary>A file that is given out: its owner's alone until the owner passes it on, and whole or not there.</summary>
internal static class OwnFile
{
    /// <summary>Writes a new file; null, or why there is none.</summary>
    public static string? Write(string path, ReadOnlySpan<byte> bytes)
    {
        if (Path.Exists(path))
        {
            return $"{path} is there already, and isn't written over.";
        }

        bool isBegun = false;
        try
        {
            FileStreamOptions options = new()
            {
                Mode = FileMode.CreateNew,
                Access = FileAccess.Write,
                BufferSize = 0,
            };
            if (!OperatingSystem.IsWindows())
            {
                options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
            }

            using FileStream output = new(path, options);
            isBegun = true;
            if (options.UnixCreateMode is { } mode && !OperatingSystem.IsWindows())
            {
                // The process's mask may have taken away what the owner needs.
                File.SetUnixFileMode(output.SafeFileHandle, mode);
            }

            output.Write(bytes);
            output.Flush(flushToDisk: true);
            return null;
        }
        catch (Exception e) when (DiskTrouble.Is(e))
        {
            string why = $"{path} can't be written. {DiskTrouble.InWords(e)}";
            return isBegun && !TryDelete(path) ? $"{why} What there is of it isn't whole." : why;
        }
    }

    private static bool TryDelete(string path)
    {
        try
        {
            File.Delete(path);
            return true;
        }
        catch (Exception e) when (DiskTrouble.Is(e))
        {
            return false;
        }
    }
}
