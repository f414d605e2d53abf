using System.Collections.Immutable;
using ProcRunner.Shop;
using ProcRunner.Text;
using ProcRunner.Trail;

namespace ProcRunner.Store.Local;

/// <summary>
/// A store that this program holds for writing. What a method acknowledges is on the medium: pinned texts and a new trail
/// first, then the entry, then what the shop book has to say of it. A failure leaves everything as it was acknowledged.
/// </summary>
/// <remarks>
/// An entry that belongs into the shop book is acknowledged only with it. When the book can't be written, the book is cut
/// back first and the trail after it, never the other way round: a book that knows an entry which the trail lacks would
/// look like a trail cut short.
/// </remarks>
public sealed class LocalStore : IDisposable
{
    private static readonly AppendResult.Refused TooLong = new(
        "That is more than one entry of a trail can hold: nothing was recorded. Say it shorter."
    );

    private readonly Lock _gate = new();
    private readonly StorePaths _paths;
    private readonly IDisk _disk;
    private readonly StoreSettings _settings;
    private readonly TrailFile _book;
    private readonly OpenTrails _trails;
    private readonly List<string> _unacknowledged = [];
    private readonly HeldLock _lock;
    private bool _isIndexBehind;

    internal LocalStore(
        StorePaths paths,
        IDisk disk,
        StoreSettings settings,
        HeldLock held,
        TrailFile book,
        ShopState shop
    )
    {
        (_paths, _disk, _settings, _lock, _book, Shop) = (paths, disk, settings, held, book, shop);
        _trails = new OpenTrails(paths, disk);
    }

    /// <summary>What the shop book comes to.</summary>
    public ShopState Shop { get; private set; }

    /// <summary>What was found while opening: ends put aside, a book that was behind, trails that don't hold.</summary>
    public ImmutableArray<StoreFinding> Findings { get; internal set; } = [];

    /// <summary>Reads what is in the store.</summary>
    public StoreReader Reader => new(_paths);

    /// <summary>The search index, null when none is kept.</summary>
    public SearchIndex? Index { get; internal set; }

    /// <summary>A number for a new job that no job has.</summary>
    public string ProposeStamp() => Shop.ProposeStamp();

    /// <summary>
    /// Opens a job: stores the pinned texts, begins its trail and enters it in the shop book. The new job's id is the
    /// written entry's <see cref="TrailEntry.Of"/>.
    /// </summary>
    /// <param name="stamp">Not empty, without control characters, and no other job's, whatever the case of its letters.</param>
    /// <param name="texts">The pinned texts, each stored once under its digest.</param>
    /// <param name="draft">The first entry; its anchor is <see cref="Anchor.Opened"/> whatever it says.</param>
    public AppendResult OpenJob(string stamp, IEnumerable<ReadOnlyMemory<byte>> texts, EntryDraft draft)
    {
        ArgumentNullException.ThrowIfNull(draft);
        ArgumentNullException.ThrowIfNull(texts);
        if (string.IsNullOrWhiteSpace(stamp) || SafeText.Clean(stamp).Trim() != stamp)
        {
            return new AppendResult.Refused("A stamp isn't empty, has no space around it and no control characters.");
        }

        lock (_gate)
        {
            if (Shop.JobsWithStamp(stamp).Any())
            {
                return new AppendResult.Refused($"The stamp {stamp} is another job's already.");
            }

            return TidyUp() ?? BeginJob(stamp, [.. texts], draft with { Anchor = Anchor.Opened });
        }
    }

    /// <summary>Writes one entry to a job's trail.</summary>
    /// <exception cref="ArgumentException">The draft's anchor is <see cref="Anchor.Opened"/>, or an entry can't hold the draft.</exception>
    public AppendResult Append(string jobId, EntryDraft draft)
    {
        ArgumentNullException.ThrowIfNull(draft);
        if (draft.Anchor == Anchor.Opened)
        {
            throw new ArgumentException("A job is opened by OpenJob.", nameof(draft));
        }

        lock (_gate)
        {
            if (TidyUp() is { } failed)
            {
                return failed;
            }

            (TrailFile? trail, AppendResult? refused) = TrailOf(jobId);
            if (trail is null)
            {
                return refused!;
            }

            if (trail.IsClosedOut)
            {
                return new AppendResult.Refused("The job is closed out: nothing follows in its trail.");
            }

            TrailEntry entry = Compose(trail, draft, null);
            if (TrailLine.TryEncode(entry) is not { } line)
            {
                return TooLong;
            }

            if (trail.File.TryWrite(line) is { } trouble)
            {
                return Failed(trouble);
            }

            return Anchored(entry, line, () => trail.File.Undo()) is { } notInBook
                ? notInBook
                : Acknowledged(trail, entry, line);
        }
    }

    /// <summary>Writes one entry to the shop book.</summary>
    public AppendResult AppendShop(string operatorId, params ReadOnlySpan<ShopEvent> events)
    {
        var written = ImmutableArray.CreateBuilder<Json.Map>(events.Length);
        foreach (ShopEvent shopEvent in events)
        {
            written.Add(ShopEventFormat.Write(shopEvent));
        }

        lock (_gate)
        {
            if (TidyUp() is { } failed)
            {
                return failed;
            }

            TrailEntry entry = Compose(_book, new(operatorId, written.DrainToImmutable()), null);
            if (TrailLine.TryEncode(entry) is not { } line)
            {
                return TooLong;
            }

            if (_book.File.TryWrite(line) is { } trouble)
            {
                return Failed(trouble);
            }

            AcknowledgeBook(entry, line);
            return new AppendResult.Written(entry, _book.Last);
        }
    }

    /// <summary>
    /// Brings the search index up to the trails, if the store keeps one. For a moment in which nobody waits, and after many
    /// entries rather than each: a search does the same first. Trouble with the index is no trouble of the store.
    /// </summary>
    public void UpdateIndex()
    {
        if (Index is not null && _isIndexBehind)
        {
            _isIndexBehind = !Index.TryRefresh();
        }
    }

    /// <summary>Lets go of the store.</summary>
    public void Dispose()
    {
        lock (_gate)
        {
            // While the book can't be put back, no trail is: a book that knows more than a trail looks like a trail cut short.
            bool isBookRight = TidyUp() is null;
            if (isBookRight)
            {
                _trails.Undo();
            }

            // A whole index isn't made here: whoever closes the program doesn't wait for it.
            if (File.Exists(_paths.Index))
            {
                UpdateIndex();
            }

            _trails.Dispose();
            _book.Dispose();
            _lock.Dispose();
        }
    }

    // What earlier failures left behind goes first, the book before the trails.
    private AppendResult.Failed? TidyUp()
    {
        if ((_lock.Keep() ?? _book.File.Undo()) is { } fault)
        {
            return Failed(fault);
        }

        foreach (string path in _unacknowledged.ToArray())
        {
            try
            {
                _disk.Delete(path);
                _disk.FlushFolder(_paths.Jobs);
                _unacknowledged.Remove(path);
            }
            catch (Exception e) when (DiskTrouble.Is(e))
            {
                return Failed(DiskTrouble.InWords(e));
            }
        }

        return null;
    }

    private AppendResult.Failed Failed(string why)
    {
        _lock.Doubt();
        return new(why);
    }

    private AppendResult BeginJob(string stamp, ReadOnlyMemory<byte>[] texts, EntryDraft draft)
    {
        string id = JobId.New(_settings.Entropy);
        string path = _paths.Trail(id);
        var digests = texts.Select(text => Digest.Of(text.Span)).Distinct().ToImmutableArray();
        var none = new TrailFile(id, new(_disk, path, id, 0, Digest.Zero), 0, Digest.Zero, isClosedOut: false);
        TrailEntry entry = Compose(none, draft, new(stamp, digests));
        if (TrailLine.TryEncode(entry) is not { } line)
        {
            return TooLong;
        }

        _unacknowledged.Add(path);
        try
        {
            foreach (ReadOnlyMemory<byte> text in texts)
            {
                PutText(text.Span);
            }

            WholeFile.Put(_disk, path, line);
        }
        catch (Exception e) when (DiskTrouble.Is(e))
        {
            TidyUp();
            return Failed(DiskTrouble.InWords(e));
        }

        if (Anchored(entry, line, () => TidyUp()) is { } failed)
        {
            return failed;
        }

        _unacknowledged.Remove(path);
        _trails.Add(none);
        return Acknowledged(none, entry, line);
    }

    private void PutText(ReadOnlySpan<byte> text)
    {
        string path = _paths.Text(Digest.Of(text));
        bool isThere = File.Exists(path) && File.ReadAllBytes(path).AsSpan().SequenceEqual(text);
        if (!isThere)
        {
            WholeFile.Put(_disk, path, text);
        }
    }

    // Writes what the shop book has to say of an entry that is on the medium; null when that is done or there is nothing.
    private AppendResult.Failed? Anchored(TrailEntry entry, byte[] line, Action undo)
    {
        if (entry.Anchor == Anchor.None)
        {
            return null;
        }

        var anchored = new AnchoredEntry(entry.Sequence, TrailLine.DigestOf(line), entry.Anchor, entry.Operator);
        EntryDraft draft = new(
            entry.Operator,
            [.. BookEntries.Of(entry.Of, entry.Opening, anchored).Select(ShopEventFormat.Write)]
        );
        TrailEntry bookEntry = Compose(_book, draft, null);
        byte[] bookLine = TrailLine.Encode(bookEntry);
        if (_book.File.TryWrite(bookLine) is { } trouble)
        {
            if (_book.File.Undo() is null)
            {
                undo();
            }

            return Failed(trouble);
        }

        AcknowledgeBook(bookEntry, bookLine);
        return null;
    }

    private AppendResult.Written Acknowledged(TrailFile trail, TrailEntry entry, byte[] line)
    {
        trail.Acknowledge(line, entry.Anchor);
        _isIndexBehind = true;
        Index?.WentOn(entry.Of);
        return new(entry, trail.Last);
    }

    private void AcknowledgeBook(TrailEntry entry, byte[] line)
    {
        _book.Acknowledge(line, Anchor.None);
        Shop = Shop.After(entry, _book.Last);
    }

    private (TrailFile? Trail, AppendResult? Refused) TrailOf(string jobId)
    {
        try
        {
            (TrailFile? trail, string why) = _trails.Of(jobId, Shop);
            return (trail, trail is null ? new AppendResult.Refused(why) : null);
        }
        catch (Exception e) when (DiskTrouble.Is(e))
        {
            return (null, Failed(DiskTrouble.InWords(e)));
        }
    }

    private TrailEntry Compose(TrailFile trail, EntryDraft draft, JobOpening? opening)
    {
        DateTimeOffset now = _settings.Time.GetUtcNow();
        TimeSpan offset = _settings.Time.LocalTimeZone.GetUtcOffset(now);
        return new()
        {
            Of = trail.Of,
            Sequence = trail.Sequence + 1,
            Previous = trail.Last,
            At = now.AddTicks(-(now.Ticks % TimeSpan.TicksPerMillisecond)),
            Offset = TimeSpan.FromMinutes((int)offset.TotalMinutes),
            Operator = draft.Operator,
            Bench = _settings.Bench,
            Book = _book.Mark,
            Anchor = draft.Anchor,
            Opening = opening,
            Events = draft.Events,
        };
    }
}
