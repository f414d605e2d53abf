namespace ProcRunner.Tui.Shell;

/// <summary>Writes a file so that it is there whole or not at all.</summary>
internal static class WholeFile
{
    private const UnixFileMode OwnerOnly = UnixFileMode.UserRead | UnixFileMode.UserWrite;

    /// <summary>
    /// Writes into a temporary file beside the wanted one, flushes it to the disk and gives it its name. Whatever ends the
    /// writing before that leaves what was there before, and no other file.
    /// </summary>
    /// <param name="path">The file.</param>
    /// <param name="write">Writes it.</param>
    /// <exception cref="IOException">It couldn't be written.</exception>
    public static void Write(string path, Action<Stream> write)
    {
        string whole = Path.GetFullPath(path);
        string beside = Path.Combine(
            Path.GetDirectoryName(whole)!,
            $".{Path.GetFileName(whole)}.{Environment.ProcessId.ToString(System.Globalization.CultureInfo.InvariantCulture)}.part"
        );
        try
        {
            using (FileStream file = new(beside, Options()))
            {
                write(file);
                file.Flush(flushToDisk: true);
            }

            File.Move(beside, whole, overwrite: true);
        }
        finally
        {
            File.Delete(beside);
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
}
