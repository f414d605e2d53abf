using System.CommandLine;

namespace ProcRunner.Endurance;

/// <summary><c>hostile</c>: hostile inputs, a million unless told otherwise.</summary>
internal static class HostileCommand
{
    public static Command Create()
    {
        Option<int> inputs = new("--inputs") { Description = "how many", DefaultValueFactory = _ => 1_000_000 };
        Option<int> seed = new("--seed") { Description = "chooses them", DefaultValueFactory = _ => 1 };
        Command command = new("hostile", "hostile inputs into decide, line mode, the loader and import")
        {
            inputs,
            seed,
        };
        command.SetAction(parsed => Run(parsed.GetValue(inputs), parsed.GetValue(seed)));
        return command;
    }

    private static int Run(int inputs, int seed)
    {
        DirectoryInfo folder = Directory.CreateTempSubdirectory("procrunner-hostile-");
        try
        {
            using ReleasedJob job = new(folder.FullName);
            int files = inputs / 50;
            Console.WriteLine(new HostileInputs(job, seed).Run(inputs - (files * 6), files * 4, files, files));
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
