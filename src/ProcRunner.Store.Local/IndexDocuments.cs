using LiteDB;

namespace ProcRunner.Store.Local;

/// <summary>The index's documents, written out by hand: LiteDB's mapper needs reflection that a native program lacks.</summary>
internal static class IndexDocuments
{
    public const string Jobs = "jobs";
    public const string Values = "values";
    public const string Job = "job";
    public const string Words = "words";
    public const string LastActivity = "last";

    private const string Parts = "parts";
    private const string Trails = "trails";
    private const string Id = "_id";

    // LiteDB gives documents under one key in no order that can be relied on.
    private const string Place = "place";

    /// <summary>Makes the secondary keys that queries go by.</summary>
    public static void Prepare(LiteDatabase database)
    {
        database.GetCollection(Trails).EnsureIndex("length", "$.length");
        database.GetCollection(Jobs).EnsureIndex("stamp", "$.stamp");
        database.GetCollection(Parts).EnsureIndex(Job, "$.job");
        database.GetCollection(Values).EnsureIndex(Job, "$.job");
        database.GetCollection(Values).EnsureIndex("name", "$.name");
    }

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
        database.GetCollection(Jobs).Delete(jobId);
        database.GetCollection(Parts).DeleteMany("$.job = @0", jobId);
        database.GetCollection(Values).DeleteMany("$.job = @0", jobId);
    }

    /// <summary>Puts a job in, and which state of its trail that was.</summary>
    public static void Write(LiteDatabase database, string jobId, TrailTip tip, IndexedJob? job)
    {
        if (job is not null)
        {
            database.GetCollection(Jobs).Insert(JobDocument(jobId, job));
            database
                .GetCollection(Parts)
                .InsertBulk(job.Parts.Select((part, place) => PartDocument(jobId, place, part)));
            database
                .GetCollection(Values)
                .InsertBulk(job.Values.Select((value, place) => ValueDocument(jobId, place, value)));
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

    /// <summary>A job with its parts and values.</summary>
    public static IndexedJob Read(LiteDatabase database, BsonDocument job)
    {
        string id = job[Id].AsString;
        return new(
            id,
            job["stamp"].AsString,
            job["customer"].AsString,
            job["state"].AsString,
            job["waiting"].AsString,
            Time(job["opened"]),
            Time(job[LastActivity]),
            job["person"].AsString ?? "",
            [.. Of(database, Parts, id).Select(ReadPart)],
            [.. Of(database, Values, id).Select(ReadValue)]
        )
        {
            Proof = job["proof"].AsString ?? "",
        };
    }

    private static IEnumerable<BsonDocument> Of(LiteDatabase database, string collection, string id) =>
        database
            .GetCollection(collection)
            .Find(BsonExpression.Create("$.job = @0", id))
            .OrderBy(document => document[Place].AsInt32);

    public static IndexedValue ReadValue(BsonDocument value) =>
        new(value["name"].AsString, value["position"].AsString, value["text"].AsString);

    private static IndexedPart ReadPart(BsonDocument part) =>
        new(part["name"].AsString, part["number"].AsString, part["lot"].AsString, part["position"].AsString);

    private static DateTimeOffset Time(BsonValue ticks) => new(ticks.AsInt64, TimeSpan.Zero);

    private static BsonDocument JobDocument(string id, IndexedJob job) =>
        new()
        {
            [Id] = id,
            ["stamp"] = job.Stamp,
            ["customer"] = job.Customer,
            ["state"] = job.State,
            ["waiting"] = job.WaitingFor,
            ["opened"] = job.Opened.UtcTicks,
            [LastActivity] = job.LastActivity.UtcTicks,
            ["person"] = job.Person,
            ["proof"] = job.Proof,
            [Words] = string.Join(
                    '\n',
                    [
                        job.Stamp,
                        job.Customer,
                        job.Proof,
                        .. job.Parts.Select(part => $"{part.Name}\n{part.Number}\n{part.Lot}"),
                    ]
                )
                .ToUpperInvariant(),
        };

    private static BsonDocument PartDocument(string id, int place, IndexedPart part) =>
        new()
        {
            [Job] = id,
            [Place] = place,
            ["name"] = part.Name,
            ["number"] = part.Number,
            ["lot"] = part.Lot,
            ["position"] = part.Position,
        };

    private static BsonDocument ValueDocument(string id, int place, IndexedValue value) =>
        new()
        {
            [Job] = id,
            [Place] = place,
            ["name"] = value.Name,
            ["position"] = value.Position,
            ["text"] = value.Text,
        };
}
