using System.CommandLine;
using System.Diagnostics;
using System.Globalization;

namespace ProcRunner.Endurance;

/// <summary><c>bytes</c>: random damage to a large trail and its shop book.</summary>
internal static class BytesCommand
{
    public static Command Create()
    {
        Option<int> trials = new("--trials") { Description = "how many", DefaultValueFactory = _ => 10_000 };
        Option<int> entries = new("--entries") { Description = "of the trail", DefaultValueFactory = _ => 5_000 };
        Option<int> seed = new("--seed") { Description = "chooses the damage", DefaultValueFactory = _ => 1 };
        Command command = new("bytes", "damage a large trail or its shop book at random; is it found?")
        {
            trials,
            entries,
            seed,
        };
        command.SetAction(parsed => Run(parsed.GetValue(trials), parsed.GetValue(entries), parsed.GetValue(seed)));
        return command;
    }

    private static int Run(int trials, int entries, int seed)
    {
        DirectoryInfo folder = Directory.CreateTempSubdirectory("procrunner-bytes-");
        long start = Stopwatch.GetTimestamp();
        try
        {
            (int found, int excepted) = new ByteTrials(folder.FullName, entries, seed).Run(trials);
            Console.WriteLine(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{trials} trials on {entries} entries in {Stopwatch.GetElapsedTime(start).TotalSeconds:0} s: {found} found, {excepted} cut off only entries at the end that trail and book don't know of each other; none unseen beyond that."
                )
            );
            return 0;
        }
        catch (InvalidDataException e)
        {
            Console.WriteLine($"FAILED. {e.Message}");
            return 1;
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }
}
