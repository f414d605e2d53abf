using System.CommandLine;
using System.Diagnostics;
using System.Globalization;

namespace ProcRunner.Benchmarks.Screen;

/// <summary><c>screen</c>: the full screen on a real terminal in a job of 2,000 entries, beside vim and htop in the same run.</summary>
internal static class ScreenCommand
{
    private const int Entries = 2000;
    private const string Head =
        "| program | first picture ms | echo ms, median | echo ms, p95 | bytes a key, median | most | idle % of a core | MiB |";

    public static Command Create()
    {
        Argument<string> program = new("program") { Description = "the native program: dotnet publish -r RID" };
        Command command = new("screen", "the full screen, beside vim and htop") { program };
        command.SetAction(parsed => Run(Path.GetFullPath(parsed.GetValue(program)!)));
        return command;
    }

    private static int Run(string program)
    {
        DirectoryInfo folder = Directory.CreateTempSubdirectory("procrunner-screen-");
        try
        {
            string store = Path.Combine(folder.FullName, "shop");
            string text = Path.Combine(folder.FullName, "text");
            Fill(program, store);
            File.WriteAllLines(
                text,
                Enumerable.Range(0, Entries).Select(i => i.ToString(CultureInfo.InvariantCulture))
            );

            // A digit is typed into the entry line and rubbed out again.
            ScreenFigures ours = ScreenFigures.Of(
                "procrunner",
                "\r",
                i => i % 2 == 0 ? "1" : "\u007f",
                program,
                "run",
                "DEMO",
                "--store",
                store
            );
            ScreenFigures vim = ScreenFigures.Of("vim -u NONE", "i", _ => "1", "vim", "-u", "NONE", text);
            ScreenFigures htop = ScreenFigures.Of("htop", "", i => i % 2 == 0 ? "\u001b[B" : "\u001b[A", "htop");
            Console.WriteLine(Head);
            Console.WriteLine("| --- | --- | --- | --- | --- | --- | --- | --- |");
            Array.ForEach([ours, vim, htop], Console.WriteLine);
            return Judge(ours, htop);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static int Judge(ScreenFigures ours, ScreenFigures htop)
    {
        (string Goal, bool IsMet)[] goals =
        [
            ("first picture under 100 ms", ours.FirstPaint < 100),
            ("first picture before htop's", ours.FirstPaint < htop.FirstPaint),
            ("key to echo 16 ms at p95", ours.EchoP95 <= 16),
            ("under 300 bytes a key", ours.MostBytes < 300),
            ("under 1 % of a core while idle", ours.IdlePercent < 1),
            ("under 60 MiB", ours.MemoryMiB < 60),
        ];
        Array.ForEach(goals, goal => Console.WriteLine(goal.Goal + (goal.IsMet ? ": met" : ": NOT MET")));
        return Array.TrueForAll(goals, goal => goal.IsMet) ? 0 : 1;
    }

    // The demo job with notes until its trail has 2,000 entries.
    private static void Fill(string program, string store)
    {
        ProcessStartInfo start = new(program, ["run", "DEMO", "--plain", "--store", store])
        {
            UseShellExecute = false,
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
        };
        using Process run = Process.Start(start)!;
        Task<string> said = run.StandardOutput.ReadToEndAsync();
        for (int i = 1; i < Entries; i++)
        {
            run.StandardInput.WriteLine(
                string.Create(CultureInfo.InvariantCulture, $"note look again before assembly, {i}")
            );
        }

        run.StandardInput.Close();
        run.WaitForExit();
        int entries = Directory
            .GetFiles(Path.Combine(store, "jobs"), "*.trail")
            .Sum(path => File.ReadLines(path).Count());
        if (run.ExitCode != 0 || entries != Entries)
        {
            throw new InvalidOperationException(
                string.Create(CultureInfo.InvariantCulture, $"{entries} entries\n{said.Result}")
            );
        }
    }
}
