using System.Collections.Immutable;
using System.Globalization;
using System.Runtime.InteropServices;
using LiteDB;

namespace ProcRunner.Store.Local;

/// <summary>
/// The index's documents, written out by hand: LiteDB's mapper needs reflection that a native program lacks. A job is one
/// document, and so are its readings of one characteristic, found by characteristic and job.
/// </summary>
internal static class IndexDocuments
{
    private const string Jobs = "jobs";
    private const string Readings = "readings";
    private const string Trails = "trails";
    private const string Id = "_id";
    private const string Rows = "rows";

    // LiteDB takes no longer keys; a characteristic of such a name has no history.
    private const int LongestName = 200;

    /// <summary>Which state of each trail is in the index.</summary>
    public static Dictionary<string, TrailTip> Tips(LiteDatabase database) =>
        database
            .GetCollection(Trails)
            .FindAll()
            .ToDictionary(
                tip => tip[Id].AsString,
                tip => new TrailTip(tip["length"].AsInt64, tip["digest"].AsString),
                StringComparer.Ordinal
            );

    /// <summary>Takes a job out.</summary>
    public static void Remove(LiteDatabase database, string jobId)
    {
        database.GetCollection(Trails).Delete(jobId);
        if (database.GetCollection(Jobs).FindById(jobId) is { } job)
        {
            ILiteCollection<BsonDocument> readings = database.GetCollection(Readings);
            foreach (string name in IndexText.TextsOf(job["names"].AsString))
            {
                readings.Delete(KeyOf(name, jobId));
            }

            database.GetCollection(Jobs).Delete(jobId);
        }
    }

    /// <summary>Puts a job in, and which state of its trail that was.</summary>
    public static void Write(LiteDatabase database, string jobId, TrailTip tip, IndexedJob? job)
    {
        if (job is not null)
        {
            IGrouping<string, IndexedReading>[] byName =
            [
                .. job.Readings.Where(r => r.Name.Length <= LongestName).GroupBy(r => r.Name),
            ];
            database.GetCollection(Jobs).Insert(JobDocument(jobId, job, byName.Select(g => g.Key)));
            database
                .GetCollection(Readings)
                .InsertBulk(
                    byName.Select(g => new BsonDocument
                    {
                        [Id] = KeyOf(g.Key, jobId),
                        [Rows] = IndexText.Rows(g.Select(Row)),
                    })
                );
        }

        database
            .GetCollection(Trails)
            .Insert(
                new BsonDocument
                {
                    [Id] = jobId,
                    ["length"] = tip.Length,
                    ["digest"] = tip.Digest,
                }
            );
    }

    /// <summary>Every job, without its readings.</summary>
    public static IEnumerable<IndexedJob> All(LiteDatabase database) =>
        database.GetCollection(Jobs).FindAll().Select(ReadJob);

    /// <summary>Every reading of a characteristic, by job.</summary>
    public static IEnumerable<(string JobId, IndexedReading[] Readings)> ReadingsOf(
        LiteDatabase database,
        string name
    ) =>
        database
            .GetCollection(Readings)
            .Find(Query.Between(Id, KeyOf(name, ""), KeyOf(name, "~")))
            .Select(found => (found[Id].AsString[(name.Length + 1)..], ReadRows(name, found)));

    /// <summary>The names of the characteristics that were ever read.</summary>
    public static IEnumerable<string> Names(LiteDatabase database)
    {
        ILiteCollection<BsonDocument> readings = database.GetCollection(Readings);
        for (string after = ""; ; )
        {
            // From each name straight to the next one.
            BsonDocument? next = readings.FindOne(Query.GT(Id, after));
            if (next is null)
            {
                yield break;
            }

            string name = next[Id].AsString.Split('\n')[0];
            yield return name;
            after = KeyOf(name, "~");
        }
    }

    /// <summary>Every reading of a job.</summary>
    public static IEnumerable<IndexedReading> ReadingsIn(LiteDatabase database, string jobId)
    {
        BsonDocument? job = database.GetCollection(Jobs).FindById(jobId);
        ILiteCollection<BsonDocument> readings = database.GetCollection(Readings);
        foreach (string name in job is null ? [] : IndexText.TextsOf(job["names"].AsString))
        {
            if (readings.FindById(KeyOf(name, jobId)) is { } found)
            {
                foreach (IndexedReading reading in ReadRows(name, found))
                {
                    yield return reading;
                }
            }
        }
    }

    private static string KeyOf(string name, string jobId) => $"{name}\n{jobId}";

    private static BsonDocument JobDocument(string id, IndexedJob job, IEnumerable<string> names) =>
        new()
        {
            [Id] = id,
            ["job"] = IndexText.Row(
                job.Stamp,
                job.Customer,
                job.State,
                job.WaitingFor,
                Number(job.Opened.UtcTicks),
                Number(job.LastActivity.UtcTicks),
                job.Person,
                job.Head,
                job.Bench,
                job.Practice ? "practice" : "",
                job.Earlier,
                job.Proof
            ),
            ["lists"] = IndexText.Rows([
                IndexText.Row(job.Linked.AsSpan()),
                IndexText.Row(job.People.AsSpan()),
                IndexText.Row(job.Gauges.AsSpan()),
                IndexText.Row(job.Cutters.AsSpan()),
                IndexText.Row(job.Notes.AsSpan()),
            ]),
            ["parts"] = IndexText.Rows(
                job.Parts.Select(p => IndexText.Row(p.Name, p.Number, p.Lot, p.Position, p.IsInPlace ? "" : "replaced"))
            ),
            ["names"] = IndexText.Row([.. names]),
        };

    private static IndexedJob ReadJob(BsonDocument document)
    {
        string[] job = IndexText.TextsOf(document["job"].AsString);
        string[] lists = document["lists"].AsString.Split('\n');
        return new(
            document[Id].AsString,
            job[0],
            job[1],
            job[2],
            job[3],
            new(long.Parse(job[4], CultureInfo.InvariantCulture), TimeSpan.Zero),
            new(long.Parse(job[5], CultureInfo.InvariantCulture), TimeSpan.Zero),
            job[6],
            [.. IndexText.RowsOf(document["parts"].AsString).Select(IndexText.TextsOf).Select(ReadPart)]
        )
        {
            Head = job[7],
            Bench = job[8],
            Practice = job[9].Length > 0,
            Earlier = job[10],
            Proof = job[11],
            Linked = ListOf(lists[0]),
            People = ListOf(lists[1]),
            Gauges = ListOf(lists[2]),
            Cutters = ListOf(lists[3]),
            Notes = ListOf(lists[4]),
        };
    }

    private static ImmutableArray<string> ListOf(string row) =>
        ImmutableCollectionsMarshal.AsImmutableArray(IndexText.TextsOf(row));

    private static IndexedPart ReadPart(string[] part) =>
        new(part[0], part[1], part[2], part[3]) { IsInPlace = part[4].Length == 0 };

    private static string Row(IndexedReading reading) =>
        IndexText.Row(
            Number(reading.At.ToUnixTimeMilliseconds()),
            reading.Person,
            reading.Gauge,
            reading.Cutter,
            reading.Position,
            reading.Kind,
            reading.Value,
            reading.Low,
            reading.Aim,
            reading.High,
            reading.Verdict,
            reading.AsFound ? "as found" : ""
        );

    private static IndexedReading[] ReadRows(string name, BsonDocument found) =>
        [
            .. IndexText
                .RowsOf(found[Rows].AsString)
                .Select(IndexText.TextsOf)
                .Select(row => new IndexedReading(
                    name,
                    DateTimeOffset.FromUnixTimeMilliseconds(long.Parse(row[0], CultureInfo.InvariantCulture)),
                    row[1],
                    row[2],
                    row[3],
                    row[4],
                    row[5],
                    row[6],
                    row[7],
                    row[8],
                    row[9],
                    row[10],
                    row[11].Length > 0
                )),
        ];

    private static string Number(long number) => number.ToString(CultureInfo.InvariantCulture);
}
