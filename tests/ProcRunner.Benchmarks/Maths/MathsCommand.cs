using System.CommandLine;

namespace ProcRunner.Benchmarks.Maths;

/// <summary>The command that measures formulas and the flatness of large sets of points.</summary>
internal static class MathsCommand
{
    public static Command Create()
    {
        Command command = new("maths", "Measures formulas and minimum-zone flatness.");
        command.SetAction(_ =>
        {
            bool all = true;
            foreach (Result result in FormulaBenchmark.Run().Concat(FlatnessBenchmark.Run()))
            {
                Console.WriteLine(result);
                all &= result.IsMet;
            }

            return all ? 0 : 1;
        });
        return command;
    }
}
