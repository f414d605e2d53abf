using System.Collections.Immutable;
using System.Runtime.InteropServices;

namespace ProcRunner.Store.Local;

/// <summary>
/// Every job in memory, by the words that are looked for. Each different text is kept once, however many jobs it stands in,
/// and a search compares with each text once. Not thread-safe.
/// </summary>
internal sealed class JobCatalogue
{
    private static readonly JobField[] Fields = Enum.GetValues<JobField>();

    private readonly List<IndexedJob?> _jobs = [];
    private readonly List<(long Opened, long Last)> _times = [];

    // 1 where a job is, 0 where one was: it went on and stands further back now.
    private readonly List<byte> _isThere = [];
    private readonly List<int> _latestLast = [];
    private readonly Dictionary<string, int> _places = new(StringComparer.Ordinal);
    private readonly TextPlaces[] _texts = [.. Fields.Select(_ => new TextPlaces())];
    private readonly PackedTexts _folded = new();
    private readonly Dictionary<IndexedPart, IndexedPart> _parts = [];
    private readonly Dictionary<string, string> _words = new(StringComparer.Ordinal);
    private bool _isSorted = true;

    /// <summary>All jobs, in no order.</summary>
    public IEnumerable<IndexedJob> Jobs => _jobs.OfType<IndexedJob>();

    /// <summary>All jobs, the one worked on last first.</summary>
    public ImmutableArray<IndexedJob> Latest()
    {
        ReadOnlySpan<int> latest = LatestLast();
        ImmutableArray<IndexedJob>.Builder jobs = ImmutableArray.CreateBuilder<IndexedJob>(Count);
        for (int i = latest.Length - 1; i >= 0; i--)
        {
            if (_jobs[latest[i]] is { } job)
            {
                jobs.Add(job);
            }
        }

        return jobs.MoveToImmutable();
    }

    /// <summary>How many jobs there are.</summary>
    public int Count => _places.Count;

    /// <summary>A job by its id, null when it isn't there.</summary>
    public IndexedJob? Find(string id) => _places.TryGetValue(id, out int place) ? _jobs[place] : null;

    /// <summary>Puts a job in, in place of what was known of it.</summary>
    public void Put(IndexedJob job)
    {
        Remove(job.Id);
        int place = _jobs.Count;
        IndexedJob kept = Kept(job);
        _jobs.Add(kept);
        _isThere.Add(1);
        _times.Add((job.Opened.UtcTicks, job.LastActivity.UtcTicks));
        _places.Add(job.Id, place);
        _isSorted &= _latestLast.Count == 0 || _times[_latestLast[^1]].Last <= _times[place].Last;
        _latestLast.Add(place);
        foreach (JobField field in Fields)
        {
            foreach (string text in kept.TextsOf(field))
            {
                if (text.Length > 0 && _texts[(int)field].Add(text, place) && field == JobField.Stamp)
                {
                    _folded.Add(StampLikeness.Fold(text));
                }
            }
        }
    }

    /// <summary>Takes a job out. What it leaves behind is small, and gone when the program next starts.</summary>
    public void Remove(string id)
    {
        if (_places.Remove(id, out int place))
        {
            (_jobs[place], _isThere[place]) = (null, 0);
        }
    }

    /// <summary>The jobs that fit, the best first, and of equals the one that was worked on last.</summary>
    /// <param name="query">What is looked for.</param>
    /// <param name="most">How many are given.</param>
    /// <returns>The first of them, and how many there are.</returns>
    public (ImmutableArray<JobHit> Hits, int Count) Find(JobQuery query, int most)
    {
        foreach (TextPlaces texts in _texts)
        {
            texts.PutTogether();
        }

        using JobRanks there = new(CollectionsMarshal.AsSpan(_isThere));
        using JobRanks fits = new(CollectionsMarshal.AsSpan(_isThere));
        KeepDays(query, fits);
        JobSearch search = new(_texts, _folded, _jobs);
        search.Rank(query, there, fits);

        Span<int> counts = stackalloc int[StampLikeness.Same + 1];
        foreach (byte rank in fits.All)
        {
            counts[rank]++;
        }

        // What is only like a stamp is noise beside the stamp itself; 1 is the rank where nothing was looked for.
        bool isLikeNoise = counts[StampLikeness.Same] > 0;
        for (int rank = 0; rank < counts.Length; rank++)
        {
            bool isShown = rank > 0 && !(isLikeNoise && StampLikeness.IsLike(rank));
            counts[rank] = isShown ? counts[rank] : 0;
        }

        int count = Sum(counts);
        return ([.. Shown(fits, counts, most).Select(place => search.Hit(_jobs[place]!, fits[place]))], count);
    }

    // A job is one of the days when something happened in it on the first or later, and it was opened before the last was over.
    private void KeepDays(JobQuery query, JobRanks fits)
    {
        if (query.From is null && query.Before is null)
        {
            return;
        }

        (long from, long before) = (query.From?.UtcTicks ?? long.MinValue, query.Before?.UtcTicks ?? long.MaxValue);
        ReadOnlySpan<(long Opened, long Last)> times = CollectionsMarshal.AsSpan(_times);
        Span<byte> all = fits.All;
        for (int place = 0; place < all.Length; place++)
        {
            if (times[place].Last < from || times[place].Opened >= before)
            {
                all[place] = 0;
            }
        }
    }

    // The places of the best, the best first, and of equals the one that was worked on last.
    private IEnumerable<int> Shown(JobRanks fits, ReadOnlySpan<int> counts, int most)
    {
        int room = Math.Min(Sum(counts), most);
        (int least, int ofLeast) = Cut(counts, most);
        ReadOnlySpan<int> latest = LatestLast();
        List<int> shown = new(room);
        for (int i = latest.Length - 1; i >= 0 && shown.Count < room; i--)
        {
            int rank = fits[latest[i]];
            if (counts[rank] > 0 && (rank > least || (rank == least && ofLeast-- > 0)))
            {
                shown.Add(latest[i]);
            }
        }

        return shown.OrderByDescending(place => fits[place]);
    }

    /// <summary>The jobs that hold a part of exactly this number, and of this lot when one is given; whatever the case.</summary>
    public ImmutableArray<IndexedJob> Holding(string number, string? lot) =>
        [
            .. _texts[(int)JobField.Part]
                .Of(number)
                .Select(place => _jobs[place])
                .OfType<IndexedJob>()
                .Where(job => job.Parts.Any(p => Same(p.Number, number) && (lot is null || Same(p.Lot, lot))))
                .OrderBy(job => job.Opened),
        ];

    /// <summary>The jobs in which a gauge was used at or after a moment.</summary>
    public ImmutableArray<IndexedJob> Using(string gauge, DateTimeOffset since) =>
        [
            .. _texts[(int)JobField.Gauge]
                .Of(gauge)
                .Select(place => _jobs[place])
                .OfType<IndexedJob>()
                .Where(job => job.LastActivity >= since)
                .OrderBy(job => job.Opened),
        ];

    // Places by when the job was last worked on. A job that goes on comes last, so that this is sorted once.
    private ReadOnlySpan<int> LatestLast()
    {
        if (!_isSorted)
        {
            _latestLast.RemoveAll(place => _jobs[place] is null);
            _latestLast.Sort((a, b) => _times[a].Last.CompareTo(_times[b].Last));
            _isSorted = true;
        }

        return CollectionsMarshal.AsSpan(_latestLast);
    }

    // The rank from which on all are shown, and how many of that rank itself.
    private static (int Least, int OfLeast) Cut(ReadOnlySpan<int> counts, int most)
    {
        int room = most;
        for (int rank = counts.Length - 1; rank > 0; rank--)
        {
            if (counts[rank] >= room)
            {
                return (rank, room);
            }

            room -= counts[rank];
        }

        return (0, 0);
    }

    private static int Sum(ReadOnlySpan<int> counts)
    {
        int sum = 0;
        foreach (int count in counts)
        {
            sum += count;
        }

        return sum;
    }

    // A hundred thousand jobs name the same customers, people, gauges and parts again and again.
    private IndexedJob Kept(IndexedJob job) =>
        job with
        {
            Customer = Once(job.Customer),
            State = Once(job.State),
            WaitingFor = Once(job.WaitingFor),
            Person = Once(job.Person),
            Head = Once(job.Head),
            Bench = Once(job.Bench),
            People = Once(job.People),
            Gauges = Once(job.Gauges),
            Cutters = Once(job.Cutters),
            Notes = Once(job.Notes),
            Parts = [.. job.Parts.Select(Once)],
            Readings = [],
        };

    private ImmutableArray<string> Once(ImmutableArray<string> texts) => [.. texts.Select(Once)];

    private string Once(string text)
    {
        ref string? there = ref CollectionsMarshal.GetValueRefOrAddDefault(_words, text, out _);
        return there ??= text;
    }

    private IndexedPart Once(IndexedPart part)
    {
        ref IndexedPart? there = ref CollectionsMarshal.GetValueRefOrAddDefault(_parts, part, out _);
        return there ??= new(Once(part.Name), Once(part.Number), Once(part.Lot), Once(part.Position))
        {
            IsInPlace = part.IsInPlace,
        };
    }

    private static bool Same(string a, string b) => string.Equals(a, b, StringComparison.OrdinalIgnoreCase);
}
