using System.Runtime.Versioning;
using ProcRunner.Store.Local;
using ProcRunner.Testing;
using ProcRunner.Trail;
using Xunit.Abstractions;

namespace ProcRunner.Endurance.Tests;

/// <summary>
/// The built program on disks that fail in earnest: full, read-only, gone, forbidden. Mounting needs root; where it can't be
/// had, a test says so in its output and shows nothing.
/// </summary>
public sealed class RealDiskTests(ITestOutputHelper output) : IDisposable
{
    private const string Prompt = "teardown / casting and stamp, head:";
    private const string Full = "REFUSED: NOT WRITTEN: The disk is full.";
    private const string ReadOnly = "REFUSED: NOT WRITTEN: The disk is read-only.";
    private const string Gone = "REFUSED: NOT WRITTEN: The folder, or a file in it, is gone.";
    private const string Forbidden = "REFUSED: NOT WRITTEN: This account isn't allowed to write";

    private readonly TempFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void A_full_disk_is_told_and_the_same_entry_taken_once_there_is_room()
    {
        using SmallDisk? disk = Mounted(SmallDisk.OfMemory(_folder["disk"]));
        if (disk is null)
        {
            return;
        }

        string store = Path.Combine(disk.Path, "store");
        using TypedRun run = new(store);
        run.WaitFor(Prompt);
        run.Enter("as the job says");
        run.WaitFor("as the job says");
        for (int round = 1; round <= 3; round++)
        {
            disk.Fill();

            // The page at the trail's end has room for some more.
            while (Noted(run, "what was seen, in so many words that a page is soon full of them")) { }
            run.Enter("none given");
            run.WaitFor(Full, 2 * round);
            Assert.Equal(2 + run.Count("noted"), Holding(store));
            disk.Free();
            Assert.True(Noted(run, "there is room again"));
            Assert.Equal(2 + run.Count("noted"), Holding(store));
        }

        run.Enter("none given");
        run.WaitFor("teardown / head lost before, head:");
        Assert.Equal(0, run.Quit());
        IsSound(store, 1 + 2 + run.Count("noted"));
    }

    [Fact]
    public void A_full_disk_is_told_on_the_screen_and_Enter_tries_again()
    {
        using SmallDisk? disk = Mounted(SmallDisk.OfMemory(_folder["disk"]));
        if (disk is null)
        {
            return;
        }

        string store = Path.Combine(disk.Path, "store");
        using (TypedRun run = new(store))
        {
            run.WaitFor(Prompt);
            run.Enter("as the job says");
            run.Enter("none given");
            run.WaitFor("teardown / head lost before, head:");

            // Until the page at the trail's end has no room for another entry.
            disk.Fill();
            while (Noted(run, "x")) { }
            disk.Free();
            Assert.Equal(0, run.Quit());
        }

        int before = Holding(store);
        using Tmux terminal = new(80, 24);
        terminal.Enter($"'{BuiltProgram.Path}' run DEMO --store '{store}'");
        terminal.WaitFor("Before the stage teardown");
        terminal.Press("Enter");
        terminal.WaitFor("head lost before");
        disk.Fill();
        terminal.Enter(".009");
        string screen = terminal.WaitFor("NOT WRITTEN: The disk is full.");
        Assert.Contains(
            "Nothing was recorded. Mend the cause, then press Enter again.",
            screen,
            StringComparison.Ordinal
        );
        Assert.Equal(before, Holding(store));

        disk.Free();
        terminal.Press("Enter");
        terminal.WaitFor("head lost before 0.009 in: recorded");
        IsSound(store, before + 1);
    }

    [Fact]
    public void A_disk_that_fails_and_becomes_read_only_is_told_and_the_next_start_is_at_the_same_step()
    {
        using SmallDisk? disk = Mounted(SmallDisk.OfFile(_folder["disk"], _folder["image"]));
        if (disk is null)
        {
            return;
        }

        string store = Path.Combine(disk.Path, "store");
        using (TypedRun run = new(store))
        {
            run.WaitFor(Prompt);
            run.Enter("as the job says");
            run.WaitFor("as the job says");
            if (!disk.Fail())
            {
                output.WriteLine("NOT SHOWN: this kernel offers no way to let a file system fail.");
                return;
            }

            for (int i = 1; i <= 2; i++)
            {
                run.Enter("none given");
                run.WaitFor(ReadOnly, i);
            }

            Assert.Equal(0, run.Quit());
        }

        // Reading goes on: the index is made in memory.
        Assert.Equal((0, true), Said(store, "jobs", "teardown / complaint"));
        Assert.Equal((0, true), Said(store, "verify", "The trail holds: 2 entries"));
        Assert.Equal((0, true), Said(store, "show DEMO", "Lower Field irrigation"));
        Assert.Equal((2, true), Said(store, "run DEMO --plain", "The disk is read-only."));
        disk.Remount();
        using TypedRun again = new(store);
        again.WaitFor("Recorded last, entry 2, teardown / casting and stamp");
        again.Enter("none given");
        again.WaitFor("teardown / head lost before, head:");
        Assert.Equal(0, again.Quit());
        IsSound(store, 3);
    }

    [Fact]
    public void A_disk_mounted_read_only_can_be_read_and_is_not_called_in_use()
    {
        using SmallDisk? disk = Mounted(SmallDisk.OfMemory(_folder["disk"]));
        if (disk is null)
        {
            return;
        }

        string store = Path.Combine(disk.Path, "store");
        Assert.Equal((0, true), Said(store, "run DEMO --plain", Prompt));
        Assert.True(disk.MakeReadOnly());

        Assert.Equal((2, true), Said(store, "run DEMO --plain", "The disk is read-only."));
        Assert.Equal((0, true), Said(store, "jobs", "DEMO"));
        Assert.Equal((0, true), Said(store, "verify", "The trail holds: 1 entry"));
    }

    [Fact]
    public void A_folder_that_vanishes_is_told_and_the_same_entry_taken_once_it_is_back()
    {
        string store = _folder["store"];
        using TypedRun run = new(store);
        run.WaitFor(Prompt);
        Directory.Move(store, _folder["elsewhere"]);
        for (int i = 1; i <= 2; i++)
        {
            run.Enter("as the job says");
            run.WaitFor(Gone, i);
        }

        Directory.Move(_folder["elsewhere"], store);
        IsTakenNow(run, store);
    }

    [Fact]
    [UnsupportedOSPlatform("windows")]
    public void A_permission_that_is_lost_is_told_and_the_same_entry_taken_once_it_is_back()
    {
        // Root may do everything, so that another account is needed to be forbidden something.
        const int Nobody = 65534;
        string above = _folder["above"];
        string store = Path.Combine(above, "store");
        Directory.CreateDirectory(above);
        string before = "";
        if (Environment.IsPrivilegedProcess)
        {
            File.SetUnixFileMode(_folder.Path, (UnixFileMode)0b111_101_101);
            File.SetUnixFileMode(above, (UnixFileMode)0b111_111_111);
            before = $"setpriv --reuid {Nobody} --regid {Nobody} --clear-groups env HOME='{above}'";
        }

        using TypedRun run = new(store, before);
        run.WaitFor(Prompt);
        File.SetUnixFileMode(store, UnixFileMode.None);
        for (int i = 1; i <= 2; i++)
        {
            run.Enter("as the job says");
            run.WaitFor(Forbidden, i);
        }

        File.SetUnixFileMode(store, (UnixFileMode)0b111_000_000);
        IsTakenNow(run, store);
    }

    // The first entry, refused until now, is taken; it is the second of the trail.
    private static void IsTakenNow(TypedRun run, string store)
    {
        run.Enter("as the job says");
        run.WaitFor("teardown / complaint, head:");
        Assert.Equal(0, run.Quit());
        IsSound(store, 2);
    }

    // The one trail has so many entries, and nothing of the store is broken.
    private static void IsSound(string store, int entries)
    {
        Assert.Equal(entries, Holding(store));
        Assert.DoesNotContain(StoreCheck.All(StoreReader.Open(store).Reader!), finding => finding.IsBroken);
    }

    // How many entries the one trail has, all of which must hold.
    private static int Holding(string store)
    {
        StoreReader reader = StoreReader.Open(store).Reader!;
        TrailReading trail = reader.ReadTrail(Assert.Single(reader.JobIds()));
        Assert.IsType<TrailVerdict.Holds>(trail.Verdict);
        return trail.Entries.Length;
    }

    // A note; true when it was written, false when the disk is full.
    private static bool Noted(TypedRun run, string text)
    {
        (int noted, int refused) = (run.Count("noted"), run.Count(Full));
        run.Enter("note " + text);
        bool isAnswered = SpinWait.SpinUntil(
            () => run.Count("noted") + run.Count(Full) > noted + refused,
            LineProgram.Patience
        );
        Assert.True(isAnswered, "nothing came of a note");
        return run.Count("noted") > noted;
    }

    private SmallDisk? Mounted(SmallDisk? disk)
    {
        if (disk is null)
        {
            output.WriteLine("NOT SHOWN: this account may not mount a file system here.");
        }

        return disk;
    }

    private static (int Status, bool Said) Said(string store, string words, string text)
    {
        (int status, string said) = Program.Run(store, words);
        return (status, said.Contains(text, StringComparison.Ordinal));
    }
}
