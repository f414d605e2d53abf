using System.Security.Cryptography;
using ProcRunner.People;
using ProcRunner.Shop;
using ProcRunner.Store.Local;
using ProcRunner.Trail;

namespace ProcRunner.Tests.Storage;

public sealed class StoreCheckTests
{
    [Fact]
    public void A_good_store_holds()
    {
        using var folder = new StoreInFolder();
        string id = folder.WithOneJob();

        Assert.Empty(StoreCheck.All(folder.Reader()));
        Assert.Empty(StoreCheck.Job(folder.Reader(), id));
        Assert.True(Assert.Single(StoreCheck.Job(folder.Reader(), "nosuchjob")).IsBroken);
    }

    [Fact]
    public async Task A_store_that_is_being_written_to_holds_at_any_moment()
    {
        using var folder = new StoreInFolder();
        using LocalStore store = folder.Found();
        string id = StoreInFolder.Written(store.OpenJob("2418", [], StoreInFolder.Draft("opened"))).Entry.Of;
        Task writer = Task.Run(() =>
        {
            for (int i = 0; i < 200; i++)
            {
                Anchor anchor = i % 3 == 0 ? Anchor.SignedOff : Anchor.None;
                StoreInFolder.Written(store.Append(id, StoreInFolder.Draft("reading", anchor)));
            }
        });
        int checks = 0;
        while (!writer.IsCompleted || checks == 0)
        {
            Assert.Empty(folder.Broken());
            checks++;
        }

        await writer;
        Assert.Equal(201, folder.EventsOf(id).Count);
    }

    [Fact]
    public void A_trail_cut_short_before_what_the_book_knows_is_found()
    {
        using var folder = new StoreInFolder();
        string id = folder.WithOneJob();
        CutLines(folder.Paths.Trail(id), 1);

        AssertFound(folder, id, 3, "cut short");
    }

    [Fact]
    public void A_deleted_trail_is_found()
    {
        using var folder = new StoreInFolder();
        string id = folder.WithOneJob();
        File.Delete(folder.Paths.Trail(id));

        AssertFound(folder, id, 1, "deleted");
        using LocalStore store = folder.Open();
        Assert.Contains(store.Findings, finding => finding.IsBroken && finding.Of == id);
    }

    [Fact]
    public void Two_trails_swapped_are_found()
    {
        using var folder = new StoreInFolder();
        string a = folder.WithOneJob("1");
        string b = folder.WithOneJob("2");
        byte[] bytes = File.ReadAllBytes(folder.Paths.Trail(a));
        File.Copy(folder.Paths.Trail(b), folder.Paths.Trail(a), overwrite: true);
        File.WriteAllBytes(folder.Paths.Trail(b), bytes);

        AssertFound(folder, a, 1, "another trail");
        AssertFound(folder, b, 1, "another trail");
    }

    [Fact]
    public void A_trail_written_anew_with_a_good_chain_is_found()
    {
        using var folder = new StoreInFolder();
        string id = folder.WithOneJob();
        var lines = new List<byte>();
        Digest previous = Digest.Zero;
        foreach ((TrailEntry entry, Digest _) in folder.Reader().ReadTrail(id).Entries)
        {
            bool forge = entry.Sequence == 2;
            byte[] line = TrailLine.Encode(
                entry with
                {
                    Previous = previous,
                    Events = forge ? [Json.MapOf(("e", new Json.Text("forged")))] : entry.Events,
                }
            );
            previous = TrailLine.DigestOf(line);
            lines.AddRange(line);
        }

        File.WriteAllBytes(folder.Paths.Trail(id), [.. lines]);

        Assert.IsType<TrailVerdict.Holds>(folder.Reader().ReadTrail(id).Verdict);
        AssertFound(folder, id, 3, "written anew");
    }

    [Fact]
    public void Every_altered_byte_is_found()
    {
        using var folder = new StoreInFolder();
        string id = folder.WithOneJob();
        string path = folder.Paths.Trail(id);
        byte[] good = File.ReadAllBytes(path);
        for (int at = 0; at < good.Length; at++)
        {
            byte[] altered = [.. good];
            altered[at] ^= 4;
            File.WriteAllBytes(path, altered);
            int entry = good.AsSpan(0, at).Count((byte)'\n') + 1;
            Assert.Equal(entry, Assert.Single(folder.Broken()).Entry);
        }
    }

    [Fact]
    public void A_shop_book_cut_short_is_found_by_the_trails()
    {
        using var folder = new StoreInFolder();
        string id = folder.WithOneJob();
        using (LocalStore store = folder.Open())
        {
            StoreInFolder.Written(store.Append(id, StoreInFolder.Draft("more")));
        }

        CutLines(folder.Paths.Book, 1);

        AssertFound(folder, id, null, "book was cut short");
    }

    [Fact]
    public void A_pinned_text_that_is_missing_or_altered_is_found()
    {
        using var folder = new StoreInFolder();
        string id = folder.WithOneJob();
        string text = folder.Paths.Text(Digest.Of("head text"u8));
        File.AppendAllText(text, "x");
        AssertFound(folder, id, 1, "pinned text");
        File.Delete(text);
        AssertFound(folder, id, 1, "pinned text");
    }

    [Fact]
    public void A_torn_end_that_was_put_aside_is_missed()
    {
        using var folder = new StoreInFolder();
        string id = folder.WithOneJob();
        File.AppendAllText(folder.Paths.Trail(id), "{\"at");
        folder.Open().Dispose();
        StoreFinding finding = Assert.Single(StoreCheck.All(folder.Reader()));
        Assert.False(finding.IsBroken);
        File.Delete(folder.Paths.Trail(id) + ".torn-1");

        AssertFound(folder, id, null, "missing or was changed");
    }

    [Fact]
    public void A_person_whom_no_lead_vouches_for_is_found()
    {
        using var folder = new StoreInFolder();
        Person lead = Make("lead1", null);
        using (LocalStore store = folder.Found())
        {
            StoreInFolder.AppendShop(store, new ShopEvent.PersonAdded(lead));
            StoreInFolder.AppendShop(store, new ShopEvent.PersonAdded(Make("p1", new(lead, "123456"))));
        }

        Assert.Empty(folder.Broken());
        using (LocalStore store = folder.Open())
        {
            Person stranger = Make("aa", null);
            StoreInFolder.AppendShop(store, new ShopEvent.PersonAdded(Make("p2", new(stranger, "123456"))));
        }

        AssertFound(folder, JobId.Shop, 4, "isn't certified");
    }

    private static Person Make(string id, Certifier? certifier) =>
        (
            (PersonMaking.Made)
                PersonKeys.Create(id, "Name of " + id, Role.Lead, "123456", 10, RandomNumberGenerator.Fill, certifier)
        ).Person;

    private static void CutLines(string path, int count)
    {
        byte[] bytes = File.ReadAllBytes(path);
        for (int i = 0; i < count; i++)
        {
            bytes = bytes[..(bytes.AsSpan(0, bytes.Length - 1).LastIndexOf((byte)'\n') + 1)];
        }

        File.WriteAllBytes(path, bytes);
    }

    private static void AssertFound(StoreInFolder folder, string of, long? entry, string words)
    {
        StoreFinding finding = Assert.Single(folder.Broken(), finding => finding.Of == of);
        Assert.Equal(entry, finding.Entry);
        Assert.Contains(words, finding.Text, StringComparison.Ordinal);
    }
}
