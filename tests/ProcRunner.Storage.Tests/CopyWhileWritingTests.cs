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
    private const int Rounds = 12;
    private const int MostAgain = 40;

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
    public async Task A_folder_copied_again_while_entries_are_written_holds_as_soon_as_verify_says_so()
    {
        using var folder = new StoreInFolder();
        using var copies = new TempFolder();
        using LocalStore store = folder.Found();
        List<string> ids = [Open(store, 0), Open(store, 1), Open(store, 2)];
        using CancellationTokenSource stop = new();

        // Many times faster than anybody works: an entry every few milliseconds, every third known to the shop book.
        Task writer = Task.Run(() =>
        {
            for (int i = 0; !stop.IsCancellationRequested; i++)
            {
                Anchor anchor = i % 3 == 0 ? Anchor.SignedOff : Anchor.None;
                StoreInFolder.Written(store.Append(ids[i % ids.Count], StoreInFolder.Draft("more", anchor)));
                if (i % 40 == 0)
                {
                    ids.Add(Open(store, 100 + i));
                }

                Thread.Sleep(15);
            }
        });
        string copy = copies["copy"];
        int before = Count(folder.Reader());
        await Run("cp", "-a", folder.Paths.Root, copy);
        int again = 0;
        for (bool holds = false; !holds; again++)
        {
            Assert.True(again < MostAgain, "The copy never holds.");
            await Run("cp", "-au", folder.Paths.Root + "/.", copy);
            holds = !StoreCheck.All(StoreReader.Open(copy).Reader!).Any(f => f.IsBroken);
        }

        await stop.CancelAsync();
        await writer;
        Assert.InRange(Check(copy), before, Count(folder.Reader()));
    }

    [Fact]
    public void Of_files_copied_one_by_one_while_entries_are_written_what_they_agree_on_makes_a_store_that_holds()
    {
        Random random = new(31);
        int unlike = 0;
        for (int round = 0; round < Rounds; round++)
        {
            using var folder = new StoreInFolder();
            using var copies = new TempFolder();
            using LocalStore store = folder.Found();
            List<string> ids = [Open(store, 0), Open(store, 1), Open(store, 2)];
            Dictionary<string, int> before = ids.ToDictionary(
                id => id,
                id => folder.Reader().ReadTrail(id).Entries.Length
            );
            int book = folder.Reader().ReadTrail(JobId.Shop).Entries.Length;

            // Whatever the order, and work goes on between any two files.
            string copy = copies["copy"];
            string[] files = Directory.GetFiles(folder.Paths.Root, "*", SearchOption.AllDirectories);
            random.Shuffle(files);
            foreach (string file in files.Where(f => !f.EndsWith(".lock", StringComparison.Ordinal)))
            {
                string to = Path.Combine(copy, Path.GetRelativePath(folder.Paths.Root, file));
                Directory.CreateDirectory(Path.GetDirectoryName(to)!);
                File.Copy(file, to);
                for (int i = random.Next(4); i > 0; i--)
                {
                    Anchor anchor = random.Next(2) == 0 ? Anchor.SignedOff : Anchor.None;
                    string id = ids[random.Next(ids.Count)];
                    StoreInFolder.Written(store.Append(id, StoreInFolder.Draft("more", anchor)));
                }

                ids.Add(Open(store, 100 + ids.Count));
            }

            StoreReader reader = StoreReader.Open(copy).Reader!;
            bool holds = !StoreCheck.All(reader).Any(f => f.IsBroken);
            unlike += holds ? 0 : 1;
            Assert.True(StoreCopy.Make(reader, copies["strict"]) is null || !holds);

            List<string> leftOut = [];
            Assert.Null(StoreCopy.Make(reader, copies["agreed"], leavingOut: leftOut.Add));
            Assert.Equal(holds, leftOut.Count == 0);
            StoreReader agreed = StoreReader.Open(copies["agreed"]).Reader!;
            Assert.All(before, b => Assert.True(agreed.ReadTrail(b.Key).Entries.Length >= b.Value));
            Assert.True(agreed.ReadTrail(JobId.Shop).Entries.Length >= book);
            Check(copies["agreed"]);
        }

        Assert.InRange(unlike, Rounds / 2, Rounds);
    }

    [Fact]
    public void What_was_altered_isnt_taken_for_files_of_different_moments()
    {
        using var folder = new StoreInFolder();
        using var copies = new TempFolder();
        string id = folder.WithOneJob();
        byte[] trail = File.ReadAllBytes(folder.Paths.Trail(id));
        trail[trail.Length / 2] ^= 1;
        File.WriteAllBytes(folder.Paths.Trail(id), trail);

        Assert.NotNull(StoreCopy.Make(folder.Reader(), copies["copy"], leavingOut: _ => { }));
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

    private static async Task Run(string program, params string[] arguments)
    {
        using Process run = Process.Start(program, arguments);
        await run.WaitForExitAsync();
        Assert.Equal(0, run.ExitCode);
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
