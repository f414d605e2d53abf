using System.CommandLine;
using System.Diagnostics;
using System.Globalization;
using System.Runtime.InteropServices;
using ProcRunner.Trail;

namespace ProcRunner.Endurance;

/// <summary><c>native</c>: the program compiled to native code takes the demo job to release, with the same trail.</summary>
internal static class NativeCommand
{
    private const int Starts = 9;

    // What reads a store, the search index with it. The native program makes the index, the built one uses it.
    private static readonly string[][] Readers =
    [
        ["jobs"],
        ["find", "73-1-22"],
        ["show", "DEMO"],
        ["verify"],
    ];

    public static Command Create()
    {
        Option<string?> program = new("--program") { Description = "a native program that is there already" };
        Command command = new("native", "publish the program and compare its demo run with that of the built one")
        {
            program,
        };
        command.SetAction(parsed =>
        {
            DirectoryInfo folder = Directory.CreateTempSubdirectory("procrunner-native-");
            try
            {
                string? native = parsed.GetValue(program) ?? Publish(Path.Combine(folder.FullName, "program"));
                return native is null ? 1 : Compare(native, folder.FullName);
            }
            finally
            {
                folder.Delete(recursive: true);
            }
        });
        return command;
    }

    private static string? Publish(string output)
    {
        using Process publish = Process.Start(
            new ProcessStartInfo(
                "dotnet",
                [
                    "publish",
                    Path.Combine(Root(), "src", "ProcRunner.Tui"),
                    "-c",
                    "Release",
                    "-r",
                    RuntimeInformation.RuntimeIdentifier,
                    "-o",
                    output,
                ]
            )
        )!;
        publish.WaitForExit();
        string program = Path.Combine(output, Path.GetFileName(BuiltProgram.Path));
        return publish.ExitCode == 0 && File.Exists(program) ? program : null;
    }

    private static int Compare(string native, string folder)
    {
        (string Name, string Path)[] programs = [("built", BuiltProgram.Path), ("native", native)];
        DemoTrail[] trails = [.. programs.Select(p => Run(p.Path, Path.Combine(folder, p.Name)))];
        foreach (((string name, _), DemoTrail trail) in programs.Zip(trails))
        {
            Console.WriteLine(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{name, -8}{trail.Entries.Count} entries; {trail.Verdict?.InWords() ?? "no trail"}"
                )
            );
        }

        bool same =
            trails.All(trail => trail.Verdict is TrailVerdict.Holds)
            && trails[0].Entries.SequenceEqual(trails[1].Entries);
        Console.WriteLine(same ? "the trails say the same" : "THE TRAILS DIFFER");
        foreach (string[] verb in Readers)
        {
            string[] answers =
            [
                .. programs
                    .Reverse()
                    .Select(p => AnswerOf(p.Path, [.. verb, "--store", Path.Combine(folder, "native")])),
            ];
            bool isSame = answers[0] == answers[1] && answers[0].Length > 0;
            Console.WriteLine($"{string.Join(' ', verb)}: {(isSame ? "the same answer" : "THE ANSWERS DIFFER")}");
            same &= isSame;
        }

        Console.WriteLine(
            string.Create(CultureInfo.InvariantCulture, $"native file {new FileInfo(native).Length / 1e6:0.0} MB")
        );
        double[] medians = StartUps(programs, folder);
        Console.WriteLine(
            string.Create(
                CultureInfo.InvariantCulture,
                $"from start to first prompt and end, medians of {Starts} taken by turns: built {medians[0]:0} ms, native {medians[1]:0} ms"
            )
        );
        return same ? 0 : 1;
    }

    private static DemoTrail Run(string program, string store)
    {
        using LineProgram run = new(program, store);
        run.Send(File.ReadAllLines(BuiltProgram.Entries));
        (int status, IReadOnlyList<string> lines, string errors) = run.End();
        Console.WriteLine(
            string.Create(CultureInfo.InvariantCulture, $"{program}: status {status}, {lines[^1].Trim()} {errors}")
        );
        return DemoTrail.Read(store);
    }

    private static string AnswerOf(string program, string[] arguments)
    {
        using Process process = Process.Start(
            new ProcessStartInfo(program, arguments) { UseShellExecute = false, RedirectStandardOutput = true }
        )!;
        string answer = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return process.ExitCode == 0 ? answer : "";
    }

    // On a job that waits at its first step, so that both read a store, check a trail and ask.
    private static double[] StartUps((string Name, string Path)[] programs, string folder)
    {
        string store = Path.Combine(folder, "waiting");
        List<double>[] taken = [.. programs.Select(_ => new List<double>())];
        for (int i = 0; i <= Starts; i++)
        {
            for (int p = 0; p < programs.Length; p++)
            {
                long start = Stopwatch.GetTimestamp();
                using LineProgram run = new(programs[p].Path, store);
                run.End();
                double elapsed = Stopwatch.GetElapsedTime(start).TotalMilliseconds;
                if (i > 0)
                {
                    taken[p].Add(elapsed);
                }
            }
        }

        return [.. taken.Select(times => times.Order().ElementAt(times.Count / 2))];
    }

    private static string Root()
    {
        DirectoryInfo? folder = new(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "ProcRunner.sln")))
        {
            folder = folder.Parent;
        }

        return folder?.FullName ?? throw new DirectoryNotFoundException("This must be run in the repository.");
    }
}
