using System.CommandLine;

namespace ProcRunner.Endurance;

/// <summary><c>kills</c>: rounds of kill -9.</summary>
internal static class KillsCommand
{
    public static Command Create()
    {
        Option<int> rounds = new("--rounds") { Description = "how many", DefaultValueFactory = _ => 300 };
        Option<int> seed = new("--seed") { Description = "chooses the moments", DefaultValueFactory = _ => 1 };
        Option<string> program = new("--program")
        {
            Description = "the program's file",
            DefaultValueFactory = _ => BuiltProgram.Path,
        };
        Command command = new("kills", "kill the program at random moments; is everything acknowledged on disk?")
        {
            rounds,
            seed,
            program,
        };
        command.SetAction(parsed => Run(parsed.GetValue(program)!, parsed.GetValue(seed), parsed.GetValue(rounds)));
        return command;
    }

    private static int Run(string program, int seed, int rounds)
    {
        DirectoryInfo folder = Directory.CreateTempSubdirectory("procrunner-kills-");
        try
        {
            KillTally tally = new KillRounds(program, folder.FullName, seed, Console.Error.WriteLine).Run(rounds);
            Console.WriteLine(tally);
            folder.Delete(recursive: true);
            return 0;
        }
        catch (InvalidDataException e)
        {
            Console.WriteLine($"FAILED. {e.Message}");
            Console.WriteLine($"The stores are kept in {folder.FullName}");
            return 1;
        }
    }
}
