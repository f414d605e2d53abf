using System.Globalization;
using ProcRunner.Shop;
using ProcRunner.Trail;

namespace ProcRunner.Store.Local;

/// <summary>
/// Puts the end of a trail aside when it was cut off while it was written. Nothing is thrown away, and the shop book says
/// what was found. A whole line that doesn't hold is no torn one: somebody altered it, and the trail stays broken.
/// </summary>
internal sealed class TornTails(StorePaths paths, IDisk disk)
{
    /// <summary>
    /// True when a trail doesn't hold, but all that doesn't is its end, and the end has no newline, or holds the zero bytes
    /// that a power cut leaves where a file had grown and nothing was written yet. No entry ever holds one.
    /// </summary>
    public static bool IsTorn(TrailSummary trail, ReadOnlySpan<byte> rest)
    {
        if (trail.Verdict is not TrailVerdict.Broken || trail.Entries == 0 || rest.IsEmpty)
        {
            return false;
        }

        int newline = rest.IndexOf((byte)'\n');
        return newline < 0 || (newline == rest.Length - 1 && rest.Contains((byte)0));
    }

    /// <summary>Puts the end aside if it is torn.</summary>
    /// <returns>What the trail is then.</returns>
    public TrailSummary Mend(string of, TrailSummary trail)
    {
        string path = paths.Trail(of);
        byte[] rest = ReadFrom(path, trail.Length);
        if (!IsTorn(trail, rest))
        {
            return trail;
        }

        string aside = PlaceFor(path, rest);
        if (!File.Exists(aside))
        {
            WholeFile.Put(disk, aside, rest);
        }

        using (FileStream file = disk.Open(path, FileMode.Open))
        {
            disk.Cut(file, trail.Length);
            disk.Flush(file);
        }

        return trail with
        {
            Verdict = new TrailVerdict.Holds(trail.Entries, trail.Last),
        };
    }

    /// <summary>The ends put aside that the shop book doesn't know yet.</summary>
    public IEnumerable<ShopEvent.TornTailFound> Unrecorded(ShopState shop)
    {
        var known = shop.TornTails.Select(tail => tail.File).ToHashSet(StringComparer.Ordinal);
        foreach (string folder in (string[])[paths.Root, paths.Jobs])
        {
            foreach (
                string file in Directory
                    .EnumerateFiles(folder, "*" + StorePaths.Torn + "*")
                    .Order(StringComparer.Ordinal)
            )
            {
                string name = paths.Relative(file);
                string trail = Path.GetFileName(file).Split('.')[0];
                if (!known.Contains(name))
                {
                    byte[] bytes = File.ReadAllBytes(file);
                    yield return new(folder == paths.Root ? JobId.Shop : trail, name, bytes.Length, Digest.Of(bytes));
                }
            }
        }
    }

    // The first number that is free, or that a crash after the same end was put aside left behind.
    private static string PlaceFor(string path, byte[] rest)
    {
        for (int n = 1; ; n++)
        {
            string aside = path + StorePaths.Torn + n.ToString(CultureInfo.InvariantCulture);
            if (!File.Exists(aside) || File.ReadAllBytes(aside).AsSpan().SequenceEqual(rest))
            {
                return aside;
            }
        }
    }

    private static byte[] ReadFrom(string path, long offset)
    {
        using FileStream file = Disk.OpenForReading(path);
        file.Position = offset;
        byte[] rest = new byte[Math.Min(file.Length - offset, TrailLine.MaxLength + 1)];
        file.ReadExactly(rest);
        return rest;
    }
}
