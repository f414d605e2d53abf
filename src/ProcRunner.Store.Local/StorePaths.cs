using ProcRunner.Trail;

namespace ProcRunner.Store.Local;

/// <summary>Where things are in a store's folder. The names are part of the format.</summary>
internal sealed record StorePaths(string Root)
{
    /// <summary>The ending of a file that is being written and was never acknowledged.</summary>
    public const string Temporary = ".tmp";

    /// <summary>What stands between a trail's name and the number of a torn tail of it.</summary>
    public const string Torn = ".torn-";

    private const string TrailEnding = ".trail";

    public string Format => Path.Combine(Root, "store.json");

    public string Lock => Path.Combine(Root, "store.lock");

    public string Holder => Path.Combine(Root, "holder.txt");

    public string Book => Path.Combine(Root, "book" + TrailEnding);

    public string Jobs => Path.Combine(Root, "jobs");

    public string Texts => Path.Combine(Root, "texts");

    /// <summary>Jobs from elsewhere, each in the file it came in.</summary>
    public string Imported => Path.Combine(Root, "imported");

    public string Index => Path.Combine(Root, "index.db");

    /// <summary>LiteDB's own log beside the index; left over only after a crash.</summary>
    public string IndexLog => Path.Combine(Root, "index-log.db");

    public string IndexSum => Path.Combine(Root, "index.sum");

    public string IndexLock => Path.Combine(Root, "index.lock");

    /// <summary>The trail of a job, or the shop book.</summary>
    public string Trail(string of) => of == JobId.Shop ? Book : Path.Combine(Jobs, of + TrailEnding);

    public string Text(Digest digest) => Path.Combine(Texts, digest.ToString());

    /// <summary>The ids of the trails that there are.</summary>
    public IEnumerable<string> JobIds()
    {
        if (!Directory.Exists(Jobs))
        {
            yield break;
        }

        foreach (string file in Directory.EnumerateFiles(Jobs, "*" + TrailEnding))
        {
            string id = Path.GetFileNameWithoutExtension(file);
            if (JobId.IsValid(id))
            {
                yield return id;
            }
        }
    }

    /// <summary>True for the name of a file that a torn end can have been put aside to; false for a path to anywhere else.</summary>
    public static bool IsTornTail(string name)
    {
        string file = name.StartsWith("jobs/", StringComparison.Ordinal) ? name["jobs/".Length..] : name;
        return file.Contains(Torn, StringComparison.Ordinal) && Path.GetFileName(file) == file && !file.Contains('\\');
    }

    /// <summary>Checks a trail from end to end.</summary>
    public TrailSummary Summarise(string of)
    {
        using FileStream file = Disk.OpenForReading(Trail(of));
        return TrailCheck.Summarise(file, of);
    }

    /// <summary>True when there is nothing in the folder but what a founding that was cut off leaves.</summary>
    public bool IsFree()
    {
        string[] left =
        [
            Lock,
            Holder,
            Book,
            Jobs,
            Texts,
            Book + Temporary,
            Format + Temporary,
            Path.Combine(Root, "lost+found"),
        ];
        return !Directory.Exists(Root)
            || (Directory.EnumerateFileSystemEntries(Root).All(left.Contains) && !JobIds().Any());
    }

    /// <summary>How a file is named in the shop book: from the root, with forward slashes.</summary>
    public string Relative(string path) => Path.GetRelativePath(Root, path).Replace('\\', '/');
}
