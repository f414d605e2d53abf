using ProcRunner.Shop;
using ProcRunner.Text;
using ProcRunner.Trail;

namespace ProcRunner.Store.Local;

/// <summary>The way from a folder to an open store: lock, format, shop book, torn ends, catching up.</summary>
internal sealed class StoreStart(StorePaths paths, IDisk disk, StoreSettings settings, string purpose)
{
    // Only a trail's last line can be in doubt, and no entry comes near this.
    private const int LongestLast = 64 * 1024;

    private readonly TornTails _tornTails = new(paths, disk);
    private readonly List<StoreFinding> _findings = [];

    public Func<string, FileStream> OpenLock { get; init; } = StoreLock.OpenExclusively;

    public IndexProjection? Projection { get; init; }

    /// <summary>Opens the store, or founds it when a name is given.</summary>
    public StoreOpening Run(string? newName)
    {
        FileStream? held = null;
        StoreOpening? opening = null;
        try
        {
            opening = Prepare(newName) ?? StoreLock.Take(paths.Lock, OpenLock, out held);
            if (opening is StoreOpening.InUse)
            {
                opening = new StoreOpening.InUse(Holder.Read(paths.Holder));
            }

            opening ??= OpenHeld(newName, held!);
        }
        catch (Exception e) when (DiskTrouble.Is(e))
        {
            opening = new StoreOpening.Unusable(DiskTrouble.InWords(e));
        }
        finally
        {
            if (opening is not StoreOpening.Opened)
            {
                held?.Dispose();
            }
        }

        return opening;
    }

    private StoreOpening? Prepare(string? newName)
    {
        if (newName is null)
        {
            return StoreFormat.Check(paths);
        }

        if (!paths.IsFree())
        {
            return new StoreOpening.AlreadyThere();
        }

        Folders.Make(disk, paths.Root);
        return null;
    }

    private StoreOpening OpenHeld(string? newName, FileStream held)
    {
        new Holder(Environment.ProcessId, Environment.MachineName, settings.Time.GetUtcNow(), purpose).Write(
            paths.Holder
        );
        if (newName is not null)
        {
            if (File.Exists(paths.Format))
            {
                return new StoreOpening.AlreadyThere();
            }

            Found(newName);
        }

        RemoveUnfinished();
        (TrailFile? book, ShopState shop, TrailVerdict verdict) = OpenBook();
        if (book is null)
        {
            string[] ids = [.. paths.JobIds()];
            int holding = ids.Count(id => paths.Summarise(id).Verdict is TrailVerdict.Holds);
            return new StoreOpening.BookBroken(verdict, ids.Length, holding);
        }

        var store = new LocalStore(paths, disk, settings, new HeldLock(paths, OpenLock, held), book, shop);
        if (CatchUp(store) is AppendResult.Failed failed)
        {
            store.Dispose();
            return new StoreOpening.Unusable(failed.Why);
        }

        store.Findings = [.. _findings];
        store.Index = Projection is null ? null : new(paths, Projection, looksOnce: true);
        return new StoreOpening.Opened(store);
    }

    // The format file comes last: until it is there, the folder is no store and can be founded again.
    private void Found(string name)
    {
        disk.MakeFolder(paths.Root);
        Folders.FlushName(disk, paths.Root);
        Folders.Make(disk, paths.Jobs);
        Folders.Make(disk, paths.Texts);
        DateTimeOffset now = settings.Time.GetUtcNow();
        var entry = new TrailEntry
        {
            Of = JobId.Shop,
            Sequence = 1,
            Previous = Digest.Zero,
            At = now,
            Offset = TimeSpan.FromMinutes((int)settings.Time.LocalTimeZone.GetUtcOffset(now).TotalMinutes),
            Operator = "",
            Bench = settings.Bench,
            Book = BookMark.None,
            Events = [ShopEventFormat.Write(new ShopEvent.ShopFounded(name))],
        };
        WholeFile.Put(disk, paths.Book, TrailLine.Encode(entry));
        WholeFile.Put(disk, paths.Format, StoreFormat.Bytes);
    }

    // What a program that was killed had written but not flushed is there and will be taken as recorded: from now on it must
    // stay. And what a flush that failed left in the system's cache isn't on the medium, though it can be read and flushed
    // as if it were: the cache is dropped first.
    private void Settle(string path)
    {
        using FileStream file = disk.Open(path, FileMode.Open);
        disk.Flush(file);
        disk.Forget(file, Math.Max(0, RandomAccess.GetLength(file.SafeFileHandle) - LongestLast));
    }

    private void RemoveUnfinished()
    {
        Folders.FlushName(disk, paths.Root);
        foreach (string folder in (string[])[paths.Root, paths.Jobs, paths.Texts])
        {
            Folders.Make(disk, folder);
            foreach (string file in Directory.GetFiles(folder, "*" + StorePaths.Temporary))
            {
                disk.Delete(file);
            }

            disk.FlushFolder(folder);
        }
    }

    private (TrailFile? Book, ShopState Shop, TrailVerdict Verdict) OpenBook()
    {
        if (!File.Exists(paths.Book))
        {
            return (null, ShopState.Empty, new TrailVerdict.Broken(1, TrailFault.Empty, 0));
        }

        Settle(paths.Book);
        TrailSummary summary = _tornTails.Mend(JobId.Shop, paths.Summarise(JobId.Shop));
        if (summary.Verdict is TrailVerdict.Broken)
        {
            return (null, ShopState.Empty, summary.Verdict);
        }

        ShopState shop = ShopState.Empty;
        List<(TrailEntry, Digest)> entries = [];
        using (FileStream file = Disk.OpenForReading(paths.Book))
        {
            TrailCheck.Verify(
                file,
                JobId.Shop,
                (entry, digest) =>
                {
                    shop = shop.After(entry, digest);
                    entries.Add((entry, digest));
                }
            );
        }

        // What is only to be known for ever is verify's to say; what nobody signed for is said at every start.
        _findings.AddRange(
            PeopleCheck
                .Of(entries)
                .Where(f => f.IsBroken)
                .Select(f => new StoreFinding(JobId.Shop, true, f.Entry, SafeText.Show(f.Text)))
        );

        var book = new AppendOnlyFile(disk, paths.Book, JobId.Shop, summary.Length, summary.Last);
        return (new(JobId.Shop, book, summary.Entries, summary.Last, isClosedOut: false), shop, summary.Verdict);
    }

    /// <summary>Enters in the shop book what the trails and the ends put aside say and the book doesn't.</summary>
    private AppendResult? CatchUp(LocalStore store)
    {
        var events = new List<ShopEvent>();
        var there = paths.JobIds().Order(StringComparer.Ordinal).ToList();
        foreach (string id in store.Shop.Jobs.Keys.Except(there, StringComparer.Ordinal))
        {
            _findings.Add(
                new(id, true, 1, $"The trail of job {store.Shop.Jobs[id].Stamp} is missing: it was deleted.")
            );
        }

        foreach (string id in there)
        {
            ShopJob? job = store.Shop.Jobs.GetValueOrDefault(id);
            if (job is not { IsClosedOut: true })
            {
                events.AddRange(CatchUp(id, job));
            }
        }

        foreach (ShopEvent.TornTailFound tail in _tornTails.Unrecorded(store.Shop))
        {
            _findings.Add(new(tail.Of, false, null, $"The last line wasn't whole; it was put aside to {tail.File}."));
            events.Add(tail);
        }

        return events.Count == 0 ? null : store.AppendShop("", [.. events]);
    }

    private IEnumerable<ShopEvent> CatchUp(string id, ShopJob? job)
    {
        Settle(paths.Trail(id));
        TrailSummary trail = _tornTails.Mend(id, paths.Summarise(id));
        List<StoreFinding> broken =
            trail.Verdict is TrailVerdict.Broken fault ? [new(id, true, fault.Entry, fault.InWords())]
            : job is not null ? [.. AnchorComparison.Compare(job, trail)]
            : trail.Opening is null ? [new(id, true, 1, "The trail opens no job: it isn't one of this store.")]
            : [];
        _findings.AddRange(broken);
        var behind = AnchorComparison.Behind(job, trail).ToList();
        if (broken.Count > 0 || behind.Count == 0)
        {
            return [];
        }

        _findings.Add(new(id, false, null, "The shop book was behind this trail; it was brought up to it."));
        return behind
            .SelectMany(entry => BookEntries.Of(id, trail.Opening, entry))
            .Prepend(new ShopEvent.BookCaughtUp(id));
    }
}
