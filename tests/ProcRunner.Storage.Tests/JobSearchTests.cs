using System.Globalization;
using ProcRunner.Store.Local;

namespace ProcRunner.Tests.Storage;

/// <summary>
/// A search over all texts at once finds what looking at each job by itself finds, in the same order. Everything is invented.
/// </summary>
public sealed class JobSearchTests
{
    private static readonly DateTimeOffset Day = new(2031, 4, 7, 8, 0, 0, TimeSpan.Zero);
    private static readonly string[] Words =
    [
        "upper",
        "mill",
        "lane",
        "stone",
        "O1S",
        "4711",
        "k4",
        "Äcker",
        "l-9",
        "east",
        "intake",
    ];
    private readonly Random _random = new(20310407);

    [Fact]
    public void Every_search_finds_what_looking_at_each_job_finds()
    {
        Store store = new(this);
        store.Go(on: 600, among: 500);
        store.Remove("7");

        (int found, int none) = Compare(store, 600, 20, Query);

        Assert.True(found > 100 && none > 50, $"{found} searches found something, {none} nothing");
    }

    // Pieces that stand in many jobs: fields and jobs that can change nothing any more are passed over, and must be the right ones.
    // Jobs go on between the searches, so that what was added since is looked at too.
    [Fact]
    public void Several_pieces_find_what_looking_at_each_job_finds_while_jobs_go_on()
    {
        Store store = new(this);
        store.Go(on: 900, among: 800);
        (int found, int none) = (0, 0);
        for (int round = 0; round < 12; round++)
        {
            (int more, int fewer) = Compare(
                store,
                15,
                900,
                () => new() { Text = Pieces(), In = round % 3 == 0 ? [In()] : [] }
            );
            (found, none) = (found + more, none + fewer);
            store.Go(on: round * 4, among: 800);
            store.Remove(Number(_random.Next(800)));
        }

        Assert.True(found > 90 && none > 10, $"{found} searches found something, {none} nothing");
    }

    private static (int Found, int None) Compare(Store store, int searches, int most, Func<JobQuery> next)
    {
        int found = 0;
        for (int i = 0; i < searches; i++)
        {
            JobQuery query = next();
            (string Id, int Rank)[] expected = [.. Expected(store.Jobs.Values, query)];
            (IReadOnlyList<JobHit> hits, int count) = store.Catalogue.Find(query, most);

            Assert.Equal(expected.Length, count);
            Assert.Equal(expected.Take(most), hits.Select(h => (h.Job.Id, h.Rank)));
            Assert.All(hits, hit => Assert.True(hit.Rank == 0 || hit.Found.Length > 0));
            found += count > 0 ? 1 : 0;
        }

        return (found, searches - found);
    }

    // Said anew: every term must fit; of fields and terms the best counts; what is only like a stamp goes when the stamp is there.
    private static IEnumerable<(string Id, int Rank)> Expected(IEnumerable<IndexedJob> jobs, JobQuery query)
    {
        IndexedJob[] all = [.. jobs];
        JobField[] everywhere = Enum.GetValues<JobField>();
        string text = query.Text.Trim();
        bool isWhole = all.Any(job => Best(job, everywhere, text) > 0);
        string[] words = isWhole || text.Length == 0 ? [text] : text.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        (JobField[] Fields, string Wanted)[] terms =
        [
            .. words.Where(w => w.Length > 0).Select(w => (everywhere, w)),
            .. query.In.Select(i => ((JobField[])[i.Field], i.Text)),
        ];
        (IndexedJob Job, int Rank)[] fit =
        [
            .. all.Where(j => query.From is not { } from || j.LastActivity >= from)
                .Where(j => query.Before is not { } before || j.Opened < before)
                .Select(j => (j, terms.Select(t => Best(j, t.Fields, t.Wanted)).ToArray()))
                .Where(j => j.Item2.All(rank => rank > 0))
                .Select(j => (j.j, j.Item2.DefaultIfEmpty(0).Max())),
        ];
        bool isThere = fit.Any(f => f.Rank == 100);
        return fit.Where(f => !isThere || f.Rank is not (83 or 81 or 75 or 71))
            .OrderByDescending(f => f.Rank)
            .ThenByDescending(f => f.Job.LastActivity)
            .Select(f => (f.Job.Id, f.Rank));
    }

    private static int Best(IndexedJob job, JobField[] fields, string wanted) =>
        fields.SelectMany(f => job.TextsOf(f).Select(t => (int)FieldRank.Of(f, t, wanted))).DefaultIfEmpty(0).Max();

    private JobQuery Query()
    {
        string text = _random.Next(4) switch
        {
            0 => Piece(Stamp()),
            1 => $"{Word()} {Word()}",
            2 => "",
            _ => Piece(Word()),
        };
        return new()
        {
            Text = text,
            In = [.. Enumerable.Range(0, _random.Next(3)).Select(_ => In())],
            From = _random.Next(3) == 0 ? Day.AddDays(_random.Next(600)) : null,
            Before = _random.Next(3) == 0 ? Day.AddDays(_random.Next(600)) : null,
        };
    }

    private string Pieces() => string.Join(' ', Enumerable.Range(0, _random.Next(2, 5)).Select(_ => Some()));

    private string Some() =>
        _random.Next(8) switch
        {
            0 => Piece(Stamp()),
            1 => Piece("insert"),
            2 => Piece("moss"),
            < 6 => "aeimnorst1475"[_random.Next(13)].ToString(),
            _ => Piece(Word()),
        };

    private (JobField Field, string Text) In()
    {
        JobField[] fields = Enum.GetValues<JobField>();
        return (fields[_random.Next(fields.Length)], Piece(Word()));
    }

    private IndexedJob Job(string id, string stamp, int day) =>
        new(
            id,
            stamp,
            $"{Word()} {Word()}",
            "open",
            "",
            Day.AddDays(day / 2),
            Day.AddDays(day),
            "",
            [new(Word(), Word(), Word(), "1I"), new("seat insert", Word(), Word(), "2I")]
        )
        {
            Head = Word(),
            People = [Word(), "T. Moss"],
            Gauges = [Word(), Word()],
            Cutters = [Word()],
            Notes = [$"{Word()} {Word()} {Word()}"],
        };

    private string Stamp() => $"{"AB8"[_random.Next(3)]}{Number(_random.Next(10, 60))}{"O0I1S5"[_random.Next(6)]}7";

    private string Word() => Words[_random.Next(Words.Length)];

    private string Piece(string text)
    {
        int from = _random.Next(text.Length);
        return text.Substring(from, _random.Next(1, text.Length - from + 1));
    }

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);

    // The catalogue, and beside it the jobs that it should hold.
    private sealed class Store(JobSearchTests make)
    {
        private int _day;

        public JobCatalogue Catalogue { get; } = new();

        public Dictionary<string, IndexedJob> Jobs { get; } = [];

        // Some are new, some go on: another customer, a later day, the same stamp.
        public void Go(int on, int among)
        {
            for (int i = 0; i < on; i++, _day++)
            {
                string id = Number(_day < among ? _day : make._random.Next(among));
                Jobs[id] = make.Job(id, Jobs.GetValueOrDefault(id)?.Stamp ?? make.Stamp(), _day);
                Catalogue.Put(Jobs[id]);
            }
        }

        public void Remove(string id)
        {
            Catalogue.Remove(id);
            Jobs.Remove(id);
        }
    }
}
