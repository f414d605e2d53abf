using ProcRunner.Records;
using ProcRunner.Runs;
using ProcRunner.Shop;
using ProcRunner.Store.Local;
using ProcRunner.Trail;
using ProcRunner.Tui.Demo;

namespace ProcRunner.Tui.Jobs;

/// <summary>A job for whoever looks at it: its build record, and what is open now.</summary>
internal sealed class JobAccount
{
    private JobAccount(RunState state, BuildRecord record, IReadOnlyList<ShopRoot> roots)
    {
        (State, Record, Roots) = (state, record, roots);
        Outlook outlook = new(state);
        Open = [.. outlook.Open];
        Rechecks = [.. outlook.All.Where(outlook.IsRecheck)];
    }

    /// <summary>The run.</summary>
    public RunState State { get; }

    /// <summary>What was built so far.</summary>
    public BuildRecord Record { get; }

    /// <summary>The shop's first lead, and every later one that it began anew with.</summary>
    public IReadOnlyList<ShopRoot> Roots { get; }

    /// <summary>Steps that can be done now; none in a job that is closed.</summary>
    public IReadOnlyList<At> Open { get; }

    /// <summary>Steps that were done and are to be done again because something moved.</summary>
    public IReadOnlyList<At> Rechecks { get; }

    /// <summary>True when nothing can follow any more.</summary>
    public bool IsClosed => Record.IsClosed;

    /// <summary>Reads a job; null with the reason when its trail or texts don't hold.</summary>
    public static (JobAccount? Account, string Fault) Read(ITrailReader reader, string jobId)
    {
        TrailReading trail = reader.ReadTrail(jobId);
        List<RecordEntry> entries = [];
        (RunState? state, string fault) = JobReading.Fold(
            reader,
            jobId,
            trail.Entries.Select(e => e.Entry),
            (_, entry, events) => entries.Add(new(entry, trail.Entries[entries.Count].Digest, events))
        );
        if (state?.Job is null)
        {
            return (null, fault.Length > 0 ? fault : "The job was never opened.");
        }

        ShopState shop = ShopThen(reader, entries[^1].Entry.Book.Sequence);
        IReadOnlyList<ShopRoot> roots = ShopThen(reader, long.MaxValue).Roots;
        RecordSource source = new(state, shop, entries, DemoShop.Is(shop), EarlierOf(reader, state));
        return (new(state, BuildRecord.From(source), roots), "");
    }

    // As the earlier job stood when this one was opened against it: what was added to it since is no part of this record.
    private static RunState? EarlierOf(ITrailReader reader, RunState state)
    {
        if (state.Earlier is not { } back)
        {
            return null;
        }

        TrailReading trail = reader.ReadTrail(back.Job);
        int last = trail.Entries.ToList().FindIndex(e => e.Digest.ToString() == back.Last);
        return last < 0 || trail.Verdict is not TrailVerdict.Holds
            ? null
            : JobReading.Fold(reader, back.Job, trail.Entries.Take(last + 1).Select(e => e.Entry)).State;
    }

    // A gauge calibrated since then doesn't change what the job was measured with.
    private static ShopState ShopThen(ITrailReader reader, long book) =>
        reader
            .ReadTrail(JobId.Shop)
            .Entries.Where(e => e.Entry.Sequence <= book)
            .Aggregate(ShopState.Empty, (shop, line) => shop.After(line.Entry, line.Digest));
}
