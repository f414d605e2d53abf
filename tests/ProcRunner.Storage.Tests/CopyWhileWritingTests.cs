using System.Diagnostics;
using System.Security.Cryptography;
using ProcRunner.Store.Local;
using ProcRunner.Testing;
using ProcRunner.Trail;

namespace ProcRunner.Tests.Storage;

/// <summary>A copy of the store holds, also when it is made while the program writes.</summary>
public sealed class CopyWhileWritingTests
{
    private const int Copies = 3;

    [Fact]
    public void A_copy_made_while_entries_are_written_holds_and_opens()
    {
        using var folder = new StoreInFolder();
        using var copies = new TempFolder();
        using LocalStore store = folder.Found();
        List<string> ids = [Open(store, 0), Open(store, 1), Open(store, 2)];
        for (int i = 0; i < Copies; i++)
        {
            int before = Count(folder.Reader());
            string copy = copies[$"copy-{i}"];

            // After each trail that is copied every job goes on, with and without the shop book, and another one is opened.
            void Work(int done, int of)
            {
                foreach (string id in ids)
                {
                    Anchor anchor = (done + i) % 2 == 0 ? Anchor.SignedOff : Anchor.None;
                    StoreInFolder.Written(store.Append(id, StoreInFolder.Draft("more", anchor)));
                    StoreInFolder.Written(store.Append(id, StoreInFolder.Draft("more")));
                }

                ids.Add(Open(store, 1000 + (i * 100) + done));
            }

            Assert.Null(StoreCopy.Make(folder.Reader(), copy, Work));
            int copied = Check(copy);
            Assert.InRange(copied, before, Count(folder.Reader()) - 1);
        }

        Assert.Empty(folder.Broken());
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

    private static string Open(LocalStore store, int number)
    {
        string stamp = number.ToString(System.Globalization.CultureInfo.InvariantCulture);
        AppendResult opened = store.OpenJob(stamp, StoreInFolder.Texts, StoreInFolder.Draft("opened"));
        return StoreInFolder.Written(opened).Entry.Of;
    }

    private static int Count(StoreReader reader) => reader.JobIds().Sum(id => reader.ReadTrail(id).Entries.Length);

    private static int Check(string copy)
    {
        StoreOpening opening = StoreFolder.Open(copy, "a test", TimeProvider.System, RandomNumberGenerator.Fill);
        using (LocalStore opened = Assert.IsType<StoreOpening.Opened>(opening).Store)
        {
            Assert.DoesNotContain(opened.Findings, f => f.IsBroken);
        }

        StoreReader reader = StoreReader.Open(copy).Reader!;
        Assert.DoesNotContain(StoreCheck.All(reader), f => f.IsBroken);
        return Count(reader);
    }
}
