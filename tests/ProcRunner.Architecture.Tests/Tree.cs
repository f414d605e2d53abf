using ProcRunner.Testing;

namespace ProcRunner.Architecture.Tests;

/// <summary>The repository's files as a reader sees them: hidden folders and what the snapshot library drops left out.</summary>
internal static class Tree
{
    /// <summary>Names at the top level.</summary>
    public static IEnumerable<string> Top =>
        new DirectoryInfo(RepoRoot.Folder).EnumerateFileSystemInfos().Select(entry => entry.Name).Where(IsVisible);

    /// <summary>Every visible file, from the repository's folder, with forward slashes.</summary>
    public static IEnumerable<string> Files =>
        Below(new DirectoryInfo(RepoRoot.Folder))
            .Select(file => Path.GetRelativePath(RepoRoot.Folder, file.FullName).Replace('\\', '/'));

    /// <summary>Every C# file.</summary>
    public static IEnumerable<string> Sources => Files.Where(file => file.EndsWith(".cs", StringComparison.Ordinal));

    /// <summary>The lines of a file.</summary>
    public static string[] LinesOf(string file) => File.ReadAllLines(RepoRoot.PathOf(file));

    private static IEnumerable<FileInfo> Below(DirectoryInfo folder) =>
        folder
            .EnumerateFiles()
            .Where(file => IsVisible(file.Name))
            .Concat(folder.EnumerateDirectories().Where(below => IsVisible(below.Name)).SelectMany(Below));

    private static bool IsVisible(string name) => name[0] != '.' && name != "__mismatch__";
}
