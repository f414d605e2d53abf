namespace ProcRunner.Testing;

/// <summary>An empty folder of one test, gone with all that is in it when disposed.</summary>
/// <param name="inMemory">
/// True where what is tested isn't the disk: kept in memory where the machine has such a place, so that nothing waits for a disk.
/// </param>
public sealed class TempFolder(bool inMemory = false) : IDisposable
{
    private const string Memory = "/dev/shm";

    private readonly DirectoryInfo _folder =
        inMemory && Directory.Exists(Memory)
            ? Directory.CreateDirectory(System.IO.Path.Combine(Memory, $"procrunner-{Guid.NewGuid():N}"))
            : Directory.CreateTempSubdirectory("procrunner-");

    /// <summary>Its full path.</summary>
    public string Path => _folder.FullName;

    /// <summary>Full path of something in it.</summary>
    public string this[string name] => System.IO.Path.Combine(Path, name);

    /// <summary>Writes a text to a file in it, as UTF-8 without a mark, and gives the file's full path.</summary>
    public string Write(string name, string text)
    {
        string path = this[name];
        Directory.CreateDirectory(System.IO.Path.GetDirectoryName(path)!);
        File.WriteAllText(path, text);
        return path;
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        if (Directory.Exists(Path))
        {
            _folder.Delete(recursive: true);
        }
    }
}
