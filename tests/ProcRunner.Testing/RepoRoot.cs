namespace ProcRunner.Testing;

/// <summary>The folder of the repository, found upwards from where the tests were built to.</summary>
public static class RepoRoot
{
    /// <summary>Its full path.</summary>
    /// <exception cref="DirectoryNotFoundException">No folder above holds ProcRunner.sln.</exception>
    public static string Folder { get; } = Find();

    /// <summary>Full path of a file in it, from one with forward slashes.</summary>
    public static string PathOf(string repoRelativePath) => Path.GetFullPath(Path.Combine(Folder, repoRelativePath));

    private static string Find()
    {
        DirectoryInfo? folder = new(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "ProcRunner.sln")))
        {
            folder = folder.Parent;
        }

        return folder?.FullName
            ?? throw new DirectoryNotFoundException(
                $"No folder above {AppContext.BaseDirectory} holds ProcRunner.sln."
            );
    }
}
