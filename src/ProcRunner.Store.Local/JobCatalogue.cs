using System.Collections.Immutable;
using System.Runtime.InteropServices;
using ProcRunner.Trail;

namespace ProcRunner.Store.Local;

/// <summary>
/// Every job in memory, by the words that are looked for. Each different text is kept once, however many jobs it stands in,
/// and a search compares with each text once. Not thread-safe.
/// </summary>
internal sealed class JobCatalogue
{
    private static readonly (long, long) Gone = (long.MinValue, long.MinValue);
    private static readonly JobField[] Fields = Enum.GetValues<JobField>();

    private readonly List<IndexedJob?> _jobs = [];
    private readonly List<(long Opened, long Last)> _times = [];
    private readonly Dictionary<string, int> _places = new(StringComparer.Ordinal);
    private readonly TextPlaces[] _texts = [.. Fields.Select(_ => new TextPlaces())];
    private readonly PackedTexts _folded = new();
    private readonly Dictionary<IndexedPart, IndexedPart> _parts = [];
    private readonly Dictionary<string, string> _words = new(StringComparer.Ordinal);

    /// <summary>All jobs, in no order.</summary>
    public IEnumerable<IndexedJob> Jobs => _jobs.OfType<IndexedJob>();

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
        _times.Add((job.Opened.UtcTicks, job.LastActivity.UtcTicks));
        _places.Add(job.Id, place);
        foreach (JobField field in Fields)
        {
            foreach (string text in TextsOf(kept, field))
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
            (_jobs[place], _times[place]) = (null, Gone);
        }
    }

    /// <summary>The jobs that fit, the best first, and of equals the one that was worked on last.</summary>
    /// <param name="query">What is looked for.</param>
    /// <param name="most">How many are given.</param>
    /// <returns>The first of them, and how many there are.</returns>
    public (ImmutableArray<JobHit> Hits, int Count) Find(JobQuery query, int most)
    {
        JobMatches? found = null;
        if (query.Text.Trim() is { Length: > 0 } text)
        {
            found = Anywhere(text);
        }

        foreach ((JobField field, string wanted) in query.In)
        {
            JobMatches there = Collect(wanted.Trim(), [field]);
            found = found is null ? there : found.And(there);
        }

        // Of many thousands only the first are put in order; the latest come last, and are looked at first.
        PriorityQueue<int, (int Rank, long Last)> first = new(most + 1);
        (long from, long before) = (query.From?.UtcTicks ?? long.MinValue + 1, query.Before?.UtcTicks ?? long.MaxValue);
        int count = 0;
        for (int i = (found?.Places.Count ?? _jobs.Count) - 1; i >= 0; i--)
        {
            int place = found?.Places[i] ?? i;
            JobMatch match = found?[place] ?? default;
            (long opened, long last) = _times[place];

            // What is only like a stamp is noise beside the stamp itself.
            if (last < from || opened >= before || (match.IsLike && found!.HasItself))
            {
                continue;
            }

            count++;
            if (first.Count < most)
            {
                first.Enqueue(place, (match.Rank, last));
            }
            else if (most > 0)
            {
                first.EnqueueDequeue(place, (match.Rank, last));
            }
        }

        int[] places = new int[first.Count];
        for (int i = places.Length - 1; i >= 0; i--)
        {
            places[i] = first.Dequeue();
        }

        return ([.. places.Select(place => Hit(_jobs[place]!, found?[place] ?? default))], count);
    }

    /// <summary>The jobs that hold a part of exactly this number, and of this lot when one is given; whatever the case.</summary>
    public ImmutableArray<IndexedJob> Holding(string number, string? lot) =>
        [
            .. PlacesOf(JobField.Part, number)
                .Select(place => _jobs[place])
                .OfType<IndexedJob>()
                .Where(job => job.Parts.Any(p => Same(p.Number, number) && (lot is null || Same(p.Lot, lot))))
                .OrderBy(job => job.Opened),
        ];

    /// <summary>The jobs in which a gauge was used at or after a moment.</summary>
    public ImmutableArray<IndexedJob> Using(string gauge, DateTimeOffset since) =>
        [
            .. PlacesOf(JobField.Gauge, gauge)
                .Select(place => _jobs[place])
                .OfType<IndexedJob>()
                .Where(job => job.LastActivity >= since)
                .OrderBy(job => job.Opened),
        ];

    private IReadOnlyList<int> PlacesOf(JobField field, string text) => _texts[(int)field].Of(text);

    private JobMatches Anywhere(string text)
    {
        JobMatches whole = Collect(text, Fields);
        string[] words = text.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        if (words.Length == 1 || whole.Places.Count > 0)
        {
            return whole;
        }

        JobMatches? each = null;
        foreach (string word in words)
        {
            JobMatches one = Collect(word, Fields);
            each = each is null ? one : each.And(one);
        }

        return each!;
    }

    private JobMatches Collect(string text, IReadOnlyList<JobField> fields)
    {
        JobMatches into = new(_jobs.Count);
        string wanted = (ProofCode.TryRead(text, out _)?.ToString() ?? text).ToUpperInvariant();
        foreach (JobField field in fields)
        {
            if (field == JobField.Stamp)
            {
                CollectStamps(into, wanted);
                continue;
            }

            TextPlaces there = _texts[(int)field];
            there.Texts.Holding(
                wanted,
                (number, at) =>
                {
                    int rank = RankOf(field, there.Texts[number], wanted.Length, at);
                    into.Add(there[number], new(field, rank, number));
                }
            );
        }

        return into;
    }

    private void CollectStamps(JobMatches into, string wanted)
    {
        TextPlaces stamps = _texts[(int)JobField.Stamp];
        void Add(int number, int rank) => into.Add(stamps[number], new(JobField.Stamp, rank, number));
        stamps.Texts.Holding(
            wanted,
            (number, at) => Add(number, StampLikeness.OfPart(stamps.Texts[number], wanted, at))
        );
        string folded = StampLikeness.Fold(wanted);
        if (folded.Length >= StampLikeness.ShortestPart)
        {
            _folded.Holding(folded, (number, _) => Add(number, StampLikeness.OfFolded(_folded[number], folded)));
        }

        for (int number = 0; folded.Length >= StampLikeness.ShortestForOneOff && number < _folded.Count; number++)
        {
            if (StampLikeness.IsOneOff(_folded[number], folded))
            {
                Add(number, StampLikeness.OneOff);
            }
        }
    }

    private static int RankOf(JobField field, ReadOnlySpan<char> there, int length, int at)
    {
        bool whole = there.Length == length;
        bool begins = at == 0 || !char.IsLetterOrDigit(there[at - 1]);
        int best = field switch
        {
            JobField.Part or JobField.Lot or JobField.Proof => 92,
            JobField.Customer => 88,
            JobField.Gauge or JobField.Cutter or JobField.Person => 78,
            JobField.Head => 66,
            _ => 60,
        };
        return whole ? best
            : begins ? best - 8
            : best - 16;
    }

    private JobHit Hit(IndexedJob job, JobMatch match)
    {
        if (match.Rank == 0)
        {
            return new(job, 0, null, "");
        }

        string wanted = _texts[(int)match.Field].Texts[match.Text].ToString();
        bool IsIt(string text) => string.Equals(text, wanted, StringComparison.OrdinalIgnoreCase);
        IndexedPart? part = match.Field switch
        {
            JobField.Part => job.Parts.FirstOrDefault(p => IsIt(p.Number) || IsIt(p.Name)),
            JobField.Lot => job.Parts.FirstOrDefault(p => IsIt(p.Lot)),
            _ => null,
        };
        string found = part is not null
            ? $"{part.Name} {part.Number}, lot {part.Lot}, {part.Position}"
            : TextsOf(job, match.Field).FirstOrDefault(IsIt) ?? "";
        return new(job, match.Rank, match.Field, found);
    }

    private static IEnumerable<string> TextsOf(IndexedJob job, JobField field) =>
        field switch
        {
            JobField.Stamp => [job.Stamp],
            JobField.Customer => [job.Customer],
            JobField.Head => [job.Head],
            JobField.Part => job.Parts.SelectMany(p => (string[])[p.Number, p.Name]),
            JobField.Lot => job.Parts.Select(p => p.Lot),
            JobField.Gauge => job.Gauges,
            JobField.Cutter => job.Cutters,
            JobField.Person => job.People,
            JobField.Proof => [job.Proof],
            _ => job.Notes,
        };

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
        return there ??= new(Once(part.Name), Once(part.Number), Once(part.Lot), Once(part.Position));
    }

    private static bool Same(string a, string b) => string.Equals(a, b, StringComparison.OrdinalIgnoreCase);
}
