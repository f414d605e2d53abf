using System.Collections.Immutable;
using System.CommandLine;
using System.Diagnostics;
using System.Globalization;
using System.Security.Cryptography;
using ProcRunner.Records.History;
using ProcRunner.Store.Local;
using ProcRunner.Tui.Jobs;

namespace ProcRunner.Benchmarks.History;

/// <summary><c>history</c>: finding, recalling, trends and the making of the index on a store of many jobs.</summary>
internal static class HistoryCommand
{
    private const double GoalMilliseconds = 20;
    private const int Rounds = 7;

    /// <summary>The command.</summary>
    public static Command Create()
    {
        Option<int> jobs = new("--jobs") { Description = "how many jobs are made", DefaultValueFactory = _ => 100_000 };
        Option<string> folder = new("--folder")
        {
            Description = "where they are made; it is removed at the end",
            DefaultValueFactory = _ => Path.Combine(Path.GetTempPath(), "procrunner-history"),
        };
        Command command = new("history", "finding, recalling, trends and the index on many jobs") { jobs, folder };
        command.SetAction(parsed => Run(Path.GetFullPath(parsed.GetValue(folder)!), parsed.GetValue(jobs)));
        return command;
    }

    private static int Run(string folder, int jobs)
    {
        if (Directory.Exists(folder))
        {
            Console.Error.WriteLine($"{folder} is there already.");
            return 2;
        }

        try
        {
            DemoRun demo = DemoRun.Make(Path.Combine(folder, "demo"));
            string store = Path.Combine(folder, "shop");
            long bytes = 0;
            double made = Timing.Of(() => bytes = new GeneratedShop(demo, store, seed: 1).Make(jobs));
            Say(
                $"made {jobs:N0} jobs of {GeneratedShop.EntriesEach} entries, {bytes / 1e6:N0} MB, in {made / 1000:N0} s"
            );
            Index(store);
            return AskAll(store) ? 0 : 1;
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static void Index(string store)
    {
        double cat = Math.Min(Cat(store), Cat(store));
        StoreReader reader = StoreReader.Open(store).Reader!;
        SearchIndex index = reader.Index(JobProjection.Over(() => reader), looksOnce: true);
        long told = 0;
        index.Progress = (_, _) => told++;
        double rebuilt = Timing.Of(() => index.TryRefresh());
        long size = new FileInfo(Path.Combine(store, "index.db")).Length;
        Say($"cat of the trails {cat / 1000:N1} s; index made in {rebuilt / 1000:N0} s, {rebuilt / cat:N1} times cat");
        Say($"progress told {told:N0} times; index.db {size / 1e6:N0} MB; {index.Trouble ?? "no trouble"}");
        Say($"most memory so far {Process.GetCurrentProcess().PeakWorkingSet64 / 1e6:N0} MB");
    }

    private static bool AskAll(string folder)
    {
        StoreReader? reader = null;
        LocalStore? store = null;
        double opened = Timing.Of(() =>
        {
            StoreOpening opening = StoreFolder.Open(
                folder,
                "benchmark",
                TimeProvider.System,
                RandomNumberGenerator.Fill,
                "bench one",
                JobProjection.Over(() => reader!)
            );
            store = ((StoreOpening.Opened)opening).Store;
            reader = store.Reader;
        });
        using LocalStore held = store!;
        SearchIndex index = held.Index!;
        long before = GC.GetTotalMemory(forceFullCollection: true);
        int count = 0;
        double first = Timing.Of(() => count = index.All().Length);
        long after = GC.GetTotalMemory(forceFullCollection: true);
        Say(
            $"store opened in {opened / 1000:N1} s; index checked and {count:N0} jobs read into memory in {first / 1000:N1} s"
        );
        Say($"the jobs in memory: {(after - before) / 1e6:N0} MB");
        bool met = Find(index);
        Recall(index);
        return met;
    }

    private static bool Find(SearchIndex index)
    {
        List<double> times = [];
        foreach ((string kind, JobQuery query) in Searches.All)
        {
            int found = 0;
            List<double> own = [];
            for (int round = 0; round <= Rounds; round++)
            {
                double time = Timing.Of(() => found = index.Find(query).Count);
                if (round > 0)
                {
                    own.Add(time);
                }
            }

            Say($"  {kind}: {found:N0} in {Timing.Quantile(own, 0.5):N1} ms, at most {own.Max():N1}");
            times.AddRange(own);
        }

        double median = Timing.Quantile(times, 0.5);
        double most = Timing.Quantile(times, 0.95);
        Say(
            $"find, {Searches.All.Count} kinds, {times.Count} searches: median {median:N1} ms, 95 of 100 within {most:N1} ms, slowest {times.Max():N1} ms; goal {GoalMilliseconds:N0} ms"
        );
        return times.Max() <= GoalMilliseconds;
    }

    private static void Recall(SearchIndex index)
    {
        int held = 0;
        double part = Timing.Of(() => held = index.Holding("SI-7", "L100").Length);
        Say($"recall of a part and lot: {held:N0} jobs in {part:N1} ms");
        DateTimeOffset since = index.All()[0].LastActivity.AddDays(-30);
        int taken = 0;
        double gauge = Timing.Of(() => taken = index.ReadingsWith("B2", since).Length);
        Say($"recall of a gauge, its last 30 days: {taken:N0} readings in {gauge:N0} ms");
        ImmutableArray<TrendReading> readings = [];
        double read = Timing.Of(() => readings = [.. ReadingHistory.Of(index, "recession", asFound: false)]);
        Trend? trend = null;
        double worked = Timing.Of(() => trend = Trend.Of(readings, TrendBy.Cutter));
        Say(
            $"trend of recession by cutter: {readings.Length:N0} readings in {read / 1000:N1} s, worked out in {worked / 1000:N1} s, {trend!.Groups.Count} groups"
        );
        Say($"most memory at all {Process.GetCurrentProcess().PeakWorkingSet64 / 1e6:N0} MB");
    }

    private static double Cat(string store)
    {
        ProcessStartInfo cat = new("sh", ["-c", "find jobs -name '*.trail' -print0 | xargs -0 cat > /dev/null"])
        {
            WorkingDirectory = store,
        };
        return Timing.Of(() =>
        {
            using Process run = Process.Start(cat)!;
            run.WaitForExit();
        });
    }

    private static void Say(FormattableString text) => Console.WriteLine(text.ToString(CultureInfo.InvariantCulture));
}
