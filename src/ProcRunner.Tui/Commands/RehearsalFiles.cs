using ProcRunner.Lessons;
using ProcRunner.Practice.Bindings;
using ProcRunner.Problems;
using ProcRunner.Procedures;
using ProcRunner.Procedures.Checks;
using ProcRunner.Runs;
using ProcRunner.Tui.Shell;
using ProcRunner.Yaml;

namespace ProcRunner.Tui.Commands;

/// <summary>Finds and joins the files of a rehearsal: procedure, head spec, practice setup, gauges.</summary>
internal static class RehearsalFiles
{
    /// <summary>The setup on its procedure and head; null when something is wrong, which was said then.</summary>
    /// <param name="procedureName">A name that comes with the program, or a file.</param>
    /// <param name="headName">The same.</param>
    /// <param name="practiceName">The same; null: the setup for the two.</param>
    /// <param name="gaugesName">A file of gauges in place of the setup's; null: none.</param>
    public static Binding? Bind(string procedureName, string headName, string? practiceName, string? gaugesName)
    {
        List<Problem> problems = [];
        T? Taken<T>(Loaded<T> loaded)
            where T : class
        {
            problems.AddRange(loaded.Problems);
            return loaded.Value;
        }

        if ((Unknown("procedure", procedureName, "") ?? Unknown("head spec", headName, "heads")) is { } unknown)
        {
            Say.Usage(unknown, "Give one of these names, or the path of a file.");
            return null;
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
                "Write one under procedures/practice/ (docs/practice-format.md), or name one that was made for another head: "
                    + "--practice two-valve-iron-pump-four"
            );
            return null;
        }

        // Named by the caller, it serves another head as far as its names fit: what doesn't is said when it is bound.
        setup =
            practiceName is not null && setup is not null && head is not null ? setup with { Head = head.Name } : setup;

        if (gaugesName is not null && setup is not null && Taken(PracticeFile.OpenGauges(gaugesName)) is { } gauges)
        {
            setup = gauges.In(setup);
        }

        Binding? binding = problems.Count > 0 ? null : Joined(procedure!, head!, headFile, setup!, problems);
        foreach (Problem problem in problems)
        {
            Say.Aside(problem.ToString());
        }

        return binding;
    }

    private static Binding? Joined(
        Procedure procedure,
        HeadSpec head,
        string headFile,
        PracticeSetup setup,
        List<Problem> problems
    )
    {
        problems.AddRange(PlanCheck.Join(procedure, head, headFile));
        if (problems.Count > 0)
        {
            return null;
        }

        (Binding? binding, IReadOnlyList<Problem> unbound) = Binding.Of(new Plan(procedure, head), setup);
        problems.AddRange(unbound);
        return binding;
    }

    // A path, or the name of a file that comes with the program.
    private static string Find(string name, string folder)
    {
        string shipped = Path.Combine(Machine.ProceduresFolder, folder, name + ".yaml");
        return !File.Exists(name) && File.Exists(shipped) ? shipped : name;
    }

    private static string? Unknown(string what, string name, string folder)
    {
        if (Path.Exists(Find(name, folder)) || name.Contains(Path.DirectorySeparatorChar, StringComparison.Ordinal))
        {
            return null;
        }

        string shipped = Path.Combine(Machine.ProceduresFolder, folder);
        string[] known = Directory.Exists(shipped)
            ?
            [
                .. Directory
                    .EnumerateFiles(shipped, "*.yaml")
                    .Select(f => Path.GetFileNameWithoutExtension(f)!)
                    .Order(StringComparer.Ordinal),
            ]
            : [];
        return $"There is no {what} '{name}'. With the program: {(known.Length > 0 ? string.Join(", ", known) : "none")}.";
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
