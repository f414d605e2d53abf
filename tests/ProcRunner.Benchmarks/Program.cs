using System.CommandLine;
using ProcRunner.Benchmarks;
using ProcRunner.Benchmarks.History;
using ProcRunner.Benchmarks.Maths;
using ProcRunner.Benchmarks.Screen;

Option<string?> folder = new("--folder")
{
    Description = "where files are written: on the disk to be measured (otherwise the system's temporary folder)",
};
RootCommand root = new("Measures what the program promises, each against its measure in the same run.")
{
    folder,
    ScreenCommand.Create(),
    MathsCommand.Create(),
    HistoryCommand.Create(),
    InventedShop.Create(),
};
root.SetAction(parsed =>
{
    string place = Path.Combine(parsed.GetValue(folder) ?? Path.GetTempPath(), "procrunner-benchmarks");
    if (Directory.Exists(place))
    {
        Directory.Delete(place, recursive: true);
    }

    DemoRun demo = DemoRun.Make(Path.Combine(place, "demo"));
    Result[] results = [FoldBenchmark.Run(demo), AppendBenchmark.Run(demo, place), VerifyBenchmark.Run(demo, place)];
    foreach (Result result in results)
    {
        Console.WriteLine(result);
    }

    Directory.Delete(place, recursive: true);
    return Array.TrueForAll(results, result => result.IsMet) ? 0 : 1;
});
return root.Parse(args).Invoke();
