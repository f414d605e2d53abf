using System.Globalization;
using ProcRunner.Shop;
using ProcRunner.Text;
using ProcRunner.Trail;

namespace ProcRunner.Store.Local;

/// <summary>
/// Checks a store without writing to it: each trail by itself, each against the shop book, the book against the trails,
/// the pinned texts against their digests, and that every change to the shop's people was signed for.
/// </summary>
/// <remarks>
/// What can't be seen: entries cut off a trail's end after the last one that the shop book knows (none of them signed off
/// or handed over), and a folder put back whole to an earlier state.
/// </remarks>
public sealed class StoreCheck
{
    private readonly StorePaths _paths;
    private readonly StoreReader _reader;
    private TrailReading _book;
    private ShopState _shop;

    private StoreCheck(StoreReader reader)
    {
        _paths = reader.Paths;
        _reader = reader;
        (_book, _shop) = ReadBook();
    }

    /// <summary>Checks everything; told how many trails of how many are done.</summary>
    /// <returns>What was found; nothing broken among it means that the store holds.</returns>
    public static IReadOnlyList<StoreFinding> All(StoreReader reader, Action<int, int>? progress = null)
    {
        ArgumentNullException.ThrowIfNull(reader);
        var check = new StoreCheck(reader);
        var ids = reader.JobIds().Union(check._shop.Jobs.Keys, StringComparer.Ordinal).ToList();
        var findings = check.OfShop().ToList();
        for (int i = 0; i < ids.Count; i++)
        {
            findings.AddRange(check.OfJob(ids[i]));
            progress?.Invoke(i + 1, ids.Count);
        }

        return findings;
    }

    /// <summary>Checks the shop book and one job.</summary>
    /// <returns>What was found; nothing broken among it means that the job's trail holds.</returns>
    public static IReadOnlyList<StoreFinding> Job(StoreReader reader, string jobId)
    {
        ArgumentNullException.ThrowIfNull(reader);
        var check = new StoreCheck(reader);
        return [.. check.OfShop(), .. check.OfJob(jobId)];
    }

    private (TrailReading Book, ShopState Shop) ReadBook()
    {
        TrailReading book = _reader.ReadTrail(JobId.Shop);
        return (book, book.Entries.Aggregate(ShopState.Empty, (state, line) => state.After(line.Entry, line.Digest)));
    }

    private IEnumerable<StoreFinding> OfShop()
    {
        if (_book.Verdict is TrailVerdict.Broken broken)
        {
            yield return new(JobId.Shop, true, broken.Entry, "Shop book: " + broken.InWords());
        }

        foreach (PeopleFinding finding in PeopleCheck.Of(_book.Entries))
        {
            yield return new(JobId.Shop, finding.IsBroken, finding.Entry, SafeText.Show(finding.Text));
        }

        if (IndexState.Of(_paths) is { } index)
        {
            yield return index;
        }

        foreach (ShopEvent.TornTailFound tail in _shop.TornTails)
        {
            string path = Path.Combine(_paths.Root, tail.File);
            bool isThere =
                StorePaths.IsTornTail(tail.File)
                && File.Exists(path)
                && Digest.Of(File.ReadAllBytes(path)) == tail.Digest;
            yield return new(
                tail.Of,
                !isThere,
                null,
                isThere
                    ? $"A last line that wasn't whole was once put aside to {tail.File}; it is there, unchanged."
                    : $"{tail.File}, where a last line that wasn't whole was put aside, is missing or was changed."
            );
        }
    }

    // The writer may be at work. Both files only grow, so a trail read after the book holds all that the book knows of it,
    // and a book read after the trail holds all that the trail knows of it: each is held against the one read before it.
    private List<StoreFinding> OfJob(string id)
    {
        ShopJob? job = _shop.Jobs.GetValueOrDefault(id);
        if (!JobId.IsValid(id) || !File.Exists(_paths.Trail(id)))
        {
            return
            [
                new(
                    id,
                    true,
                    1,
                    job is null
                        ? "There is no such job."
                        : $"The trail of job {SafeText.Show(job.Stamp)} is missing: it was deleted."
                ),
            ];
        }

        TrailSummary trail = _reader.Summarise(id);
        var findings = new List<StoreFinding>();
        if (trail.Verdict is TrailVerdict.Broken broken)
        {
            findings.Add(new(id, true, broken.Entry, broken.InWords()));
        }

        if (job is not null)
        {
            findings.AddRange(AnchorComparison.Compare(job, trail));
        }

        if (findings.Count == 0 && AnchorComparison.Behind(job, trail).Any())
        {
            findings.Add(
                new(
                    id,
                    false,
                    null,
                    "The shop book is behind this trail; it is brought up to it when the store is opened next."
                )
            );
        }

        findings.AddRange(BookAsTheTrailKnowsIt(id, trail));
        findings.AddRange(Texts(id, job?.Texts ?? trail.Opening?.Texts ?? []));
        return findings;
    }

    // Each entry of a trail names the shop book's last entry then, so that the trails vouch for the book.
    private IEnumerable<StoreFinding> BookAsTheTrailKnowsIt(string id, TrailSummary trail)
    {
        if (trail.Books.Any(mark => mark.Sequence > _book.Entries.Length))
        {
            (_book, _shop) = ReadBook();
        }

        foreach (BookMark mark in trail.Books)
        {
            bool isKnown = mark.Sequence >= 1 && mark.Sequence <= _book.Entries.Length;
            if (!isKnown || _book.Entries[(int)mark.Sequence - 1].Digest != mark.Digest)
            {
                string what = isKnown ? "isn't the one that this trail knows" : "is missing";
                yield return new(
                    id,
                    true,
                    null,
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"Entry {mark.Sequence} of the shop book {what}: the book was cut short or written anew."
                    )
                );
                yield break;
            }
        }
    }

    private IEnumerable<StoreFinding> Texts(string id, IEnumerable<Digest> texts)
    {
        foreach (Digest digest in texts)
        {
            if (_reader.ReadText(digest) is null)
            {
                yield return new(id, true, 1, $"The pinned text {digest} is missing or was changed.");
            }
        }
    }
}
