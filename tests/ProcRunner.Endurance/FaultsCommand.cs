using System.CommandLine;
using System.Diagnostics;
using System.Globalization;
using ProcRunner.Store.Local;

namespace ProcRunner.Endurance;

/// <summary>
/// <c>faults</c>: the built program, whose Nth write, flush or rename and all after it fail, for every N until none is left to
/// fail. strace makes them fail.
/// </summary>
internal static class FaultsCommand
{
    private static readonly (string Call, string Error)[] Faults =
    [
        ("pwrite64", "ENOSPC"),
        ("fdatasync", "EIO"),
        ("fsync", "EIO"),
        ("rename", "EIO"),
    ];

    // Entries with the line that acknowledges each; handing over goes into the shop book too.
    private static readonly (string Entry, string Answer)[] Session =
    [
        ("as the job says", "  as the job says"),
        ("none given", "  none given"),
        ("hand over to moss", "  handed over to moss"),
        (".009", "  head lost before 0.009 in: recorded"),
    ];

    public static Command Create()
    {
        Command command = new("faults", "let the Nth write, flush or rename of the program fail, for every N");
        command.SetAction(_ => Run());
        return command;
    }

    private static int Run()
    {
        DirectoryInfo folder = Directory.CreateTempSubdirectory("procrunner-faults-");
        string entries = Path.Combine(folder.FullName, "entries");
        File.WriteAllLines(entries, Session.Select(step => step.Entry));
        foreach ((string call, string error) in Faults)
        {
            for (int n = 1; ; n++)
            {
                string store = Path.Combine(
                    folder.FullName,
                    string.Create(CultureInfo.InvariantCulture, $"{call}-{n}")
                );
                string fault = string.Create(CultureInfo.InvariantCulture, $"inject={call}:error={error}:when={n}+");
                string program = $"'{BuiltProgram.Path}' run DEMO --plain --store '{store}'";
                (int status, string said) = Shell(
                    $"strace -f -o /dev/null -e trace={call} -e {fault} {program} < '{entries}'"
                );
                int acknowledged = Session.Count(step => said.Split('\n').Contains(step.Answer));
                (int next, string then) = Shell($"{program} < /dev/null");
                bool isAtIt = acknowledged == 0 || Last(then) - 1 - acknowledged is 0 or 1;
                StoreReader reader = StoreReader.Open(store).Reader!;
                if (next != 0 || !isAtIt || StoreCheck.All(reader).Any(finding => finding.IsBroken))
                {
                    Console.WriteLine(
                        $"FAILED at {fault}, {acknowledged} acknowledged. Kept in {folder.FullName}\n{said}\n{then}"
                    );
                    return 1;
                }

                if (status == 0)
                {
                    Console.WriteLine(
                        string.Create(
                            CultureInfo.InvariantCulture,
                            $"{call}: {n - 1} places to fail, nothing acknowledged lost"
                        )
                    );
                    break;
                }
            }
        }

        folder.Delete(recursive: true);
        return 0;
    }

    // The entry that a start shows as the last; an entry whose removal failed as well may be there, one at most.
    private static int Last(string said)
    {
        const string Begin = "Recorded last, entry ";
        string line = said.Split('\n').First(l => l.StartsWith(Begin, StringComparison.Ordinal));
        return int.Parse(line[Begin.Length..].Split(',')[0], CultureInfo.InvariantCulture);
    }

    private static (int Status, string Said) Shell(string command)
    {
        using Process run = Process.Start(
            new ProcessStartInfo("/bin/sh", ["-c", command + " 2>&1"])
            {
                UseShellExecute = false,
                RedirectStandardOutput = true,
            }
        )!;
        string said = run.StandardOutput.ReadToEnd();
        run.WaitForExit();
        return (run.ExitCode, said);
    }
}
