using System.Runtime.Versioning;
using ProcRunner.Shop;
using ProcRunner.Store.Local;
using ProcRunner.Trail;

namespace ProcRunner.Tests.Storage;

public sealed class StoreOpeningTests
{
    [Fact]
    public void A_second_writer_is_told_who_holds_the_store_and_readers_are_not_kept_out()
    {
        using var folder = new StoreInFolder();
        using (LocalStore store = folder.Found())
        {
            var inUse = Assert.IsType<StoreOpening.InUse>(folder.TryOpen());
            Assert.Equal(
                (Environment.ProcessId, Environment.MachineName, "a test"),
                (inUse.Holder!.ProcessId, inUse.Holder.Machine, inUse.Holder.Purpose)
            );
            Assert.Contains("a test", inUse.InWords(), StringComparison.Ordinal);
            Assert.Contains("2026-11-25 01:02", inUse.InWords(), StringComparison.Ordinal);
            Assert.IsType<TrailVerdict.Holds>(folder.Reader().ReadShop().Verdict);
        }

        folder.Open().Dispose();
        Assert.True(File.Exists(folder.Paths.Lock));
    }

    [Fact]
    public void A_folder_where_locking_does_not_work_is_refused()
    {
        using var folder = new StoreInFolder();
        folder.Found().Dispose();

        StoreOpening opening = folder.TryOpen(openLock: path =>
            Disk.OpenShared(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.ReadWrite)
        );

        Assert.IsType<StoreOpening.LockingFails>(opening);
    }

    [Fact]
    public void What_is_no_store_or_another_format_is_refused()
    {
        using var folder = new StoreInFolder();
        Assert.IsType<StoreOpening.NoStore>(folder.TryOpen());
        Assert.IsType<StoreOpening.NoStore>(StoreReader.Open(folder.Root).Fault);
        Assert.False(Directory.Exists(folder.Root));
        folder.Found().Dispose();
        Assert.IsType<StoreOpening.AlreadyThere>(folder.TryFound());
        File.WriteAllText(folder.Paths.Format, """{"format":2,"store":"procrunner"}""");
        Assert.IsType<StoreOpening.UnknownFormat>(folder.TryOpen());
        Assert.IsType<StoreOpening.UnknownFormat>(StoreReader.Open(folder.Root).Fault);
    }

    [Fact]
    [UnsupportedOSPlatform("windows")]
    public void A_folder_with_other_things_in_it_is_left_as_it_is()
    {
        using var folder = new StoreInFolder();
        const UnixFileMode ForAll = Disk.OwnerFolder | UnixFileMode.OtherRead | UnixFileMode.OtherExecute;
        Directory.CreateDirectory(folder.Root, ForAll);
        File.WriteAllText(Path.Combine(folder.Root, "letter.txt"), "mine");

        Assert.IsType<StoreOpening.AlreadyThere>(folder.TryFound());
        Assert.Equal(["letter.txt"], Directory.GetFileSystemEntries(folder.Root).Select(Path.GetFileName));
        Assert.Equal(ForAll, File.GetUnixFileMode(folder.Root));

        File.Delete(Path.Combine(folder.Root, "letter.txt"));
        Assert.IsType<StoreOpening.Opened>(folder.TryFound()).Store.Dispose();
        Assert.Equal(Disk.OwnerFolder, File.GetUnixFileMode(folder.Root));
    }

    [Fact]
    public void A_shop_book_that_does_not_hold_lets_nobody_write()
    {
        using var folder = new StoreInFolder();
        string id = folder.WithOneJob();
        byte[] book = File.ReadAllBytes(folder.Paths.Book);
        byte[] altered = [.. book];
        altered[30] ^= 1;
        File.WriteAllBytes(folder.Paths.Book, altered);

        var broken = Assert.IsType<StoreOpening.BookBroken>(folder.TryOpen());
        Assert.Contains("Entry 1 was changed", broken.InWords(), StringComparison.Ordinal);
        Assert.Contains("1 of 1 hold by themselves", broken.InWords(), StringComparison.Ordinal);
        (ShopState shop, TrailVerdict verdict) = folder.Reader().ReadShop();
        Assert.IsType<TrailVerdict.Broken>(verdict);
        Assert.Equal(id, Assert.Single(shop.JobsWithStamp("2418")).Id);
        Assert.Equal(altered, File.ReadAllBytes(folder.Paths.Book));
        Assert.Equal(3, folder.Reader().ReadTrail(id).Entries.Length);

        File.Delete(folder.Paths.Book);
        Assert.IsType<StoreOpening.BookBroken>(folder.TryOpen());
        File.WriteAllBytes(folder.Paths.Book, book);
        folder.Open().Dispose();
    }

    [Fact]
    public void A_line_torn_at_any_byte_is_put_aside_recorded_and_written_past()
    {
        using var folder = new StoreInFolder();
        string id = folder.WithOneJob();
        string path = folder.Paths.Trail(id);
        using (LocalStore store = folder.Open())
        {
            StoreInFolder.Written(store.Append(id, StoreInFolder.Draft("torn")));
        }

        byte[] whole = File.ReadAllBytes(path);
        byte[] book = File.ReadAllBytes(folder.Paths.Book);
        int start = whole.AsSpan(0, whole.Length - 1).LastIndexOf((byte)'\n') + 1;
        for (int length = start + 1; length < whole.Length; length++)
        {
            File.WriteAllBytes(path, whole[..length]);
            File.WriteAllBytes(folder.Paths.Book, book);
            var verdict = Assert.IsType<TrailVerdict.Broken>(TrailCheck.Verify(whole.AsSpan(0, length), id));
            Assert.Equal((4, TrailFault.TornTail), (verdict.Entry, verdict.Fault));
            using (LocalStore store = folder.Open(new FailingDisk(int.MaxValue, Failure.Before)))
            {
                var tail = Assert.Single(store.Shop.TornTails);
                Assert.Equal((id, length - start), (tail.Of, (int)tail.Length));
                Assert.Equal(Digest.Of(whole.AsSpan(start..length)), tail.Digest);
                Assert.Equal(whole[start..length], File.ReadAllBytes(Path.Combine(folder.Root, tail.File)));
                Assert.Contains(store.Findings, finding => !finding.IsBroken && finding.Of == id);
                Assert.Equal(4, StoreInFolder.Written(store.Append(id, StoreInFolder.Draft("again"))).Entry.Sequence);
                File.Delete(Path.Combine(folder.Root, tail.File));
            }

            Assert.Equal(["opened", "reading", "sign", "again"], folder.EventsOf(id));
        }
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void A_whole_last_line_that_was_altered_is_no_torn_one_whether_the_book_knew_it_or_not(bool known)
    {
        using var folder = new StoreInFolder();
        string id = folder.WithOneJob();
        if (!known)
        {
            using LocalStore store = folder.Open();
            StoreInFolder.Written(store.Append(id, StoreInFolder.Draft("after the last sign-off")));
        }

        byte[] bytes = File.ReadAllBytes(folder.Paths.Trail(id));
        bytes[^90] ^= 1;
        File.WriteAllBytes(folder.Paths.Trail(id), bytes);
        long entry = known ? 3 : 4;
        Assert.Equal(entry, Assert.Single(folder.Broken()).Entry);
        using (LocalStore store = folder.Open())
        {
            Assert.Empty(store.Shop.TornTails);
            Assert.Contains(store.Findings, found => found.IsBroken && found.Of == id && found.Entry == entry);
            Assert.IsType<AppendResult.Refused>(store.Append(id, StoreInFolder.Draft("more")));
        }

        Assert.Equal(bytes, File.ReadAllBytes(folder.Paths.Trail(id)));
        StoreFinding finding = Assert.Single(folder.Broken());
        Assert.Equal((id, entry), (finding.Of, finding.Entry));
        Assert.Contains("changed after it was written", finding.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_last_line_with_the_holes_of_a_power_cut_is_put_aside()
    {
        using var folder = new StoreInFolder();
        string id = folder.WithOneJob();
        using (LocalStore store = folder.Open())
        {
            StoreInFolder.Written(store.Append(id, StoreInFolder.Draft("not acknowledged")));
        }

        byte[] bytes = File.ReadAllBytes(folder.Paths.Trail(id));
        bytes.AsSpan(bytes.Length - 200, 100).Clear();
        File.WriteAllBytes(folder.Paths.Trail(id), bytes);
        using (LocalStore store = folder.Open())
        {
            Assert.Equal(id, Assert.Single(store.Shop.TornTails).Of);
            Assert.Equal(4, StoreInFolder.Written(store.Append(id, StoreInFolder.Draft("again"))).Entry.Sequence);
        }

        Assert.Empty(folder.Broken());
    }

    [Fact]
    public void An_entry_longer_than_a_line_may_be_is_refused_and_nothing_is_written()
    {
        using var folder = new StoreInFolder();
        string id = folder.WithOneJob();
        byte[] before = File.ReadAllBytes(folder.Paths.Trail(id));
        string endless = new('x', TrailLine.MaxLength);
        using LocalStore store = folder.Open();

        Assert.IsType<AppendResult.Refused>(store.Append(id, StoreInFolder.Draft(endless)));
        Assert.IsType<AppendResult.Refused>(store.OpenJob("2419", [], StoreInFolder.Draft(endless)));
        Assert.IsType<AppendResult.Refused>(store.AppendShop("p1", new ShopEvent.BookCaughtUp(endless)));

        Assert.Equal(before, File.ReadAllBytes(folder.Paths.Trail(id)));
        Assert.Empty(folder.Broken());
        Assert.Single(folder.Reader().JobIds());
    }

    [Fact]
    public void Lines_altered_before_the_last_are_left_as_they_are()
    {
        using var folder = new StoreInFolder();
        string id = folder.WithOneJob();
        byte[] bytes = File.ReadAllBytes(folder.Paths.Trail(id));
        int second = bytes.AsSpan().IndexOf((byte)'\n') + 1;
        bytes[second + 20] ^= 1;
        File.WriteAllBytes(folder.Paths.Trail(id), bytes);
        using LocalStore store = folder.Open();

        Assert.Empty(store.Shop.TornTails);
        Assert.Equal(bytes, File.ReadAllBytes(folder.Paths.Trail(id)));
    }

    [Fact]
    public void A_shop_book_behind_is_caught_up_and_marked_late()
    {
        using var folder = new StoreInFolder();
        string id = folder.WithOneJob();
        byte[] book = File.ReadAllBytes(folder.Paths.Book);
        int last = book.AsSpan(0, book.Length - 1).LastIndexOf((byte)'\n') + 1;
        File.WriteAllBytes(folder.Paths.Book, book[..last]);

        StoreFinding behind = Assert.Single(StoreCheck.All(folder.Reader()));
        Assert.False(behind.IsBroken);
        using (LocalStore store = folder.Open())
        {
            Assert.False(Assert.Single(store.Findings).IsBroken);
            Assert.Equal(
                (3L, Anchor.SignedOff),
                (store.Shop.Jobs[id].LastAnchor!.Sequence, store.Shop.Jobs[id].LastAnchor!.Why)
            );
        }

        Assert.Empty(StoreCheck.All(folder.Reader()));
        TrailEntry late = folder.Reader().ReadTrail(JobId.Shop).Entries[^1].Entry;
        Assert.Equal(["book caught up", "job anchored"], late.Events.Select(map => map.TextAt("e")));
    }

    [Fact]
    public void A_job_that_the_book_does_not_know_yet_is_entered_late()
    {
        using var folder = new StoreInFolder();
        using (LocalStore store = folder.Found())
        {
            StoreInFolder.Written(store.OpenJob("2418", StoreInFolder.Texts, StoreInFolder.Draft("opened")));
        }

        byte[] book = File.ReadAllBytes(folder.Paths.Book);
        File.WriteAllBytes(folder.Paths.Book, book[..(book.AsSpan().IndexOf((byte)'\n') + 1)]);
        using LocalStore again = folder.Open();

        Assert.Equal("2418", Assert.Single(again.Shop.Jobs).Value.Stamp);
        Assert.Empty(StoreCheck.All(folder.Reader()));
    }

    [Fact]
    public void What_a_crash_left_unfinished_is_removed()
    {
        using var folder = new StoreInFolder();
        folder.WithOneJob();
        string[] unfinished =
        [
            Path.Combine(folder.Paths.Jobs, "aaaaaaaaaaaaaaaaaaaaaaaaaa.trail.tmp"),
            Path.Combine(folder.Paths.Texts, Digest.Zero + ".tmp"),
        ];
        Array.ForEach(unfinished, path => File.WriteAllText(path, "half"));
        folder.Open().Dispose();

        Assert.All(unfinished, path => Assert.False(File.Exists(path)));
        Assert.Empty(folder.Broken());
    }
}
