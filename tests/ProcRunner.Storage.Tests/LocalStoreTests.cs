using System.Runtime.Versioning;
using ProcRunner.Shop;
using ProcRunner.Store.Local;
using ProcRunner.Trail;

namespace ProcRunner.Tests.Storage;

public sealed class LocalStoreTests
{
    [Fact]
    public void An_entry_gets_number_digests_time_offset_bench_and_the_books_state()
    {
        using var folder = new StoreInFolder();
        using LocalStore store = folder.Found();
        AppendResult.Written opened = StoreInFolder.Written(
            store.OpenJob("2418", StoreInFolder.Texts, StoreInFolder.Draft("opened"))
        );
        folder.Time.Advance(TimeSpan.FromSeconds(5));
        AppendResult.Written next = StoreInFolder.Written(
            store.Append(opened.Entry.Of, StoreInFolder.Draft("reading"))
        );

        Assert.True(JobId.IsValid(opened.Entry.Of));
        Assert.Equal(
            (1L, Digest.Zero, Anchor.Opened),
            (opened.Entry.Sequence, opened.Entry.Previous, opened.Entry.Anchor)
        );
        Assert.Equal("2418", opened.Entry.Opening?.Stamp);
        Assert.Equal((2L, opened.Digest), (next.Entry.Sequence, next.Entry.Previous));
        Assert.Equal(new DateTimeOffset(2026, 11, 25, 1, 2, 8, 456, TimeSpan.Zero), next.Entry.At);
        Assert.Equal(TimeSpan.FromHours(2), next.Entry.Offset);
        Assert.Equal(("p1", "bench 1"), (next.Entry.Operator, next.Entry.Bench));
        Assert.Equal(store.Shop.Mark, next.Entry.Book);
        Assert.Equal(2, next.Entry.Book.Sequence);
        Assert.Equal(new JobAnchor(1, opened.Digest, Anchor.Opened), store.Shop.Jobs[opened.Entry.Of].LastAnchor);
        Assert.Equal(
            [opened.Entry, next.Entry],
            store.Reader.ReadTrail(opened.Entry.Of).Entries.Select(line => line.Entry)
        );
    }

    [Fact]
    public void Takes_up_where_it_left_off()
    {
        using var folder = new StoreInFolder();
        string id = folder.WithOneJob();
        using (LocalStore store = folder.Open())
        {
            Assert.Empty(store.Findings);
            Assert.Equal("Made-up shop", store.Shop.Name);
            Assert.Equal(4, StoreInFolder.Written(store.Append(id, StoreInFolder.Draft("more"))).Entry.Sequence);
        }

        Assert.Empty(folder.Broken());
        Assert.Equal(["opened", "reading", "sign", "more"], folder.EventsOf(id));
    }

    [Fact]
    public void Pins_a_text_once_under_its_digest()
    {
        using var folder = new StoreInFolder();
        folder.WithOneJob("1");
        folder.WithOneJob("2");

        Assert.Equal(
            new[] { "head text", "procedure text" }
                .Select(text => Digest.Of(StoreInFolder.Text(text)).ToString())
                .Order(),
            Directory.GetFiles(folder.Paths.Texts).Select(file => Path.GetFileName(file)).Order()
        );
        Assert.Equal(StoreInFolder.Text("head text"), folder.Reader().ReadText(Digest.Of("head text"u8)));
    }

    [Fact]
    public void Refuses_a_stamp_that_another_job_has_and_proposes_a_free_one()
    {
        using var folder = new StoreInFolder();
        using LocalStore store = folder.Found();

        Assert.Equal("1001", store.ProposeStamp());
        StoreInFolder.Written(store.OpenJob("2417", [], StoreInFolder.Draft("opened")));
        StoreInFolder.Written(store.OpenJob("Head-A", [], StoreInFolder.Draft("opened")));
        Assert.Equal("2418", store.ProposeStamp());
        Assert.IsType<AppendResult.Refused>(store.OpenJob("2417", [], StoreInFolder.Draft("opened")));
        Assert.IsType<AppendResult.Refused>(store.OpenJob("HEAD-A", [], StoreInFolder.Draft("opened")));
        Assert.IsType<AppendResult.Refused>(store.OpenJob(" ", [], StoreInFolder.Draft("opened")));
        Assert.IsType<AppendResult.Refused>(store.OpenJob("a\u001b[2J", [], StoreInFolder.Draft("opened")));
        Assert.Equal(2, folder.Reader().JobIds().Count());
    }

    [Theory]
    // Names that some platform can't have as a file, or that lead elsewhere.
    [InlineData("../../escape")]
    [InlineData("CON")]
    [InlineData("a:b*c?")]
    public void A_stamp_never_becomes_a_file_name(string stamp)
    {
        using var folder = new StoreInFolder();
        folder.WithOneJob(stamp);

        Assert.All(folder.Reader().JobIds(), id => Assert.True(JobId.IsValid(id)));
        Assert.Empty(folder.Broken());
    }

    [Fact]
    public void Nothing_is_added_to_a_job_that_is_closed_out_unknown_or_broken()
    {
        using var folder = new StoreInFolder();
        string closed = folder.WithOneJob("1");
        string broken = folder.WithOneJob("2");
        byte[] bytes = File.ReadAllBytes(folder.Paths.Trail(broken));
        bytes[40] ^= 1;
        File.WriteAllBytes(folder.Paths.Trail(broken), bytes);
        using LocalStore store = folder.Open();
        StoreInFolder.Written(store.Append(closed, StoreInFolder.Draft("close", Anchor.ClosedOut)));

        Assert.IsType<AppendResult.Refused>(store.Append(closed, StoreInFolder.Draft("more")));
        Assert.IsType<AppendResult.Refused>(store.Append("aaaaaaaaaaaaaaaaaaaaaaaaaa", StoreInFolder.Draft("more")));
        Assert.IsType<AppendResult.Refused>(store.Append("../book", StoreInFolder.Draft("more")));
        var refused = Assert.IsType<AppendResult.Refused>(store.Append(broken, StoreInFolder.Draft("more")));
        Assert.Contains("Entry 1", refused.Why, StringComparison.Ordinal);
        Assert.Equal(bytes, File.ReadAllBytes(folder.Paths.Trail(broken)));
        Assert.Contains(store.Findings, finding => finding is { IsBroken: true, Entry: 1 } && finding.Of == broken);
    }

    [Fact]
    public void A_clock_set_back_is_written_as_it_is()
    {
        using var folder = new StoreInFolder();
        string id = folder.WithOneJob();
        using (LocalStore store = folder.Open())
        {
            folder.Time.AdjustTime(new DateTimeOffset(2020, 1, 1, 0, 0, 0, TimeSpan.Zero));
            Assert.Equal(2020, StoreInFolder.Written(store.Append(id, StoreInFolder.Draft("late"))).Entry.At.Year);
        }

        Assert.Empty(folder.Broken());
    }

    [Fact]
    [UnsupportedOSPlatform("windows")]
    public void Only_the_owner_may_read_or_write()
    {
        using var folder = new StoreInFolder();
        folder.WithOneJob();
        folder.Reader().Index((_, _) => null).All();

        const UnixFileMode file = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        string[] all = Directory.GetFiles(folder.Root, "*", SearchOption.AllDirectories);
        Assert.True(all.Length >= 9);
        Assert.All(all, path => Assert.Equal((path, file), (path, File.GetUnixFileMode(path))));
        Assert.All(
            [folder.Root, folder.Paths.Jobs, folder.Paths.Texts],
            path => Assert.Equal(file | UnixFileMode.UserExecute, File.GetUnixFileMode(path))
        );
    }
}
