using System.CommandLine;
using System.Diagnostics;
using System.Globalization;
using ProcRunner.Store.Local;
using ProcRunner.Trail;

namespace ProcRunner.Endurance;

/// <summary><c>opening</c>: how long a store with many heads in work takes to open, to list and to check.</summary>
internal static class OpeningCommand
{
    private const int Times = 5;

    public static Command Create()
    {
        Option<int> jobs = new("--jobs") { Description = "heads in work", DefaultValueFactory = _ => 1000 };
        Option<int> entries = new("--entries") { Description = "entries of each", DefaultValueFactory = _ => 300 };
        Command command = new("opening", "how long does a store with many heads in work take to open?")
        {
            jobs,
            entries,
        };
        command.SetAction(parsed => Run(parsed.GetValue(jobs), parsed.GetValue(entries)));
        return command;
    }

    private static int Run(int jobs, int entries)
    {
        DirectoryInfo folder = Directory.CreateTempSubdirectory("procrunner-opening-");
        try
        {
            string demo = Path.Combine(folder.FullName, "demo");
            StraightRun.Make(BuiltProgram.Path, demo);
            string store = Path.Combine(folder.FullName, "many");
            Fill(demo, store, jobs, entries);
            long bytes = Directory.GetFiles(Path.Combine(store, "jobs")).Sum(file => new FileInfo(file).Length);
            Console.WriteLine(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{jobs} open jobs, {entries} entries each, {bytes / 1e6:0} MB"
                )
            );
            List<double> opened = [];
            TimeSpan before = Process.GetCurrentProcess().TotalProcessorTime;
            for (int i = 0; i < Times; i++)
            {
                long start = Stopwatch.GetTimestamp();
                Open(store).Dispose();
                opened.Add(Stopwatch.GetElapsedTime(start).TotalMilliseconds);
            }

            TimeSpan used = Process.GetCurrentProcess().TotalProcessorTime - before;
            Say("opened for writing, median of 5", opened.Order().ElementAt(Times / 2));
            Say("of which processor time, on average", used.TotalMilliseconds / Times);
            Say("the program: jobs, the index made", Timed(store, "jobs"));
            Say("the program: jobs, the index there", Timed(store, "jobs"));
            Say("the program: verify", Timed(store, "verify"));
            return 0;
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static void Say(string what, double milliseconds) =>
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{what}: {milliseconds:0} ms"));

    private static double Timed(string store, string verb)
    {
        long start = Stopwatch.GetTimestamp();
        using Process run = Process.Start(
            new ProcessStartInfo(BuiltProgram.Path, [verb, "--store", store])
            {
                UseShellExecute = false,
                RedirectStandardOutput = true,
                RedirectStandardError = true,
            }
        )!;
        Task<string> errors = run.StandardError.ReadToEndAsync();
        run.StandardOutput.ReadToEnd();
        run.WaitForExit();
        // The signatures in these copies are another job's, so that a check says no; here only the time counts.
        return run.ExitCode < 2
            ? Stopwatch.GetElapsedTime(start).TotalMilliseconds
            : throw new InvalidDataException(errors.GetAwaiter().GetResult());
    }

    private static LocalStore Open(string store) =>
        StoreFolder.Open(store, "a measurement", TimeProvider.System, Random.Shared.NextBytes)
            is StoreOpening.Opened opened
            ? opened.Store
            : throw new InvalidDataException("The store doesn't open.");

    // Each job is opened as any other is. Its further entries, the demo's, go straight into its file: none belongs into the book.
    private static void Fill(string demo, string folder, int jobs, int entries)
    {
        StoreReader reader = StoreReader.Open(demo).Reader!;
        TrailEntry[] like = [.. reader.ReadTrail(reader.JobIds().Single()).Entries.Select(line => line.Entry)];
        ReadOnlyMemory<byte>[] texts =
        [
            .. like[0].Opening!.Texts.Select(text => (ReadOnlyMemory<byte>)reader.ReadText(text)!),
        ];
        List<AppendResult.Written> begun = [];
        StoreOpening founding = StoreFolder.Found(
            folder,
            "A shop with much to do",
            "a measurement",
            TimeProvider.System,
            Random.Shared.NextBytes
        );
        using (LocalStore store = ((StoreOpening.Opened)founding).Store)
        {
            for (int i = 0; i < jobs; i++)
            {
                AppendResult result = store.OpenJob(store.ProposeStamp(), texts, new("", like[0].Events));
                begun.Add((AppendResult.Written)result);
            }
        }

        foreach (AppendResult.Written first in begun)
        {
            using FileStream file = new(
                Path.Combine(folder, "jobs", first.Entry.Of + ".trail"),
                FileMode.Append,
                FileAccess.Write
            );
            Digest previous = first.Digest;
            for (int n = 2; n <= entries; n++)
            {
                byte[] line = TrailLine.Encode(
                    like[n - 1] with
                    {
                        Of = first.Entry.Of,
                        Previous = previous,
                        Book = first.Entry.Book,
                        Anchor = Anchor.None,
                    }
                );
                file.Write(line);
                previous = TrailLine.DigestOf(line);
            }
        }
    }
}
