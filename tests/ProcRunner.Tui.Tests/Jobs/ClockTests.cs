using ProcRunner.Runs;
using ProcRunner.Store.Local;
using ProcRunner.Testing;
using ProcRunner.Trail;
using ProcRunner.Tui.Demo;
using ProcRunner.Tui.Jobs;
using ProcRunner.Tui.Screens.Shop;
using ProcRunner.Tui.Shell;

namespace ProcRunner.Tui.Tests.Jobs;

/// <summary>A clock that jumps: years back, years on, into another time zone. Nothing but the marks depends on it.</summary>
public sealed class ClockTests
{
    private static readonly DateTimeOffset[] Times =
    [
        new(2031, 5, 6, 12, 0, 0, TimeSpan.Zero),
        new(1999, 12, 31, 23, 59, 59, TimeSpan.Zero),
        new(2090, 1, 1, 0, 0, 0, TimeSpan.Zero),
        new(2031, 5, 6, 11, 59, 59, 999, TimeSpan.Zero),
    ];

    [Fact]
    public void An_entry_dated_before_the_one_before_is_accepted_and_marked()
    {
        using TempFolder folder = new();
        string id;
        using (LocalStore store = DemoShop.Open(folder["shop"], "tests").Store!)
        {
            id = DemoShop.OpenJob(store, DemoShop.Stamp).Run!.State.JobId;
        }

        for (int i = 0; i < Times.Length; i++)
        {
            SetClock clock = new(Times[i], TimeSpan.FromMinutes(90 - (i * 60)));
            using LocalStore store = Opened(folder["shop"], clock);
            JobRun run = JobRun.Resume(store, clock, id, "vale").Run!;
            Assert.IsType<JobAnswer.Recorded>(run.Do(new RunCommand.Note(null, $"note {i}")));
        }

        StoreReader reader = ShopFloor.Read(folder["shop"]).Reader!;
        TrailEntry[] entries = [.. reader.ReadTrail(id).Entries.Select(e => e.Entry)];
        Assert.Equal(Times, entries[1..].Select(e => e.At));
        Assert.Equal([90, 30, -30, -90], entries[1..].Select(e => (int)e.Offset.TotalMinutes));

        JobAccount account = JobAccount.Read(reader, id).Account!;
        Assert.Equal(["note 0", "note 1", "note 2", "note 3"], account.State.Notes.Select(n => n.Note.Text));
        JobCheck check = JobCheck.Run(reader, reader.ReadShop().Shop, reader.ReadShop().Shop.Jobs[id], null)[^1];
        Assert.True(check.Holds);
        Assert.Equal([3L, 5L], check.Findings.Select(f => f.Entry!.Value));
        Assert.All(check.Findings, f => Assert.Contains("clock was set back", f.Text, StringComparison.Ordinal));
        Assert.Contains(
            JobAccountLines.Of(account),
            l => l.StartsWith("Entry 3 is dated 1999", StringComparison.Ordinal)
        );
        string[] story = [.. PositionStory.Of(account.State, entries, At.Head, who => who).Select(line => line.Text)];
        Assert.Equal(2, story.Count(line => line.Contains("(clock set back)", StringComparison.Ordinal)));
        Assert.Empty(Recompute.Of(reader, id).Otherwise);
    }

    private static LocalStore Opened(string folder, TimeProvider clock) =>
        Assert.IsType<StoreOpening.Opened>(StoreFolder.Open(folder, "tests", clock, Machine.Entropy)).Store;

    private sealed class SetClock(DateTimeOffset now, TimeSpan offset) : TimeProvider
    {
        public override TimeZoneInfo LocalTimeZone { get; } = TimeZoneInfo.CreateCustomTimeZone("t", offset, "t", "t");

        public override DateTimeOffset GetUtcNow() => now;
    }
}
