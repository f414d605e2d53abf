using System.CommandLine;
using System.Globalization;
using System.Text;
using ProcRunner.Lessons;
using ProcRunner.Practice.Bindings;
using ProcRunner.Practice.Rehearsals;
using ProcRunner.Problems;
using ProcRunner.Procedures;
using ProcRunner.Procedures.Checks;
using ProcRunner.Runs;
using ProcRunner.Store.Local;
using ProcRunner.Tui.Shell;
using ProcRunner.Yaml;

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
        if (heads is < 1 or > MostHeads || cores < 1 || parsed.GetValue(Seed) < 0 || row < 0 || row > heads)
        {
            return Say.Usage(
                $"From 1 to {MostHeads.ToString(CultureInfo.InvariantCulture)} heads, on 1 core or more, from a seed of 0 or more; compared are as many heads or fewer.",
                ""
            );
        }

        string? output = parsed.GetValue(Output);
        if (output is not null && !output.EndsWith(".html", StringComparison.OrdinalIgnoreCase))
        {
            return Say.Usage(
                $"{output} doesn't say which form it is to have.",
                "A page ends in .html; --json prints JSON."
            );
        }

        Binding? binding = Bind(
            parsed.GetValue(ProcedureArgument)!,
            parsed.GetValue(HeadArgument)!,
            parsed.GetValue(Practice),
            parsed.GetValue(Gauges)
        );
        return binding is null
            ? Status.Usage
            : Run(binding, (ulong)parsed.GetValue(Seed), (heads, row), cores, output, json);
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
        if (output is not null && Written(output, RehearsalPage.Of(result)) is { } fault)
        {
            return Say.Usage(fault, "");
        }

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

    private static Binding? Bind(string procedureName, string headName, string? practiceName, string? gaugesName)
    {
        List<Problem> problems = [];
        T? Taken<T>(Loaded<T> loaded)
            where T : class
        {
            problems.AddRange(loaded.Problems);
            return loaded.Value;
        }

        Procedure? procedure = Taken(ProcedureFile.Open(Find(procedureName, "")));
        string headFile = Find(headName, "heads");
        HeadSpec? head = Taken(HeadSpecFile.Open(headFile));
        PracticeSetup? setup =
            procedure is null || head is null ? null
            : practiceName is not null ? Taken(PracticeFile.OpenSetup(Find(practiceName, "practice")))
            : SetupFor(procedure, head, Path.GetDirectoryName(Path.GetFullPath(Find(procedureName, "")))!);
        if (problems.Count == 0 && setup is null)
        {
            Say.Usage(
                $"There is no practice setup for {procedure!.Name} on {head!.Name}.",
                "Write one under procedures/practice/ (docs/practice-format.md), or name it: --practice FILE"
            );
            return null;
        }

        if (gaugesName is not null && setup is not null && Taken(PracticeFile.OpenGauges(gaugesName)) is { } gauges)
        {
            setup = gauges.In(setup);
        }

        if (problems.Count == 0)
        {
            problems.AddRange(PlanCheck.Join(procedure!, head!, headFile));
        }

        if (problems.Count == 0)
        {
            (Binding? binding, IReadOnlyList<Problem> unbound) = Binding.Of(new Plan(procedure!, head!), setup!);
            problems.AddRange(unbound);
            if (binding is not null)
            {
                return binding;
            }
        }

        foreach (Problem problem in problems)
        {
            Say.Aside(problem.ToString());
        }

        return null;
    }

    // A path, or the name of a file that comes with the program.
    private static string Find(string name, string folder)
    {
        string shipped = Path.Combine(Machine.ProceduresFolder, folder, name + ".yaml");
        return !File.Exists(name) && File.Exists(shipped) ? shipped : name;
    }

    private static PracticeSetup? SetupFor(Procedure procedure, HeadSpec head, string folder)
    {
        string[] folders = [Path.Combine(folder, "practice"), Path.Combine(Machine.ProceduresFolder, "practice")];
        return folders
            .Where(Directory.Exists)
            .SelectMany(f => Directory.EnumerateFiles(f, "*.yaml").Order(StringComparer.Ordinal))
            .Select(file => PracticeFile.OpenSetup(file).Value)
            .FirstOrDefault(s => s is not null && s.Procedure == procedure.Name && s.Head == head.Name);
    }
}
