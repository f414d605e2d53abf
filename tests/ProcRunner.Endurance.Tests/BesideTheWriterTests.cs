using System.Globalization;
using ProcRunner.Store.Local;
using ProcRunner.Testing;
using ProcRunner.Trail;

namespace ProcRunner.Endurance.Tests;

/// <summary>One program writes; twenty readers, some of them programs of their own, read the same store meanwhile.</summary>
public sealed class BesideTheWriterTests : IDisposable
{
    private const int Threads = 14;
    private static readonly string[] Programs =
    [
        "jobs",
        "find DEMO",
        "show DEMO",
        "verify",
        "jobs --json",
        "find irrigation",
    ];

    private readonly TempFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task Twenty_readers_see_only_whole_entries_and_the_index_answers()
    {
        string store = _folder["store"];
        using LineProgram writer = new(BuiltProgram.Path, store);
        writer.Send("?");
        Assert.NotNull(writer.WaitFor(0, line => line.StartsWith("    quit", StringComparison.Ordinal)));
        using CancellationTokenSource ended = new();
        Task<int>[] readers =
        [
            .. Enumerable
                .Range(0, Threads)
                .Select(_ => Task.Factory.StartNew(() => Read(store, ended.Token), TaskCreationOptions.LongRunning)),
            .. Programs.Select(words =>
                Task.Factory.StartNew(() => Ask(store, words, ended.Token), TaskCreationOptions.LongRunning)
            ),
        ];
        string[] lines = await File.ReadAllLinesAsync(BuiltProgram.Entries);
        foreach (string[] some in lines.Chunk(lines.Length / 100))
        {
            writer.Send(some);
            await Task.Delay(20);
        }

        (int status, _, string errors) = await Task.Run(writer.End);
        await ended.CancelAsync();
        int[] counts = await Task.WhenAll(readers);

        Assert.True(status == 0, errors);
        Assert.All(counts, count => Assert.True(count > 1, "a reader didn't get round to reading"));
        StoreReader reader = StoreReader.Open(store).Reader!;
        Assert.Equal(
            DemoEntry.ReadAll(BuiltProgram.Entries).Count + 1,
            reader.ReadTrail(Assert.Single(reader.JobIds())).Entries.Length
        );
    }

    [Fact]
    public void A_second_writer_is_refused_and_told_who_holds_the_store()
    {
        string store = _folder["store"];
        using LineProgram first = new(BuiltProgram.Path, store);
        Assert.NotNull(first.WaitFor(0, line => line.StartsWith("teardown / casting", StringComparison.Ordinal)));

        (int status, string said) = Program.Run(store, "run DEMO --plain");
        Assert.Equal(2, status);
        Assert.Contains(
            $"in use by run DEMO (process {first.Id.ToString(CultureInfo.InvariantCulture)} on ",
            said,
            StringComparison.Ordinal
        );
        Assert.Equal(0, first.End().Status);
        Assert.Equal(0, Program.Run(store, "run DEMO --plain").Status);
    }

    // Every reading must hold, and hold at least what the one before did.
    private static int Read(string store, CancellationToken ended)
    {
        StoreReader reader = StoreReader.Open(store).Reader!;
        string job = Assert.Single(reader.JobIds());
        int before = 0;
        int count = 0;
        while (!ended.IsCancellationRequested)
        {
            TrailReading trail = reader.ReadTrail(job);
            Assert.True(trail.Verdict is TrailVerdict.Holds, trail.Verdict.InWords());
            Assert.InRange(trail.Entries.Length, before, int.MaxValue);
            before = trail.Entries.Length;
            TrailVerdict book = reader.ReadShop().Verdict;
            Assert.True(book is TrailVerdict.Holds, book.InWords());
            if (count++ % 20 == 0)
            {
                Assert.DoesNotContain(StoreCheck.All(reader), finding => finding.IsBroken);
            }

            Thread.Sleep(20);
        }

        return count;
    }

    private static int Ask(string store, string words, CancellationToken ended)
    {
        int count = 0;
        while (!ended.IsCancellationRequested || count < 2)
        {
            (int status, string said) = Program.Run(store, words);
            Assert.True(status == 0, $"{words}: {said}");
            count++;
        }

        return count;
    }
}
