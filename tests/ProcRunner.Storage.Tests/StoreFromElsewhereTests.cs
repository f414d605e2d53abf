using ProcRunner.Shop;
using ProcRunner.Store.Local;
using ProcRunner.Trail;

namespace ProcRunner.Tests.Storage;

/// <summary>A whole store that somebody sent: its shop book holds, and says what no program of ours would say.</summary>
public sealed class StoreFromElsewhereTests
{
    [Theory]
    [InlineData("../outside")]
    [InlineData("../../../../../../../../etc/hostname")]
    [InlineData("")]
    [InlineData("con")]
    public void A_job_whose_id_is_a_path_is_neither_read_nor_written_to(string id)
    {
        using var folder = new StoreInFolder();
        folder.WithOneJob();
        string outside = Path.Combine(folder.Root, "..", "outside.trail");
        File.WriteAllText(outside, "not ours");
        using (LocalStore store = folder.Open())
        {
            StoreInFolder.AppendShop(store, new ShopEvent.JobOpened(id, "9", []));
            Assert.IsType<AppendResult.Refused>(store.Append(id, StoreInFolder.Draft("x")));
        }

        Assert.Empty(folder.Reader().ReadTrail(id).Entries);
        Assert.Equal(id, Assert.Single(folder.Broken()).Of);
        Assert.Equal("not ours", File.ReadAllText(outside));
        Assert.Equal(2, Directory.GetFileSystemEntries(Path.GetDirectoryName(folder.Root)!).Length);
    }

    [Theory]
    [InlineData("../secret.torn-1")]
    [InlineData("/etc/hostname")]
    [InlineData("jobs/../../secret.torn-1")]
    public void A_torn_end_that_is_said_to_lie_elsewhere_is_not_looked_for_there(string file)
    {
        using var folder = new StoreInFolder();
        folder.WithOneJob();
        File.WriteAllText(Path.Combine(folder.Root, "..", "secret.torn-1"), "secret");
        using (LocalStore store = folder.Open())
        {
            StoreInFolder.AppendShop(store, new ShopEvent.TornTailFound("shop", file, 6, Digest.Of("secret"u8)));
        }

        Assert.Contains("is missing or was changed", Assert.Single(folder.Broken()).Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_search_index_that_is_behind_or_damaged_is_told_and_is_nothing_against_the_store()
    {
        using var folder = new StoreInFolder();
        string id = folder.WithOneJob();
        StoreReader reader = folder.Reader();
        Assert.True(reader.Index((_, _) => null).TryRefresh());
        Assert.DoesNotContain(StoreCheck.All(reader), found => found.Text.Contains("index", StringComparison.Ordinal));

        using (LocalStore store = folder.Open())
        {
            StoreInFolder.Written(store.Append(id, StoreInFolder.Draft("more")));
        }

        Assert.Contains(
            "behind the trails, by 1 job",
            Assert.Single(StoreCheck.All(reader)).Text,
            StringComparison.Ordinal
        );
        File.WriteAllBytes(folder.Paths.Index, [1, 2, 3]);
        StoreFinding damaged = Assert.Single(StoreCheck.All(reader));
        Assert.False(damaged.IsBroken);
        Assert.Contains("was damaged", damaged.Text, StringComparison.Ordinal);
    }
}
