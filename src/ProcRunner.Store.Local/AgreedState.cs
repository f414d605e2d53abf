using System.Collections.Immutable;
using System.Globalization;
using ProcRunner.Shop;
using ProcRunner.Trail;

namespace ProcRunner.Store.Local;

/// <summary>
/// The latest state that a store's files agree on: so much of the shop book, and so much of each trail, that the book knows no
/// entry which its trail lacks, and no trail an entry of the book which that lacks. In a folder that was copied file by file while
/// somebody worked, everything from before the copying is part of it.
/// </summary>
/// <remarks>
/// Nothing here tells a copy from a store whose end was cut off. Who takes this state takes it knowingly, and is told what is
/// left out; a check never does it by itself.
/// </remarks>
internal sealed class AgreedState
{
    private readonly StoreReader _reader;
    private readonly Dictionary<string, (TrailSummary Trail, long Agreed)> _trails = new(StringComparer.Ordinal);

    private AgreedState(StoreReader reader, TrailReading book) =>
        (_reader, Book, BookThere) = (reader, book.Entries.Length, book.Entries.Length);

    /// <summary>Entries of the shop book.</summary>
    public long Book { get; private set; }

    private long BookThere { get; }

    /// <summary>The trails, and how many entries of each.</summary>
    public IEnumerable<(string Id, long Entries)> Trails =>
        _trails.Where(t => t.Value.Agreed > 0).Select(t => (t.Key, t.Value.Agreed));

    /// <summary>What is there and isn't agreed on, in words; empty when everything is.</summary>
    public IReadOnlyList<string> LeftOut =>
        [
            .. BookThere > Book
                ? [$"the shop book after entry {Number(Book)}: {Entries(BookThere - Book)}"]
                : (string[])[],
            .. _trails
                .Where(t => t.Value.Trail.Entries > t.Value.Agreed)
                .Select(t =>
                    $"job {t.Value.Trail.Opening?.Stamp ?? t.Key} after entry {Number(t.Value.Agreed)}: {Entries(t.Value.Trail.Entries - t.Value.Agreed)}"
                )
                .Order(StringComparer.Ordinal),
        ];

    /// <summary>Finds it.</summary>
    /// <param name="reader">The store.</param>
    /// <param name="book">Its shop book, read before any trail.</param>
    /// <param name="progress">Told how many trails of how many are read.</param>
    /// <returns>The state, or why there is none: a trail that is more than cut short.</returns>
    public static (AgreedState? State, string Fault) Find(
        StoreReader reader,
        TrailReading book,
        Action<int, int>? progress
    )
    {
        AgreedState state = new(reader, book);
        string[] ids = [.. reader.JobIds()];
        for (int i = 0; i < ids.Length; i++)
        {
            TrailSummary trail = reader.Summarise(ids[i]);
            if (trail.Verdict is TrailVerdict.Broken { Fault: not (TrailFault.TornTail or TrailFault.Empty) } broken)
            {
                return (null, $"The trail of job {trail.Opening?.Stamp ?? ids[i]} doesn't hold. {broken.InWords()}");
            }

            bool hasTexts = trail.Opening is { } opening && opening.Texts.All(t => reader.ReadText(t) is not null);
            state._trails[ids[i]] = (trail, hasTexts ? trail.Entries : 0);
            progress?.Invoke(i + 1, ids.Length);
        }

        while (state.CutBook(book.Entries) | state.CutTrails())
        {
            // Each cut can leave something else without what it refers to.
        }

        return (state, "");
    }

    private bool CutBook(ImmutableArray<(TrailEntry Entry, Digest Digest)> book)
    {
        for (int i = 0; i < Book; i++)
        {
            if (!book[i].Entry.Events.Select(ShopEventFormat.Read).All(IsMet))
            {
                Book = i;
                return true;
            }
        }

        return false;
    }

    private bool IsMet(ShopEvent? told) =>
        told switch
        {
            ShopEvent.JobOpened e => Agreed(e.Job) >= 1,
            ShopEvent.JobAnchored e => Agreed(e.Job) >= e.Sequence,
            ShopEvent.JobClosedOut e => Agreed(e.Job) >= e.Sequence,
            _ => true,
        };

    private long Agreed(string id) => _trails.TryGetValue(id, out (TrailSummary, long Agreed) trail) ? trail.Agreed : 0;

    private bool CutTrails()
    {
        bool cut = false;
        foreach ((string id, (TrailSummary trail, long agreed)) in _trails.ToArray())
        {
            if (agreed == 0 || trail.Books.All(mark => mark.Sequence <= Book))
            {
                continue;
            }

            long upTo = _reader
                .ReadTrail(id)
                .Entries.Select(line => line.Entry)
                .TakeWhile(e => e.Sequence <= agreed && e.Book.Sequence <= Book)
                .LongCount();
            cut |= upTo < agreed;
            _trails[id] = (trail, upTo);
        }

        return cut;
    }

    private static string Entries(long count) => count == 1 ? "1 entry" : $"{Number(count)} entries";

    private static string Number(long number) => number.ToString(CultureInfo.InvariantCulture);
}
