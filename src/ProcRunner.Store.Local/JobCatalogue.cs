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
    private readonly List<string> _stamps = [];
    private readonly List<string> _folded = [];
    private readonly Dictionary<string, int> _places = new(StringComparer.Ordinal);
    private readonly Dictionary<string, List<int>>[] _texts =
    [
        .. Fields.Select(_ => new Dictionary<string, List<int>>(StringComparer.Ordinal)),
    ];
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
        _stamps.Add(job.Stamp.ToUpperInvariant());
        _folded.Add(StampLikeness.Fold(job.Stamp));
        _places.Add(job.Id, place);
        foreach (JobField field in Fields)
        {
            foreach (string text in TextsOf(kept, field))
            {
                if (text.Length == 0)
                {
                    continue;
                }

                ref List<int>? there = ref CollectionsMarshal.GetValueRefOrAddDefault(
                    _texts[(int)field],
                    text.ToUpperInvariant(),
                    out _
                );
                there ??= new(1);
                if (there.Count == 0 || there[^1] != place)
                {
                    there.Add(place);
                }
            }
        }
    }

    /// <summary>Takes a job out. What it leaves behind is small, and gone when the program next starts.</summary>
    public void Remove(string id)
    {
        if (_places.Remove(id, out int place))
        {
            (_jobs[place], _stamps[place], _folded[place]) = (null, "", "");
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

        // Of many thousands only the first are put in order.
        PriorityQueue<int, (int Rank, long Last)> first = new(most + 1);
        bool itself =
            found?.Places.Any(place => found[place].Rank == StampLikeness.Same && _jobs[place] is not null) == true;
        int count = 0;
        foreach (int place in found?.Places ?? (IEnumerable<int>)_places.Values)
        {
            JobMatch match = found?[place] ?? default;

            // What is only like a stamp is noise beside the stamp itself.
            if (_jobs[place] is not { } job || !IsWithin(job, query) || (itself && match.IsLike))
            {
                continue;
            }

            count++;
            (int, long) order = (match.Rank, job.LastActivity.UtcTicks);
            if (first.Count < most)
            {
                first.Enqueue(place, order);
            }
            else if (most > 0)
            {
                first.EnqueueDequeue(place, order);
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

    private List<int> PlacesOf(JobField field, string text) =>
        _texts[(int)field].GetValueOrDefault(text.ToUpperInvariant(), []);

    private static bool IsWithin(IndexedJob job, JobQuery query) =>
        (query.From is not { } from || job.LastActivity >= from)
        && (query.Before is not { } before || job.Opened < before);

    private JobMatches Anywhere(string text)
    {
        JobMatches whole = Collect(text, Fields);
        string[] words = text.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        if (words.Length == 1)
        {
            return whole;
        }

        JobMatches? each = null;
        foreach (string word in words)
        {
            JobMatches one = Collect(word, Fields);
            each = each is null ? one : each.And(one);
        }

        return whole.Or(each!);
    }

    private JobMatches Collect(string text, IReadOnlyList<JobField> fields)
    {
        JobMatches into = new(_jobs.Count);
        string wanted = text.ToUpperInvariant();
        foreach (JobField field in fields)
        {
            if (field == JobField.Stamp)
            {
                CollectStamps(into, wanted);
                continue;
            }

            foreach ((string there, List<int> places) in _texts[(int)field])
            {
                int at = there.IndexOf(wanted, StringComparison.Ordinal);
                if (at < 0)
                {
                    continue;
                }

                JobMatch match = new(field, RankOf(field, there, wanted, at), there);
                foreach (int place in places)
                {
                    into.Add(place, match);
                }
            }
        }

        return into;
    }

    private void CollectStamps(JobMatches into, string wanted)
    {
        string folded = StampLikeness.Fold(wanted);
        for (int place = 0; place < _stamps.Count; place++)
        {
            int rank = StampLikeness.Of(_stamps[place], _folded[place], wanted, folded);
            if (rank > 0)
            {
                into.Add(place, new(JobField.Stamp, rank, _stamps[place]));
            }
        }
    }

    private static int RankOf(JobField field, string there, string wanted, int at)
    {
        bool whole = there.Length == wanted.Length;
        bool begins = at == 0 || !char.IsLetterOrDigit(there[at - 1]);
        int best = field switch
        {
            JobField.Part or JobField.Lot => 92,
            JobField.Customer => 88,
            JobField.Gauge or JobField.Cutter or JobField.Person => 78,
            JobField.Head => 66,
            _ => 60,
        };
        return whole ? best
            : begins ? best - 8
            : best - 16;
    }

    private static JobHit Hit(IndexedJob job, JobMatch match)
    {
        if (match.Rank == 0)
        {
            return new(job, 0, null, "");
        }

        bool IsIt(string text) => string.Equals(text, match.Text, StringComparison.OrdinalIgnoreCase);
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
