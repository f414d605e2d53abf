using System.Security.Cryptography;
using System.Text;
using Microsoft.Extensions.Time.Testing;
using ProcRunner.Shop;
using ProcRunner.Store.Local;
using ProcRunner.Trail;

namespace ProcRunner.Tests.Storage;

/// <summary>A store in a temporary folder, with made-up jobs.</summary>
internal sealed class StoreInFolder : IDisposable
{
    public StoreInFolder() =>
        Time.SetLocalTimeZone(TimeZoneInfo.CreateCustomTimeZone("t", TimeSpan.FromHours(2), "t", "t"));

    // In memory where that can be had: thousands of stores are made here, and what a disk keeps is shown elsewhere.
    private const string Memory = "/dev/shm";

    public string Root { get; } = Path.Combine(NewFolder(), "store");

    public FakeTimeProvider Time { get; } = new(new DateTimeOffset(2026, 11, 25, 1, 2, 3, 456, TimeSpan.Zero));

    public StorePaths Paths => new(Root);

    public static ReadOnlyMemory<byte>[] Texts => ["procedure text"u8.ToArray(), "head text"u8.ToArray()];

    public static EntryDraft Draft(string what, Anchor anchor = Anchor.None) =>
        new("p1", [Json.MapOf(("e", new Json.Text(what)))], anchor);

    public static byte[] Text(string text) => Encoding.UTF8.GetBytes(text);

    public StoreOpening TryFound(IDisk? disk = null, Func<string, FileStream>? openLock = null) =>
        Start(disk, openLock).Run("Made-up shop");

    public StoreOpening TryOpen(IDisk? disk = null, Func<string, FileStream>? openLock = null) =>
        Start(disk, openLock).Run(null);

    public LocalStore Found() => Assert.IsType<StoreOpening.Opened>(TryFound()).Store;

    public LocalStore Open(IDisk? disk = null) => Assert.IsType<StoreOpening.Opened>(TryOpen(disk)).Store;

    public StoreReader Reader() => StoreReader.Open(Root).Reader!;

    /// <summary>What a check of the whole store says against it.</summary>
    public IReadOnlyList<StoreFinding> Broken() => [.. StoreCheck.All(Reader()).Where(finding => finding.IsBroken)];

    public List<string> EventsOf(string jobId) =>
        [.. Reader().ReadTrail(jobId).Entries.Select(line => line.Entry.Events[0].TextAt("e")!)];

    /// <summary>A founded store with one job of three entries, the last of them signed off; closed again.</summary>
    public string WithOneJob(string stamp = "2418")
    {
        using LocalStore store = File.Exists(Paths.Format) ? Open() : Found();
        string id = Written(store.OpenJob(stamp, Texts, Draft("opened"))).Entry.Of;
        Written(store.Append(id, Draft("reading")));
        Written(store.Append(id, Draft("sign", Anchor.SignedOff)));
        return id;
    }

    public static AppendResult.Written Written(AppendResult result) => Assert.IsType<AppendResult.Written>(result);

    public static void AppendShop(LocalStore store, params ShopEvent[] events) =>
        Written(store.AppendShop("p1", events));

    public void Dispose() => Directory.Delete(Path.GetDirectoryName(Root)!, recursive: true);

    private static string NewFolder()
    {
        string name = $"procrunner-{Guid.NewGuid():N}";
        return Directory.Exists(Memory)
            ? Directory.CreateDirectory(Path.Combine(Memory, name)).FullName
            : Directory.CreateTempSubdirectory("procrunner-").FullName;
    }

    private StoreStart Start(IDisk? disk, Func<string, FileStream>? openLock) =>
        new(Paths, disk ?? Disk.Real, new(Time, RandomNumberGenerator.Fill, "bench 1"), "a test")
        {
            OpenLock = openLock ?? StoreLock.OpenExclusively,
        };
}
