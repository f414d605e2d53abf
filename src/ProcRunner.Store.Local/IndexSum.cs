using System.Globalization;
using System.Security.Cryptography;
using System.Text;

namespace ProcRunner.Store.Local;

/// <summary>The shape, length and SHA-256 of the index as the last batch left it.</summary>
internal static class IndexSum
{
    // Rises when documents get another shape: an index of an older shape is made anew.
    private const int Shape = 3;

    /// <summary>True when the index is as the last batch left it.</summary>
    public static bool Matches(StorePaths paths)
    {
        // LiteDB removes its log when it closes; one that is left over is a batch that didn't end.
        if (!File.Exists(paths.Index) || !File.Exists(paths.IndexSum) || File.Exists(paths.IndexLog))
        {
            return false;
        }

        return File.ReadAllText(paths.IndexSum) == Of(paths.Index);
    }

    /// <summary>The sum as it was written; null when there is none.</summary>
    public static string? Read(StorePaths paths) =>
        File.Exists(paths.IndexSum) ? File.ReadAllText(paths.IndexSum) : null;

    /// <summary>Removes the index.</summary>
    public static void Clear(StorePaths paths)
    {
        Forget(paths);
        File.Delete(paths.IndexLog);
        File.Delete(paths.Index);
    }

    /// <summary>From now on the index counts as damaged.</summary>
    public static void Forget(StorePaths paths) => File.Delete(paths.IndexSum);

    /// <summary>The index is good as it is.</summary>
    public static void Write(StorePaths paths)
    {
        using FileStream file = Disk.OpenShared(paths.IndexSum, FileMode.Create, FileAccess.Write, FileShare.None);
        file.Write(Encoding.ASCII.GetBytes(Of(paths.Index)));
    }

    private static string Of(string path)
    {
        using FileStream file = Disk.OpenForReading(path);
        string digest = Convert.ToHexStringLower(SHA256.HashData(file));
        return string.Create(CultureInfo.InvariantCulture, $"{Shape} {file.Length} {digest}\n");
    }
}
