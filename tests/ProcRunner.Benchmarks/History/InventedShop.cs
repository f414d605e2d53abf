using System.CommandLine;
using System.Globalization;
using System.Security.Cryptography;
using ProcRunner.Quantities;
using ProcRunner.Runs;
using ProcRunner.Shop;
using ProcRunner.Store.Local;
using ProcRunner.Tui.Demo;
using ProcRunner.Tui.Jobs;
using ProcRunner.Tui.Lines;

namespace ProcRunner.Benchmarks.History;

/// <summary>
/// <c>shop FOLDER</c>: a shop of some thirty heads to walk the screens with. Each is the demo's job under another stamp, through
/// the real decisions, with readings that differ a little: released over half a year, in work at every stage, on hold, back
/// again, linked. All of it is invented.
/// </summary>
internal sealed class InventedShop(string folder, DateTimeOffset now)
{
    private static readonly string[] Customers =
    [
        "Upper Field irrigation",
        "Mill Lane haulage",
        "Quarry road plant hire",
        "East harbour boats",
        "Stone barn farm",
        "Lower Field irrigation",
        "West end generators",
    ];

    // Only what is measured and not reckoned on by a later line of the demo may differ.
    private static readonly string[] Differing =
    [
        "seat runout",
        "face runout",
        "margin",
        "installed height",
        "stem height",
    ];

    private readonly Random _random = new(7);
    private readonly ShopClock _clock = new();
    private readonly List<string> _lines =
    [
        .. File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, "procedures", "demo", "pump-four.entries"))
            .Select(line => line.Trim())
            .Where(line => line.Length > 0 && line[0] != '#'),
    ];

    /// <summary>The command.</summary>
    public static Command Create()
    {
        Argument<string> folder = new("folder") { Description = "where; a folder that isn't there" };
        Command command = new("shop", "a shop of some thirty invented heads, to walk the screens with") { folder };
        command.SetAction(parsed =>
        {
            new InventedShop(Path.GetFullPath(parsed.GetValue(folder)!), TimeProvider.System.GetLocalNow()).Make();
            return 0;
        });
        return command;
    }

    /// <summary>Makes the shop.</summary>
    public void Make()
    {
        _clock.Now = now.AddDays(-200);
        using (LocalStore store = Open("bench one", isNew: true))
        {
            (_, string fault) = DemoShop.Furnish(
                store,
                DemoShop.Gauges(today: null),
                new Readout(Units.Inch, 0.0005m, true, false, false, false)
            );
            Check(fault);
        }

        int number = 3001;
        for (int i = 0; i < 18; i++)
        {
            Job(number++, daysAgo: 180 - (10 * i), upTo: "");
        }

        // Back again: one released anew, one only taken apart. Two engines with two heads: one pair done, one on the bench.
        Job(number++, daysAgo: 9, upTo: "", earlier: "3004");
        Job(number++, daysAgo: 3, upTo: "@ seat cut", earlier: "3002");
        Pair(number, daysAgo: 0, "");
        number += 2;
        Pair(number, daysAgo: 1, "@ surface");
        number += 2;
        foreach (
            string stage in new[]
            {
                "@ teardown / recession 1I",
                "@ teardown / spring load closed 1I",
                "@ guide replacement",
                "@ seat counterbore",
                "@ seat cut",
                "@ relief",
                "@ surface",
                "@ assemble",
            }
        )
        {
            Job(number++, daysAgo: _random.Next(1, 6), stage, hold: stage == "@ relief" ? "waits for valves" : "");
        }
    }

    private void Pair(int number, int daysAgo, string upTo)
    {
        string first = Text(number);
        Job(number, daysAgo, upTo.Length > 0 ? upTo : "@ assemble");
        Job(number + 1, daysAgo, upTo.Length > 0 ? "@ relief" : "@ assemble", linked: first);
        if (upTo.Length == 0)
        {
            string[] rest =
            [
                .. _lines.Skip(_lines.FindIndex(l => l.StartsWith("@ assemble", StringComparison.Ordinal))),
            ];
            Go(first, rest[..^1]);
            Go(Text(number + 1), [.. rest[..^1], "heads together", rest[^1]]);
            Go(first, ["heads together", rest[^1]]);
        }
    }

    private void Job(
        int number,
        int daysAgo,
        string upTo,
        string? earlier = null,
        string? linked = null,
        string hold = ""
    )
    {
        _clock.Now = now.AddDays(-daysAgo).AddMinutes(_random.Next(-200, 200));
        using LocalStore store = Open(number % 3 == 0 ? "bench two" : "bench one");
        (OtherJobs? others, string fault) = OtherJobs.Find(store, earlier, linked);
        Check(fault);
        (PlanTexts? texts, _) = DemoShop.ReadPlan();
        JobHeader header = new()
        {
            Stamp = Text(number),
            ProcedureDigest = texts!.ProcedureDigest.ToString(),
            HeadDigest = texts.HeadDigest.ToString(),
            Customer = $"{Customers[number % Customers.Length]} (invented)",
            Complaint = earlier is null ? "hard to start, low compression on 2" : "uses water again",
        };
        (JobRun? run, fault) = JobRun.Begin(store, _clock, texts, header, "vale", others);
        Check(fault);
        if (linked is not null && store.Shop.JobsWithStamp(linked).First() is { } other)
        {
            EngineHeads.Tell(JobRun.Resume(store, _clock, other.Id, "vale").Run!, run!);
        }

        int end = upTo.Length == 0 ? _lines.Count : _lines.FindIndex(l => l.StartsWith(upTo, StringComparison.Ordinal));
        Run(run!, [.. Differently(_lines.Take(end), number)]);
        if (hold.Length > 0)
        {
            run!.Do(new RunCommand.Hold(hold));
        }
    }

    private void Go(string stamp, IEnumerable<string> lines)
    {
        using LocalStore store = Open("bench one");
        Run(JobRun.Resume(store, _clock, store.Shop.JobsWithStamp(stamp).First().Id, "vale").Run!, lines);
    }

    private static void Run(JobRun run, IEnumerable<string> lines)
    {
        using StringReader input = new(string.Join('\n', lines));
        using StringWriter told = new(CultureInfo.InvariantCulture);
        if (new LineRun(run, new LineInput(input, isPiped: true, TextWriter.Null), told).Run() != 0)
        {
            string last = string.Join('\n', told.ToString().Split('\n').TakeLast(6));
            Console.Error.WriteLine($"{run.State.Job!.Stamp} stays where it was refused:\n{last}");
        }
    }

    private IEnumerable<string> Differently(IEnumerable<string> lines, int number)
    {
        bool differs = false;
        string lot = Text(number % 4);
        foreach (string line in lines)
        {
            if (line.StartsWith('@'))
            {
                differs = Differing.Any(name => line.Contains($"/ {name} ", StringComparison.Ordinal));
                yield return line;
            }
            else
            {
                yield return differs ? Differently(line)
                : line.Contains(", lot ", StringComparison.Ordinal) ? $"{line}-{lot}"
                : line;
            }
        }
    }

    private string Differently(string line) =>
        string.Join(
            ' ',
            line.Split(' ')
                .Select(text =>
                    decimal.TryParse(text, NumberStyles.Number, CultureInfo.InvariantCulture, out decimal value)
                        ? (value + (_random.Next(-2, 3) * Step(value))).ToString(CultureInfo.InvariantCulture)
                        : text
                )
        );

    // One step in the last digit that was typed.
    private static decimal Step(decimal value) => new(1, 0, 0, isNegative: false, (byte)value.Scale);

    private LocalStore Open(string bench, bool isNew = false)
    {
        StoreReader? reader = null;
        StoreOpening opening = isNew
            ? StoreFolder.Found(
                folder,
                DemoShop.Name,
                "benchmark",
                _clock,
                RandomNumberGenerator.Fill,
                bench,
                JobProjection.Over(() => reader!)
            )
            : StoreFolder.Open(
                folder,
                "benchmark",
                _clock,
                RandomNumberGenerator.Fill,
                bench,
                JobProjection.Over(() => reader!)
            );
        LocalStore store = ((StoreOpening.Opened)opening).Store;
        reader = store.Reader;
        return store;
    }

    private static void Check(string fault)
    {
        if (fault.Length > 0)
        {
            throw new InvalidOperationException(fault);
        }
    }

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);

    /// <summary>A clock that goes on by some seconds each time it is looked at.</summary>
    private sealed class ShopClock : TimeProvider
    {
        public DateTimeOffset Now { get; set; }

        public override DateTimeOffset GetUtcNow() => (Now = Now.AddSeconds(9)).ToUniversalTime();
    }
}
