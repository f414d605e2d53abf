using ProcRunner.Runs;
using ProcRunner.Store.Local;
using ProcRunner.Trail;
using ProcRunner.Tui.Demo;
using ProcRunner.Tui.Jobs;
using ProcRunner.Tui.Lines;

namespace ProcRunner.Endurance;

/// <summary>The demo job, taken to its release in this process, with what hostile inputs are made from.</summary>
internal sealed class ReleasedJob : IDisposable
{
    public ReleasedJob(string folder)
    {
        Folder = folder;
        (LocalStore? store, string fault) = DemoShop.Open(Path.Combine(folder, "shop"), "hostile inputs");
        Store = store ?? throw new InvalidDataException(fault);
        (JobRun? run, fault) = DemoShop.OpenJob(Store, DemoShop.Stamp);
        JobRun job = run ?? throw new InvalidDataException(fault);
        using StringReader lines = new(System.IO.File.ReadAllText(BuiltProgram.Entries));
        using StringWriter output = new();
        if (new LineRun(job, new LineInput(lines, true, output), output).Run() != 0)
        {
            throw new InvalidDataException("The demo job doesn't end released.");
        }

        Plan = job.State.Plan;
        Trail = Store.Reader.ReadTrail(job.State.JobId).Entries;
        File =
            JobFile.Of(Store.Reader, job.State.JobId).File ?? throw new InvalidDataException("It can't be exported.");
        Exported = ExportFile.Read(File).Job!;
    }

    public string Folder { get; }

    public LocalStore Store { get; }

    public Plan Plan { get; }

    public IReadOnlyList<(TrailEntry Entry, Digest Digest)> Trail { get; }

    /// <summary>The job as a file.</summary>
    public byte[] File { get; }

    public ExportedJob Exported { get; }

    /// <summary>The run after so many entries.</summary>
    public RunState After(int entries)
    {
        RunState state = new(Plan, Trail[0].Entry.Of);
        foreach ((TrailEntry entry, _) in Trail.Take(entries))
        {
            state.Apply(entry.Sequence, [.. entry.Events.Select(map => RunEventFormat.Read(Plan, map)!)]);
        }

        return state;
    }

    public void Dispose() => Store.Dispose();
}
