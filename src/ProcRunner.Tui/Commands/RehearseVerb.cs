using System.CommandLine;
using System.Globalization;
using System.Text;
using ProcRunner.Practice.Bindings;
using ProcRunner.Practice.Rehearsals;
using ProcRunner.Store.Local;
using ProcRunner.Tui.Shell;

namespace ProcRunner.Tui.Commands;

/// <summary><c>rehearse PROCEDURE HEAD</c>: many practice heads through a procedure.</summary>
internal static class RehearseVerb
{
    private const int MostHeads = 1_000_000;

    private static readonly Argument<string> ProcedureArgument = new("procedure")
    {
        Description = "a procedure: its name, or a file",
    };

    private static readonly Argument<string> HeadArgument = new("head")
    {
        Description = "a head spec: its name, or a file",
    };

    private static readonly Option<int> Heads = new("--heads")
    {
        Description = "how many practice heads",
        DefaultValueFactory = _ => 10_000,
    };

    private static readonly Option<long> Seed = new("--seed")
    {
        Description = "where chance starts from: the same seed gives the same heads",
        DefaultValueFactory = _ => 1,
    };

    private static readonly Option<string?> Gauges = new("--gauges")
    {
        Description = "a file of gauges in place of the setup's",
    };

    private static readonly Option<string?> Practice = new("--practice")
    {
        Description = "the practice setup; otherwise the one for the two",
    };

    private static readonly Option<int> Cores = new("--cores")
    {
        Description = "on how many cores; otherwise on all",
        DefaultValueFactory = _ => 0,
    };

    private static readonly Option<int?> Compare = new("--compare")
    {
        Description = "heads for each comparison of gauges and allowances; otherwise a fifth of them",
    };

    private static readonly Option<bool> Alone = new("--alone")
    {
        Description = "the heads alone: no comparison of gauges and allowances",
    };

    private static readonly Option<string?> Output = new("-o") { Description = "write a page to this file (.html)" };

    /// <summary>The verb.</summary>
    public static Command Create()
    {
        Option<bool> json = JsonOption.Create();
        Command verb = new("rehearse", "run many practice heads through a procedure: how often would it end in spec")
        {
            ProcedureArgument,
            HeadArgument,
            Heads,
            Seed,
            Gauges,
            Practice,
            Cores,
            Compare,
            Alone,
            Output,
            json,
        };
        verb.SetAction(parsed => Act(parsed, parsed.GetValue(json)));
        return verb;
    }

    private static int Act(ParseResult parsed, bool json)
    {
        int heads = parsed.GetValue(Heads);
        int cores = parsed.GetValue(Cores) == 0 ? Environment.ProcessorCount : parsed.GetValue(Cores);
        int row = parsed.GetValue(Alone) ? 0 : parsed.GetValue(Compare) ?? RehearsalResult.UsualRow(heads);
        string? output = parsed.GetValue(Output);
        if (Fault(heads, row, cores, parsed.GetValue(Seed)) is { } fault)
        {
            return Say.Usage(fault, "procrunner rehearse --help says what each of them is.");
        }

        if (output is not null && !output.EndsWith(".html", StringComparison.OrdinalIgnoreCase))
        {
            return Say.Usage(
                $"-o '{output}' doesn't say which form it is to have.",
                "A page ends in .html; --json prints JSON."
            );
        }

        // Before the heads are played, not after a minute of it.
        if (output is not null && Unwritable(output) is { } why)
        {
            return Say.Usage(why, "Name another file, or make the folder first.");
        }

        Binding? binding = RehearsalFiles.Bind(
            parsed.GetValue(ProcedureArgument)!,
            parsed.GetValue(HeadArgument)!,
            parsed.GetValue(Practice),
            parsed.GetValue(Gauges)
        );
        cores = Math.Min(cores, Environment.ProcessorCount);
        return binding is null
            ? Status.Usage
            : Run(binding, (ulong)parsed.GetValue(Seed), (heads, row), cores, output, json);
    }

    private static string? Fault(int heads, int row, int cores, long seed)
    {
        static string Of(long value) => value.ToString(CultureInfo.InvariantCulture);
        return heads is < 1 or > MostHeads
                ? $"--heads {Of(heads)} was read; from 1 to {Of(MostHeads)} practice heads are wanted."
            : cores < 1 ? $"--cores {Of(cores)} was read; 1 or more is wanted, or 0 for all there are."
            : seed < 0 ? $"--seed {Of(seed)} was read; a whole number of 0 or more is wanted."
            : row < 0 || row > heads
                ? $"--compare {Of(row)} was read; from 0 to the {Of(heads)} heads that are played is wanted."
            : null;
    }

    private static int Run(Binding binding, ulong seed, (int All, int Row) heads, int cores, string? output, bool json)
    {
        Dictionary<string, Progress> progress = new(StringComparer.Ordinal);
        long started = Machine.Time.GetTimestamp();
        RehearsalResult result;
        using (StopSignals signals = new())
        {
            try
            {
                result = RehearsalResult.Of(binding, seed, heads.All, heads.Row, cores, Report, signals.Token);
            }
            catch (OperationCanceledException)
            {
                return Say.No("Stopped. Nothing was written.");
            }
        }

        double seconds = Machine.Time.GetElapsedTime(started).TotalSeconds;
        // The answer first: a page that can't be written any more costs the page alone.
        if (json)
        {
            Say.Json(RehearsalJson.Of(result));
        }
        else
        {
            foreach (string line in RehearsalLines.Of(result))
            {
                Say.Line(line);
            }

            Say.Aside(
                $"{seconds.ToString("F1", CultureInfo.InvariantCulture)} s on {cores.ToString(CultureInfo.InvariantCulture)} cores"
            );
        }

        if (output is not null && Written(output, RehearsalPage.Of(result)) is { } fault)
        {
            return Say.Usage(fault, "The rehearsal itself went through; its answer stands above.");
        }

        return result.Tally.Unexplained == 0 && result.Tally.Stuck.Count == 0 ? Status.Done : Status.No;

        void Report(string what, int done, int of)
        {
            if (!progress.TryGetValue(what, out Progress? line))
            {
                progress[what] = line = new Progress(Machine.Time, Console.Error, what);
            }

            line.Report(done, of);
        }
    }

    // Tried with a file of no length, which is taken away again.
    private static string? Unwritable(string path)
    {
        string whole = Path.GetFullPath(path);
        if (Directory.Exists(whole))
        {
            return $"{path} is a folder; a file's name is wanted.";
        }

        string folder = Path.GetDirectoryName(whole)!;
        if (!Directory.Exists(folder))
        {
            return $"{path} can't be written. There is no folder {folder}.";
        }

        string beside = Path.Combine(folder, $".{Path.GetFileName(whole)}.try");
        try
        {
            OwnFile.Replace(beside, _ => { });
            File.Delete(beside);
            return null;
        }
        catch (Exception e) when (DiskTrouble.Is(e))
        {
            return $"{path} can't be written. {DiskTrouble.InWords(e)}";
        }
    }

    // Whole or not at all.
    private static string? Written(string path, string page)
    {
        try
        {
            OwnFile.Replace(path, file => file.Write(Encoding.UTF8.GetBytes(page)));
            Say.Aside($"Written: {path}");
            return null;
        }
        catch (Exception e) when (DiskTrouble.Is(e))
        {
            return $"{path} can't be written. {DiskTrouble.InWords(e)}";
        }
    }
}
