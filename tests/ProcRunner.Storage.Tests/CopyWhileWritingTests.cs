using System.Diagnostics;
using System.Security.Cryptography;
using ProcRunner.Store.Local;
using ProcRunner.Testing;
using ProcRunner.Trail;

namespace ProcRunner.Tests.Storage;

/// <summary>A copy of the store holds, also when it is made while the program writes.</summary>
public sealed class CopyWhileWritingTests
{
    private const int Copies = 12;

    [Fact]
    public async Task A_copy_made_while_entries_are_written_holds_and_opens()
    {
        using var folder = new StoreInFolder();
        using var copies = new TempFolder();
        using var done = new CancellationTokenSource();
        using LocalStore store = folder.Found();
        Task<int> writing = Task.Run(() => Write(store, done.Token));
        List<int> entries = [];
        for (int i = 0; i < Copies; i++)
        {
            string copy = copies[$"copy-{i}"];
            Assert.Null(StoreCopy.Make(folder.Reader(), copy));
            entries.Add(Check(copy));
        }

        await done.CancelAsync();
        int written = await writing;

        // The copies did catch the store at work.
        Assert.True(entries[^1] > entries[0], $"{entries[0]} then {entries[^1]} entries");
        Assert.True(written >= entries[^1]);
    }

    private static int Write(LocalStore store, CancellationToken stop)
    {
        int written = 0;
        for (int job = 0; !stop.IsCancellationRequested; job++)
        {
            string stamp = job.ToString(System.Globalization.CultureInfo.InvariantCulture);
            string id = StoreInFolder
                .Written(store.OpenJob(stamp, StoreInFolder.Texts, StoreInFolder.Draft("opened")))
                .Entry.Of;
            written++;
            for (int i = 0; i < 40 && !stop.IsCancellationRequested; i++)
            {
                Anchor anchor = i % 3 == 0 ? Anchor.SignedOff : Anchor.None;
                StoreInFolder.Written(store.Append(id, StoreInFolder.Draft("more", anchor)));
                written++;
            }
        }

        return written;
    }

    [Fact]
    public async Task A_plain_copy_of_the_folder_holds_while_nobody_writes_and_its_index_is_made_anew()
    {
        using var folder = new StoreInFolder();
        using var copies = new TempFolder();
        folder.WithOneJob("1");
        folder.WithOneJob("2");
        using LocalStore store = folder.Open();
        string copy = copies["copy"];
        using (Process cp = Process.Start("cp", ["-r", folder.Paths.Root, copy]))
        {
            await cp.WaitForExitAsync();
            Assert.Equal(0, cp.ExitCode);
        }

        Assert.Equal(6, Check(copy));
    }

    [Fact]
    public void A_copy_isnt_made_over_something_or_into_the_store_itself()
    {
        using var folder = new StoreInFolder();
        folder.WithOneJob();
        Assert.NotNull(StoreCopy.Make(folder.Reader(), folder.Paths.Jobs));
        Assert.NotNull(StoreCopy.Make(folder.Reader(), Path.Combine(folder.Paths.Root, "inside")));
        Assert.Empty(folder.Broken());
    }

    [Fact]
    public void A_store_that_doesnt_hold_is_copied_as_it_is_and_that_is_said()
    {
        using var folder = new StoreInFolder();
        using var copies = new TempFolder();
        string id = folder.WithOneJob();
        byte[] trail = File.ReadAllBytes(folder.Paths.Trail(id));
        trail[^200] ^= 1;
        File.WriteAllBytes(folder.Paths.Trail(id), trail);

        Assert.NotNull(StoreCopy.Make(folder.Reader(), copies["copy"]));
    }

    private static int Check(string copy)
    {
        StoreOpening opening = StoreFolder.Open(copy, "a test", TimeProvider.System, RandomNumberGenerator.Fill);
        using (LocalStore opened = Assert.IsType<StoreOpening.Opened>(opening).Store)
        {
            Assert.DoesNotContain(opened.Findings, f => f.IsBroken);
        }

        StoreReader reader = StoreReader.Open(copy).Reader!;
        Assert.DoesNotContain(StoreCheck.All(reader), f => f.IsBroken);
        return reader.JobIds().Sum(id => reader.ReadTrail(id).Entries.Length);
    }
}
