using ProcRunner.Shop;
using ProcRunner.Trail;

namespace ProcRunner.Store.Local;

/// <summary>Reads a store beside its writer, without its lock.</summary>
public sealed class StoreReader : ITrailReader
{
    private const int Attempts = 3;
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(20);

    internal StoreReader(StorePaths paths) => Paths = paths;

    internal StorePaths Paths { get; }

    /// <summary>Who holds the store for writing, or held it last; null when that can't be read.</summary>
    public Holder? Holder => Holder.Read(Paths.Holder);

    /// <summary>A reader of the store in a folder.</summary>
    /// <returns>The reader, or why there is none.</returns>
    public static (StoreReader? Reader, StoreOpening? Fault) Open(string path)
    {
        try
        {
            var paths = new StorePaths(Path.GetFullPath(path));
            return StoreFormat.Check(paths) is { } fault ? (null, fault) : (new(paths), null);
        }
        catch (Exception e) when (DiskTrouble.Is(e))
        {
            return (null, new StoreOpening.Unusable(DiskTrouble.InWords(e)));
        }
    }

    /// <summary>The ids of the jobs whose trails are there.</summary>
    public IEnumerable<string> JobIds() => Paths.JobIds().Order(StringComparer.Ordinal);

    /// <summary>
    /// What the shop book comes to, as far as it holds. Of a book that doesn't, the jobs that it no longer tells of are taken from
    /// their own trails, so that they can still be read.
    /// </summary>
    public (ShopState Shop, TrailVerdict Verdict) ReadShop()
    {
        TrailReading book = ReadTrail(JobId.Shop);
        ShopState shop = book.Entries.Aggregate(ShopState.Empty, (state, line) => state.After(line.Entry, line.Digest));
        return (book.Verdict is TrailVerdict.Holds ? shop : WithJobsOfTheirOwn(shop), book.Verdict);
    }

    /// <summary>Reads a job's trail, or the shop book; one that is missing or can't be read counts as empty.</summary>
    public TrailReading ReadTrail(string of) => Settled(() => ReadOnce(of), reading => reading.Verdict);

    /// <summary>Checks a trail from end to end, beside its writer.</summary>
    internal TrailSummary Summarise(string of) => Settled(() => Paths.Summarise(of), summary => summary.Verdict);

    /// <summary>A pinned text; null when it is missing or isn't what its digest says.</summary>
    public byte[]? ReadText(Digest digest)
    {
        try
        {
            byte[] text = File.ReadAllBytes(Paths.Text(digest));
            return Digest.Of(text) == digest ? text : null;
        }
        catch (Exception e) when (DiskTrouble.Is(e))
        {
            return null;
        }
    }

    /// <summary>The search index over this store's trails.</summary>
    /// <param name="projection">How jobs are searched for.</param>
    /// <param name="looksOnce">
    /// True for a question or two: the trails are looked through once, and what is written after that isn't seen.
    /// </param>
    public SearchIndex Index(IndexProjection projection, bool looksOnce = false) => new(Paths, projection, looksOnce);

    private ShopState WithJobsOfTheirOwn(ShopState shop)
    {
        foreach (string id in JobIds().Where(id => !shop.Jobs.ContainsKey(id)))
        {
            TrailSummary trail = Summarise(id);
            if (trail.Opening is { } opening)
            {
                bool isClosedOut = trail.Anchored.Any(entry => entry.Why == Anchor.ClosedOut);
                ShopJob job = new(id, opening.Stamp, opening.Texts, [], isClosedOut);
                shop = shop with { Jobs = shop.Jobs.SetItem(id, job) };
            }
        }

        return shop;
    }

    // The writer may be in the middle of a line, of which a reader can see a part.
    private static T Settled<T>(Func<T> read, Func<T, TrailVerdict> verdict)
    {
        for (int attempt = 1; ; attempt++)
        {
            T reading = read();
            bool isTorn = verdict(reading) is TrailVerdict.Broken { Fault: TrailFault.TornTail };
            if (!isTorn || attempt == Attempts)
            {
                return reading;
            }

            Thread.Sleep(Pause);
        }
    }

    private TrailReading ReadOnce(string of)
    {
        // What stands in a shop book from elsewhere as a job's id may be a path.
        if (of != JobId.Shop && !JobId.IsValid(of))
        {
            return new([], new TrailVerdict.Broken(1, TrailFault.Empty, 0));
        }

        var entries = System.Collections.Immutable.ImmutableArray.CreateBuilder<(TrailEntry, Digest)>();
        try
        {
            using FileStream file = Disk.OpenForReading(Paths.Trail(of));
            TrailVerdict verdict = TrailCheck.Verify(file, of, (entry, digest) => entries.Add((entry, digest)));
            return new(entries.DrainToImmutable(), verdict);
        }
        catch (Exception e) when (DiskTrouble.Is(e))
        {
            return new([], new TrailVerdict.Broken(1, TrailFault.Empty, 0));
        }
    }
}
