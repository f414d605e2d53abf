using System.Runtime.Versioning;
using ProcRunner.Store.Local;

namespace ProcRunner.Tests.Storage;

/// <summary>What happens to a store's folder while it is being written to: told, nothing lost, and it goes on once the cause is gone.</summary>
public sealed class StoreTroubleTests
{
    [Fact]
    [UnsupportedOSPlatform("windows")]
    public void A_folder_that_vanishes_is_told_and_work_goes_on_when_it_is_back()
    {
        using var folder = new StoreInFolder();
        string id = folder.WithOneJob();
        using (LocalStore store = folder.Open())
        {
            StoreInFolder.Written(store.Append(id, StoreInFolder.Draft("before")));
            string away = folder.Root + "-away";
            Directory.Move(folder.Root, away);

            for (int i = 0; i < 3; i++)
            {
                AssertFailed("gone", store.Append(id, StoreInFolder.Draft("meanwhile")));
                AssertFailed("gone", store.Append(id, StoreInFolder.Draft("sign", Trail.Anchor.SignedOff)));
                AssertFailed("gone", store.OpenJob("2419", StoreInFolder.Texts, StoreInFolder.Draft("opened")));
                AssertFailed("gone", store.AppendShop("p1", new Shop.ShopEvent.PersonRetired("nobody")));
            }

            Assert.False(Directory.Exists(folder.Root));
            Directory.Move(away, folder.Root);
            StoreInFolder.Written(store.Append(id, StoreInFolder.Draft("after", Trail.Anchor.SignedOff)));
            StoreInFolder.Written(store.OpenJob("2419", StoreInFolder.Texts, StoreInFolder.Draft("opened")));
        }

        Assert.Empty(folder.Broken());
        Assert.Equal(["opened", "reading", "sign", "before", "after"], folder.EventsOf(id));
        Assert.Equal(2, folder.Reader().JobIds().Count());
        using LocalStore again = folder.Open();
        Assert.Empty(again.Findings);
    }

    [Fact]
    [UnsupportedOSPlatform("windows")]
    public void A_folder_that_was_put_back_to_an_earlier_copy_is_not_written_to()
    {
        using var folder = new StoreInFolder();
        string id = folder.WithOneJob();
        byte[] earlier = File.ReadAllBytes(folder.Paths.Trail(id));
        using LocalStore store = folder.Open();
        StoreInFolder.Written(store.Append(id, StoreInFolder.Draft("later")));
        File.Delete(folder.Paths.Trail(id));
        File.WriteAllBytes(folder.Paths.Trail(id), earlier);

        for (int i = 0; i < 3; i++)
        {
            AssertFailed("shorter", store.Append(id, StoreInFolder.Draft("more")));
            Assert.Equal(earlier, File.ReadAllBytes(folder.Paths.Trail(id)));
        }
    }

    [Fact]
    public void A_trail_that_another_program_wrote_to_is_not_written_over()
    {
        using var folder = new StoreInFolder();
        string id = folder.WithOneJob();
        using LocalStore store = folder.Open();
        StoreInFolder.Written(store.Append(id, StoreInFolder.Draft("mine")));
        File.AppendAllText(folder.Paths.Trail(id), "another's line\n");
        byte[] there = File.ReadAllBytes(folder.Paths.Trail(id));

        for (int i = 0; i < 3; i++)
        {
            AssertFailed("another program", store.Append(id, StoreInFolder.Draft("more")));
            Assert.Equal(there, File.ReadAllBytes(folder.Paths.Trail(id)));
        }
    }

    [Fact]
    public void A_trail_that_was_exchanged_for_one_as_long_is_not_written_to()
    {
        using var folder = new StoreInFolder();
        string id = folder.WithOneJob();
        using LocalStore store = folder.Open();
        StoreInFolder.Written(store.Append(id, StoreInFolder.Draft("mine")));
        byte[] there = File.ReadAllBytes(folder.Paths.Trail(id));
        there[^10] = (byte)(there[^10] == '0' ? '1' : '0');
        File.WriteAllBytes(folder.Paths.Trail(id), there);

        AssertFailed("exchanged", store.Append(id, StoreInFolder.Draft("more")));
        Assert.Equal(there, File.ReadAllBytes(folder.Paths.Trail(id)));
    }

    /// <summary>errno(3) of Linux, as .NET hands it on: the exception's HResult.</summary>
    [Theory]
    [InlineData(28, "The disk is full.")]
    [InlineData(122, "used up")]
    [InlineData(30, "The disk is read-only.")]
    [InlineData(5, "it may be failing")]
    public void The_cause_is_told_in_words_and_the_same_entry_can_be_tried_again(int errno, string words)
    {
        AssertTold(() => new IOException("as the system says it", errno), words);
    }

    [Fact]
    public void A_lost_permission_is_told_in_words() =>
        AssertTold(() => new UnauthorizedAccessException(), "isn't allowed");

    [Fact]
    public void Each_new_folder_is_flushed_in_the_folder_above()
    {
        using var folder = new StoreInFolder();
        string above = Path.GetDirectoryName(folder.Root)!;
        var disk = new FlushedFolders();
        string root = Path.Combine(above, "a", "b", "store");
        Folders.Make(disk, root);

        Assert.Equal([above, Path.Combine(above, "a"), Path.Combine(above, "a", "b")], disk.Flushed);
        Folders.Make(disk, root);
        Assert.Equal(3, disk.Flushed.Count);

        // The store's own name, though the folder is there already: a crash may have come before its flush.
        Directory.CreateDirectory(folder.Root);
        disk.Flushed.Clear();
        Assert.IsType<StoreOpening.Opened>(folder.TryFound(disk)).Store.Dispose();
        Assert.Contains(above, disk.Flushed);
    }

    private static void AssertTold(Func<Exception> trouble, string words)
    {
        using var folder = new StoreInFolder();
        string id = folder.WithOneJob();
        int opening = new CountedOpening(folder).Operations;
        var disk = new FailingDisk(opening + 1, Failure.Half, times: 20, trouble);
        using (LocalStore store = folder.Open(disk))
        {
            AppendResult result;
            int tries = 0;
            while ((result = store.Append(id, StoreInFolder.Draft("more"))) is not AppendResult.Written)
            {
                AssertFailed(words, result);
                tries++;
            }

            Assert.InRange(tries, 3, 20);
        }

        Assert.Empty(folder.Broken());
        Assert.Equal(["opened", "reading", "sign", "more"], folder.EventsOf(id));
    }

    private static void AssertFailed(string words, AppendResult result) =>
        Assert.Contains(words, Assert.IsType<AppendResult.Failed>(result).Why, StringComparison.Ordinal);

    /// <summary>How many operations it takes to open a store.</summary>
    private sealed class CountedOpening
    {
        public CountedOpening(StoreInFolder folder)
        {
            for (Operations = 0; ; Operations++)
            {
                var disk = new FailingDisk(Operations + 1, Failure.Before);
                StoreOpening opening = folder.TryOpen(disk);
                (opening as StoreOpening.Opened)?.Store.Dispose();
                if (!disk.HasFailed)
                {
                    return;
                }
            }
        }

        public int Operations { get; }
    }
}
