using System.Collections.Immutable;
using ProcRunner.Trail;

namespace ProcRunner.Store.Local;

/// <summary>
/// Jobs from elsewhere, kept apart in a store's folder <c>imported</c>: each as the file it came in, named by that file's
/// SHA-256. Nothing in them names a path, nothing is ever written over, and they are checked anew each time they are read.
/// </summary>
public sealed class ImportedJobs
{
    private const string Ending = ".job";
    private readonly string _folder;

    /// <summary>Those of a store.</summary>
    public ImportedJobs(StoreReader reader)
    {
        ArgumentNullException.ThrowIfNull(reader);
        _folder = reader.Paths.Imported;
    }

    /// <summary>Every job that is kept, with its file's name; a file that can't be read is left out.</summary>
    public ImmutableArray<(string File, ExportedJob Job)> All()
    {
        if (!Directory.Exists(_folder))
        {
            return [];
        }

        var all = ImmutableArray.CreateBuilder<(string, ExportedJob)>();
        foreach (string path in Directory.EnumerateFiles(_folder, "*" + Ending).Order(StringComparer.Ordinal))
        {
            if (ReadFile(path) is { } bytes && ExportFile.Read(bytes) is { Job: { } job })
            {
                all.Add((path, job));
            }
        }

        return all.DrainToImmutable();
    }

    /// <summary>Every file that is kept, whether it can be read or not.</summary>
    public IEnumerable<string> Files() =>
        Directory.Exists(_folder) ? Directory.EnumerateFiles(_folder, "*" + Ending).Order(StringComparer.Ordinal) : [];

    /// <summary>Those with a stamp, whatever the case of its letters; the longest trail first.</summary>
    public ImmutableArray<(string File, ExportedJob Job)> WithStamp(string stamp) =>
        [
            .. All()
                .Where(kept => string.Equals(kept.Job.Stamp, stamp, StringComparison.OrdinalIgnoreCase))
                .OrderByDescending(kept => kept.Job.Trail.Length),
        ];

    /// <summary>True when this very file is kept already.</summary>
    public bool Has(ReadOnlySpan<byte> file) => File.Exists(PathOf(file));

    /// <summary>Keeps a file; what was checked is the caller's to know.</summary>
    public void Put(ReadOnlySpan<byte> file)
    {
        Folders.Make(Disk.Real, _folder);
        WholeFile.Put(Disk.Real, PathOf(file), file);
    }

    /// <summary>A file's bytes; null when it is larger than an exported job can be or can't be read.</summary>
    public static byte[]? ReadFile(string path)
    {
        try
        {
            using FileStream file = Disk.OpenForReading(path);
            byte[] bytes = new byte[(int)Math.Min(file.Length, ExportFile.MostBytes + 1)];
            int read = file.ReadAtLeast(bytes, bytes.Length, throwOnEndOfStream: false);
            return read <= ExportFile.MostBytes ? bytes[..read] : null;
        }
        catch (Exception e) when (DiskTrouble.Is(e))
        {
            return null;
        }
    }

    private string PathOf(ReadOnlySpan<byte> file) => Path.Combine(_folder, Digest.Of(file) + Ending);
}
