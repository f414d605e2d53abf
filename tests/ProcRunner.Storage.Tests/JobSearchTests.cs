using System.Globalization;
using ProcRunner.Store.Local;

namespace ProcRunner.Tests.Storage;

/// <summary>
/// A search over all texts at once finds what looking at each job by itself finds, in the same order. Everything is invented.
/// </summary>
public sealed class JobSearchTests
{
    private static readonly DateTimeOffset Day = new(2031, 4, 7, 8, 0, 0, TimeSpan.Zero);
    private static readonly string[] Words = ["upper", "mill", "lane", "stone", "O1S", "4711", "k4", "Äcker", "l-9"];
    private readonly Random _random = new(20310407);

    [Fact]
    public void Every_search_finds_what_looking_at_each_job_finds()
    {
        JobCatalogue catalogue = new();
        Dictionary<string, IndexedJob> jobs = [];
        for (int i = 0; i < 600; i++)
        {
            // Some go on: another customer, a later day, the same stamp.
            string id = Number(i < 500 ? i : _random.Next(500));
            jobs[id] = Job(id, jobs.GetValueOrDefault(id)?.Stamp ?? Stamp(), i);
            catalogue.Put(jobs[id]);
        }

        catalogue.Remove("7");
        jobs.Remove("7");
        int found = 0;
        int none = 0;
        for (int i = 0; i < 600; i++)
        {
            JobQuery query = Query();
            (string Id, int Rank)[] expected = [.. Expected(jobs.Values, query)];
            (IReadOnlyList<JobHit> hits, int count) = catalogue.Find(query, 20);

            Assert.Equal(expected.Length, count);
            Assert.Equal(expected.Take(20), hits.Select(h => (h.Job.Id, h.Rank)));
            Assert.All(hits, hit => Assert.True(hit.Rank == 0 || hit.Found.Length > 0));
            (found, none) = count > 0 ? (found + 1, none) : (found, none + 1);
        }

        Assert.True(found > 100 && none > 50, $"{found} searches found something, {none} nothing");
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
        JobField[] fields = Enum.GetValues<JobField>();
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
            In =
            [
                .. Enumerable
                    .Range(0, _random.Next(3))
                    .Select(_ => (fields[_random.Next(fields.Length)], Piece(Word()))),
            ],
            From = _random.Next(3) == 0 ? Day.AddDays(_random.Next(600)) : null,
            Before = _random.Next(3) == 0 ? Day.AddDays(_random.Next(600)) : null,
        };
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
            [new(Word(), Word(), Word(), "1I"), new(Word(), Word(), Word(), "2I")]
        )
        {
            Head = Word(),
            People = [Word()],
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
}
