using ProcRunner.Store.Local;
using ProcRunner.Trail;

namespace ProcRunner.Tests.Storage;

public sealed class SearchIndexTests
{
    private int _projected;

    [Fact]
    public void Finds_by_stamp_customer_part_and_lot_whatever_the_case()
    {
        using var folder = new StoreInFolder();
        string a = folder.WithOneJob("2418");
        string b = folder.WithOneJob("Head-B");
        SearchIndex index = Index(folder);

        index.TryRefresh();
        Assert.Null(index.Trouble);
        Assert.Equal([a], Found(index, "241"));
        Assert.Equal([b], Found(index, "head-b"));
        Assert.Equal(2, Found(index, "MADE-UP FARM").Count());
        Assert.Equal(2, Found(index, "lot-9").Count());
        Assert.Equal(2, Found(index, "insert").Count());
        Assert.Empty(Found(index, "nothing like it"));
        Assert.Equal(2, index.All().Length);
        Assert.Equal(a, index.ByStamp("2418")?.Id);
        Assert.Null(index.ByStamp("241"));
        Assert.Equal(2, index.ReadingsOf("recession").Length);
        Assert.Equal<string>(["guide bore", "recession"], index.ReadingNames());
        Assert.Null(index.Trouble);
    }

    [Fact]
    public void Finds_by_the_proof_code_however_it_is_typed()
    {
        using var folder = new StoreInFolder();
        string a = folder.WithOneJob("2418");
        folder.WithOneJob("2419");
        SearchIndex index = Index(folder);
        ProofCode code = CodeOf(a);

        Assert.Equal([a], Found(index, code.ToString()));
        Assert.Equal([a], Found(index, code.Letters.ToLowerInvariant()));
        Assert.Equal([a], Found(index, code.ToString().Replace('-', ' ').Replace('O', '0').Replace('I', '1')));
        Assert.Equal([a], Found(index, code.ToString()[6..17]));
        Assert.Empty(Found(index, ProofCode.Of(Digest.Zero).ToString()));
    }

    [Fact]
    public void Gives_back_what_was_put_in_to_the_tick()
    {
        using var folder = new StoreInFolder();
        string id = folder.WithOneJob();
        IndexedJob job = Assert.Single(Index(folder).All());
        IndexedJob expected = Project(id, folder.Reader().ReadTrail(id).Entries.Select(line => line.Entry))!;

        Assert.Equal(expected.Parts.AsSpan(), job.Parts.AsSpan());
        Assert.Equal(Lists(expected), Lists(job));
        Assert.Equal(Bare(expected), Bare(job));
        Assert.Equal(expected.Readings[0], Index(folder).ReadingsOf("recession").Single().Reading);
    }

    [Fact]
    public void Reads_only_the_trails_that_went_on()
    {
        using var folder = new StoreInFolder();
        string id = folder.WithOneJob("1");
        folder.WithOneJob("2");
        Index(folder).All();
        Assert.Equal(2, _projected);
        Index(folder).All();
        Assert.Equal(2, _projected);
        using (LocalStore store = folder.Open())
        {
            StoreInFolder.Written(store.Append(id, StoreInFolder.Draft("more")));
            Assert.Equal("4 entries", Index(folder).ByStamp("1")?.State);
        }

        Assert.Equal(3, _projected);
        Assert.Equal("3 entries", Index(folder).ByStamp("2")?.State);
    }

    [Fact]
    public void Is_made_again_when_it_is_missing()
    {
        using var folder = new StoreInFolder();
        folder.WithOneJob();
        Index(folder).All();
        File.Delete(folder.Paths.Index);

        Assert.Single(Index(folder).All());
        Assert.Equal(2, _projected);
    }

    [Fact]
    public void Is_made_again_when_any_page_was_damaged_or_it_was_cut()
    {
        using var folder = new StoreInFolder();
        folder.WithOneJob();
        Index(folder).All();
        byte[] good = File.ReadAllBytes(folder.Paths.Index);
        for (int at = 100; at < good.Length; at += 1999)
        {
            byte[] bad = [.. good];
            bad[at] ^= 0x10;
            File.WriteAllBytes(folder.Paths.Index, bad);
            Assert.Single(Index(folder).All());
        }

        foreach (
            byte[] bad in (byte[][])
                [
                    [],
                    good[..100],
                    good[..8192],
                    StoreInFolder.Text("rubbish"),
                    new byte[20000],
                ]
        )
        {
            File.WriteAllBytes(folder.Paths.Index, bad);
            Assert.Single(Index(folder).All());
        }
    }

    [Fact]
    public void Is_made_again_after_a_batch_that_did_not_end_or_a_lost_sum()
    {
        using var folder = new StoreInFolder();
        folder.WithOneJob();
        Index(folder).All();
        File.WriteAllBytes(folder.Paths.IndexLog, new byte[8192]);
        Assert.Single(Index(folder).All());
        Assert.False(File.Exists(folder.Paths.IndexLog));
        File.Delete(folder.Paths.IndexSum);
        Assert.Single(Index(folder).All());
        Assert.Equal(3, _projected);
    }

    [Fact]
    public void Garbage_whose_sum_is_right_is_made_again_too()
    {
        using var folder = new StoreInFolder();
        folder.WithOneJob();
        File.WriteAllBytes(folder.Paths.Index, new byte[20000]);
        IndexSum.Write(folder.Paths);

        Assert.Single(Index(folder).All());
    }

    [Fact]
    public void A_trail_that_is_gone_is_no_longer_found()
    {
        using var folder = new StoreInFolder();
        string id = folder.WithOneJob();
        Index(folder).All();
        File.Delete(folder.Paths.Trail(id));

        Assert.Empty(Index(folder).All());
        Assert.Empty(Index(folder).ReadingsOf("recession"));
    }

    [Fact]
    public void An_empty_store_has_an_empty_index_and_progress_is_told()
    {
        using var folder = new StoreInFolder();
        folder.Found().Dispose();
        Assert.Empty(Index(folder).All());
        folder.WithOneJob("1");
        folder.WithOneJob("2");
        var told = new List<(int, int)>();
        SearchIndex index = Index(folder);
        index.Progress = (done, all) => told.Add((done, all));
        Assert.True(index.TryRefresh());

        Assert.Equal([(1, 2), (2, 2)], told);
    }

    [Fact]
    public void Trouble_with_the_index_is_no_trouble_of_the_store()
    {
        using var folder = new StoreInFolder();
        string id = folder.WithOneJob();
        Directory.CreateDirectory(folder.Paths.Index);
        using (LocalStore store = folder.Open())
        {
            store.Index = Index(folder);
            StoreInFolder.Written(store.Append(id, StoreInFolder.Draft("more")));
            store.UpdateIndex();
            Assert.NotNull(store.Index.Trouble);
            StoreInFolder.Written(store.Append(id, StoreInFolder.Draft("more")));
        }

        Assert.Empty(folder.Broken());
    }

    [Fact]
    public void Whoever_asks_while_another_program_makes_the_index_soon_gets_an_answer_from_the_trails()
    {
        using var folder = new StoreInFolder();
        string id = folder.WithOneJob();
        using FileStream held = StoreLock.OpenExclusively(folder.Paths.IndexLock);
        SearchIndex index = Index(folder);
        var waited = System.Diagnostics.Stopwatch.StartNew();

        Assert.Equal(id, Assert.Single(index.All()).Id);
        Assert.Null(index.Trouble);
        Assert.False(File.Exists(folder.Paths.Index));
        Assert.False(index.TryRefresh());
        Assert.Contains("another program", index.Trouble, StringComparison.Ordinal);

        // Two waits of a second; ten would be one too many.
        Assert.True(waited.Elapsed < TimeSpan.FromSeconds(8), $"waited {waited.Elapsed}");
    }

    [Fact]
    public void The_store_brings_its_index_up_when_it_closes()
    {
        using var folder = new StoreInFolder();
        string id = folder.WithOneJob();
        Index(folder).All();
        using (LocalStore store = folder.Open())
        {
            store.Index = Index(folder);
            StoreInFolder.Written(store.Append(id, StoreInFolder.Draft("more")));
        }

        Assert.Equal(2, _projected);
        Assert.Equal("4 entries", Index(folder).ByStamp("2418")?.State);
        Assert.Equal(2, _projected);
    }

    private static string Lists(IndexedJob job) =>
        string.Join('|', [.. job.People, .. job.Gauges, .. job.Cutters, .. job.Notes, .. job.Linked]);

    private static IndexedJob Bare(IndexedJob job) =>
        job with
        {
            Parts = [],
            People = [],
            Gauges = [],
            Cutters = [],
            Notes = [],
            Linked = [],
            Readings = [],
        };

    private static IEnumerable<string> Ids(IEnumerable<IndexedJob> jobs) => jobs.Select(job => job.Id);

    private SearchIndex Index(StoreInFolder folder) =>
        folder
            .Reader()
            .Index(
                (id, entries) =>
                {
                    _projected++;
                    return Project(id, entries);
                }
            );

    private static IndexedReading Reading(string name, string value, DateTimeOffset at) =>
        new(
            name,
            at,
            "vale",
            "D1",
            "K4",
            "1I",
            "I",
            value,
            "0.0490 in",
            "0.0550 in",
            "0.0610 in",
            "in",
            AsFound: false
        );

    private static IEnumerable<string> Found(SearchIndex index, string text) =>
        Ids(index.Find(new JobQuery { Text = text }).Hits.Select(hit => hit.Job));

    private static IndexedJob? Project(string id, IEnumerable<TrailEntry> entries)
    {
        TrailEntry[] all = [.. entries];
        return new(
            id,
            all[0].Opening!.Stamp,
            "Made-up Farm",
            $"{all.Length} entries",
            "seat cut at 1I",
            all[0].At.AddTicks(1),
            all[^1].At,
            "vale",
            [new("seat insert", "SI-12", "LOT-9", "1I")]
        )
        {
            Head = "made-up four",
            Bench = "bench one",
            People = ["vale", "R. Vale"],
            Gauges = ["D1"],
            Cutters = ["K4"],
            Notes = ["short stem at 3"],
            Readings = [Reading("recession", "0.0520 in", all[^1].At), Reading("guide bore", "0.3450 in", all[^1].At)],
            Proof = CodeOf(id).ToString(),
        };
    }

    // Any digest will do; one of the job's id tells jobs apart.
    private static ProofCode CodeOf(string id) => ProofCode.Of(Digest.Of(System.Text.Encoding.UTF8.GetBytes(id)));
}
