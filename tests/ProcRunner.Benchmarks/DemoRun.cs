using System.Collections.Immutable;
using System.Diagnostics;
using ProcRunner.Runs;
using ProcRunner.Store.Local;
using ProcRunner.Trail;
using ProcRunner.Yaml;

namespace ProcRunner.Benchmarks;

/// <summary>The demo job, run by the built program: its plan, its entries, and their events.</summary>
internal sealed record DemoRun(
    Plan Plan,
    ImmutableArray<TrailEntry> Entries,
    ImmutableArray<IReadOnlyList<RunEvent>> Events
)
{
    /// <summary>The procedure's and the head spec's text.</summary>
    public ImmutableArray<ReadOnlyMemory<byte>> Texts { get; init; } = [];

    /// <summary>Runs the demo job to its release.</summary>
    public static DemoRun Make(string store)
    {
        string program = Path.Combine(
            AppContext.BaseDirectory,
            OperatingSystem.IsWindows() ? "procrunner.exe" : "procrunner"
        );
        using (
            Process run = Process.Start(
                new ProcessStartInfo(program, ["run", "DEMO", "--plain", "--store", store])
                {
                    UseShellExecute = false,
                    RedirectStandardInput = true,
                    RedirectStandardOutput = true,
                }
            )!
        )
        {
            Task<string> output = run.StandardOutput.ReadToEndAsync();
            string entries = Path.Combine(AppContext.BaseDirectory, "procedures", "demo", "pump-four.entries");
            run.StandardInput.Write(File.ReadAllText(entries));
            run.StandardInput.Close();
            run.WaitForExit();
            if (run.ExitCode != 0)
            {
                throw new InvalidOperationException(output.GetAwaiter().GetResult());
            }
        }

        StoreReader reader = StoreReader.Open(store).Reader!;
        ImmutableArray<TrailEntry> trail = [.. reader.ReadTrail(reader.JobIds().Single()).Entries.Select(e => e.Entry)];
        byte[][] texts = [.. trail[0].Opening!.Texts.Select(digest => reader.ReadText(digest)!)];
        var plan = new Plan(
            ProcedureFile.Load("procedure", texts[0]).Value!,
            HeadSpecFile.Load("head spec", texts[1]).Value!
        );
        return new(plan, trail, [.. trail.Select(e => EventsOf(plan, e))])
        {
            Texts = [.. texts.Select(text => new ReadOnlyMemory<byte>(text))],
        };
    }

    private static IReadOnlyList<RunEvent> EventsOf(Plan plan, TrailEntry entry) =>
        [.. entry.Events.Select(map => RunEventFormat.Read(plan, map)!)];
}
