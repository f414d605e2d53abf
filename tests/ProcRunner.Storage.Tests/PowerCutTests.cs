using System.Globalization;
using ProcRunner.Quantities;
using ProcRunner.Shop;
using ProcRunner.Store.Local;
using ProcRunner.Trail;

namespace ProcRunner.Tests.Storage;

/// <summary>
/// The power is cut at any operation of the store's real sequence, again and again over the life of one store: founding, two jobs,
/// entries short and long, sign-offs, the shop book, a close-out, and the recoveries themselves. PROCRUNNER_POWER_CUTS sets how
/// often; 250 otherwise.
/// </summary>
public sealed class PowerCutTests
{
    private const int Operations = 45;

    // Each with what comes of it: an entry of job 0 or 1, or of the shop book. Some fill several sectors, or a page and more.
    private static readonly (int Job, string What, Anchor Anchor, int Length)[] Steps =
    [
        (0, "opened", Anchor.Opened, 10),
        (0, "reading", Anchor.None, 10),
        (0, "note", Anchor.None, 3000),
        (0, "sign", Anchor.SignedOff, 10),
        (-1, "gauge", Anchor.None, 10),
        (1, "opened", Anchor.Opened, 900),
        (0, "hand over", Anchor.HandedOver, 700),
        (1, "note", Anchor.None, 9000),
        (1, "reading", Anchor.None, 10),
        (1, "sign", Anchor.SignedOff, 600),
        (0, "close", Anchor.ClosedOut, 10),
    ];

    private static readonly Quantity Step = new(0.0001m, Units.Inch);
    private static readonly Gauge Gauge = new("D2", "second depth gauge (invented)", "depth", Step, Step, null, null);

    private int _cuts;
    private int _torn;
    private int _ahead;
    private int _failedFlushes;

    [Fact]
    public void Nothing_acknowledged_is_lost()
    {
        int wanted = int.Parse(
            Environment.GetEnvironmentVariable("PROCRUNNER_POWER_CUTS") ?? "250",
            CultureInfo.InvariantCulture
        );
        for (int seed = 1; _cuts < wanted; seed++)
        {
            LiveThrough(seed);
        }

        // Otherwise the cuts fell where nothing was at stake.
        Assert.True(_torn > wanted / 100, $"torn {_torn}");
        Assert.True(_ahead > wanted / 100, $"ahead {_ahead}");
        Assert.True(_failedFlushes > wanted / 100, $"failed flushes {_failedFlushes}");
    }

    private void LiveThrough(int seed)
    {
        using var folder = new StoreInFolder();
        Random random = new(seed);
        int known = 0;
        PowerCutDisk disk = new(folder.Root, random);
        for (int life = 1; known < Steps.Length; life++)
        {
            disk.StopAfter(random.Next(Operations), random.Next(3) == 0 ? 1 + random.Next(12) : 0);
            int acknowledged = Live(folder, disk, known);
            if (acknowledged == Steps.Length)
            {
                return;
            }

            // Mostly the power goes; sometimes the program alone is killed, and the power goes in a later life.
            if (random.Next(3) > 0)
            {
                disk.CutPower(folder.Root);
                _failedFlushes += disk.HasFailed ? 1 : 0;
                disk = new(folder.Root, random);
                _cuts++;
            }
            else
            {
                disk.Kill();
            }

            known = Examine(
                folder,
                acknowledged,
                string.Create(CultureInfo.InvariantCulture, $"seed {seed}, life {life}")
            );
        }
    }

    // Goes on where the folder says that it got to; how many steps are acknowledged then. 0 also before the founding is.
    private static int Live(StoreInFolder folder, PowerCutDisk disk, int known)
    {
        var locks = new List<FileStream>();
        FileStream Lock(string path)
        {
            locks.Add(StoreLock.OpenExclusively(path));
            return locks[^1];
        }

        int acknowledged = known;
        try
        {
            StoreOpening opening = Insist<StoreOpening, StoreOpening.Unusable>(() =>
                StoreFolder.Exists(folder.Root) ? folder.TryOpen(disk, Lock) : folder.TryFound(disk, Lock)
            );
            LocalStore store = Assert.IsType<StoreOpening.Opened>(opening).Store;
            acknowledged = Math.Max(acknowledged, Present(folder));
            for (int i = Present(folder); i < Steps.Length; i++)
            {
                int step = i;
                AppendResult result = Insist<AppendResult, AppendResult.Failed>(() => Do(folder, store, step));
                StoreInFolder.Written(result);
                acknowledged = i + 1;
            }

            store.Dispose();
        }
        catch (PowerCutException)
        {
            // What a dying program still does is not to be seen.
        }

        locks.ForEach(held => held.Dispose());
        return acknowledged;
    }

    // On a copy: the real recovery is to be cut off too.
    private int Examine(StoreInFolder folder, int acknowledged, string when)
    {
        using var copy = new StoreInFolder();
        Copy(folder.Root, copy.Root);
        if (!StoreFolder.Exists(copy.Root))
        {
            Assert.True(acknowledged == 0, $"{when}: no store is left of {acknowledged} steps");
            return 0;
        }

        StoreOpening opening = copy.TryOpen(new FailingDisk(int.MaxValue, Failure.Before));
        LocalStore store = Assert.IsType<StoreOpening.Opened>(opening).Store;
        _torn += store.Findings.Any(f => f.Text.Contains("wasn't whole", StringComparison.Ordinal)) ? 1 : 0;
        Assert.All(store.Findings, finding => Assert.False(finding.IsBroken, $"{when}: {finding.Text}"));
        store.Dispose();
        IReadOnlyList<StoreFinding> broken = copy.Broken();
        Assert.True(broken.Count == 0, $"{when}: {string.Join(' ', broken.Select(f => f.Text))}");
        int present = Present(copy);
        Assert.True(present >= acknowledged, $"{when}: {acknowledged} steps were acknowledged, {present} are left");
        Assert.True(present <= acknowledged + 1, $"{when}: {acknowledged} acknowledged, {present} there");
        _ahead += present > acknowledged ? 1 : 0;
        return acknowledged;
    }

    private static AppendResult Do(StoreInFolder folder, LocalStore store, int step)
    {
        (int job, string what, Anchor anchor, int length) = Steps[step];
        Json.Map happened = Json.MapOf(("e", new Json.Text(what)), ("t", new Json.Text(new string('x', length))));
        return job < 0 ? store.AppendShop("p1", new ShopEvent.GaugeAdded(Gauge))
            : anchor == Anchor.Opened ? store.OpenJob(Stamp(job), StoreInFolder.Texts, new("p1", [happened], anchor))
            : store.Append(IdOf(folder, job)!, new("p1", [happened], anchor));
    }

    /// <summary>How many steps are in the store: those there must be the first ones.</summary>
    private static int Present(StoreInFolder folder)
    {
        StoreReader reader = folder.Reader();
        Dictionary<int, Queue<string>> trails = [];
        foreach (int job in (int[])[0, 1])
        {
            trails[job] = new(IdOf(folder, job) is { } id ? folder.EventsOf(id) : []);
        }

        ShopState shop = reader.ReadShop().Shop;
        int present = 0;
        foreach ((int job, string what, _, _) in Steps)
        {
            bool isThere =
                job < 0
                    ? shop.Gauges.ContainsKey(Gauge.Id)
                    : trails[job].TryDequeue(out string? there) && there == what;
            if (!isThere)
            {
                break;
            }

            present++;
        }

        int entries = Steps.Take(present).Count(step => step.Job >= 0);
        int all = folder.Reader().JobIds().Sum(id => folder.EventsOf(id).Count);
        Assert.True(entries == all, $"{all} entries are there, {entries} of them in their place");
        return present;
    }

    private static string Stamp(int job) => job == 0 ? "2418" : "2419";

    private static string? IdOf(StoreInFolder folder, int job) =>
        folder
            .Reader()
            .JobIds()
            .FirstOrDefault(id =>
                folder.Reader().ReadTrail(id).Entries is [var first, ..] && first.Entry.Opening?.Stamp == Stamp(job)
            );

    // As the operator does when it says that nothing was recorded.
    private static T Insist<T, TFailed>(Func<T> action)
    {
        T result = action();
        return result is TFailed ? action() : result;
    }

    private static void Copy(string from, string to)
    {
        if (!Directory.Exists(from))
        {
            return;
        }

        Directory.CreateDirectory(to);
        foreach (string folder in Directory.GetDirectories(from))
        {
            Copy(folder, Path.Combine(to, Path.GetFileName(folder)));
        }

        foreach (string file in Directory.GetFiles(from))
        {
            File.Copy(file, Path.Combine(to, Path.GetFileName(file)));
        }
    }
}
