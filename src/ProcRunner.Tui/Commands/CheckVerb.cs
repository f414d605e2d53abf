using System.CommandLine;
using System.Text;
using ProcRunner.Lessons;
using ProcRunner.Practice.Bindings;
using ProcRunner.Problems;
using ProcRunner.Procedures;
using ProcRunner.Procedures.Checks;
using ProcRunner.Runs;
using ProcRunner.Tui.Shell;
using ProcRunner.Yaml;

namespace ProcRunner.Tui.Commands;

/// <summary><c>check [FILE...]</c>: every problem of procedures and head specs, alone and together.</summary>
internal static class CheckVerb
{
    /// <summary>The verb.</summary>
    public static Command Create()
    {
        Argument<string[]> files = new("files")
        {
            Description = "procedures and head specs; none: those that come with the program",
            Arity = ArgumentArity.ZeroOrMore,
        };
        Command verb = new("check", "load procedures and head specs and report every problem") { files };
        verb.SetAction(parsed => Run(parsed.GetValue(files) is { Length: > 0 } given ? given : Shipped()));
        return verb;
    }

    private static string[] Shipped() =>
        Directory.Exists(Machine.ProceduresFolder)
            ?
            [
                .. Directory
                    .EnumerateFiles(Machine.ProceduresFolder, "*.yaml", SearchOption.AllDirectories)
                    .Order(StringComparer.Ordinal),
            ]
            : [];

    private static int Run(string[] files)
    {
        List<Problem> problems = [];
        List<Procedure> procedures = [];
        List<(string File, HeadSpec Head)> heads = [];
        List<PracticeSetup> setups = [];
        foreach (string file in files)
        {
            if (Begins(file, "practice:"))
            {
                Loaded<PracticeSetup> setup = PracticeFile.OpenSetup(file);
                problems.AddRange(setup.Problems);
                setups.AddRange(setup.Value is { } read ? [read] : []);
            }
            else if (Begins(file, "lesson:"))
            {
                problems.AddRange(PracticeFile.OpenLesson(file).Problems);
            }
            else if (Begins(file, "head:"))
            {
                Loaded<HeadSpec> head = HeadSpecFile.Open(file);
                problems.AddRange(head.Problems);
                heads.AddRange(head.Value is { } spec ? [(file, spec)] : []);
            }
            else
            {
                Loaded<Procedure> procedure = ProcedureFile.Open(file);
                problems.AddRange(procedure.Problems);
                procedures.AddRange(procedure.Value is { } steps ? [steps] : []);
            }
        }

        foreach (Procedure procedure in procedures)
        {
            foreach ((string file, HeadSpec head) in heads)
            {
                Problem[] joined = [.. PlanCheck.Join(procedure, head, file)];
                problems.AddRange(joined);
                foreach (
                    PracticeSetup setup in setups.Where(s =>
                        joined.Length == 0 && s.Procedure == procedure.Name && s.Head == head.Name
                    )
                )
                {
                    problems.AddRange(Binding.Of(new Plan(procedure, head), setup).Problems);
                }
            }
        }

        foreach (Problem problem in problems)
        {
            Say.Line(problem.ToString());
        }

        string count = problems.Count.ToString(System.Globalization.CultureInfo.InvariantCulture);
        Say.Line(
            problems.Count == 0
                ? $"{files.Length.ToString(System.Globalization.CultureInfo.InvariantCulture)} files, no problems"
                : $"{count} problems"
        );
        return problems.Count == 0 ? Status.Done : Status.No;
    }

    // A file says what it is in its first key; a file that can't be read is reported as a procedure would be.
    private static bool Begins(string file, string key)
    {
        try
        {
            return File.ReadLines(file).Take(200).FirstOrDefault(line => line.Length > 0 && char.IsAsciiLetter(line[0]))
                    is { } first
                && first.StartsWith(key, StringComparison.Ordinal);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or DecoderFallbackException)
        {
            return false;
        }
    }
}
