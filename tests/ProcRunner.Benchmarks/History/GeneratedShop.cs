using System.Globalization;
using System.Security.Cryptography;
using ProcRunner.Procedures;
using ProcRunner.Quantities;
using ProcRunner.Runs;
using ProcRunner.Shop;
using ProcRunner.Store.Local;
using ProcRunner.Trail;
using ProcRunner.Tui.Jobs;

namespace ProcRunner.Benchmarks.History;

/// <summary>
/// A store of many released jobs, all of them made up: eight positions with a recession, a guide bore and every other one a seat
/// insert, a remark with the cutter, a note, a release. Whole trails and a shop book that knows them; the signatures are none.
/// </summary>
internal sealed class GeneratedShop(DemoRun demo, string folder, int seed)
{
    /// <summary>Entries of a job: opened, remark, 8 recessions, 8 guide bores, 4 parts, note, release.</summary>
    public const int EntriesEach = 24;

    private const int BookBatch = 500;
    private static readonly string[] People = ["vale", "finch", "rook", "heron", "wren"];
    private static readonly string[] Words = ["upper", "lower", "mill", "quarry", "harbour", "stone", "east", "west"];
    private static readonly DateTimeOffset Start = new(2011, 1, 3, 7, 0, 0, TimeSpan.Zero);
    private readonly Random _random = new(seed);
    private readonly Plan _plan = demo.Plan;

    /// <summary>Makes the store; bytes of all trails.</summary>
    public long Make(int jobs)
    {
        StoreReader? reader = null;
        StoreOpening founded = StoreFolder.Found(
            folder,
            "Generated shop (invented)",
            "benchmark",
            TimeProvider.System,
            RandomNumberGenerator.Fill,
            "bench one",
            JobProjection.Over(() => reader!)
        );
        using LocalStore store = ((StoreOpening.Opened)founded).Store;
        reader = store.Reader;
        foreach (ReadOnlyMemory<byte> text in demo.Texts)
        {
            File.WriteAllBytes(Path.Combine(folder, "texts", Digest.Of(text.Span).ToString()), text.ToArray());
        }

        long bytes = 0;
        List<ShopEvent> told = [];
        for (int number = 0; number < jobs; number++)
        {
            (string id, string stamp, Digest last, byte[] trail) = Job(number, store.Shop.Mark);
            File.WriteAllBytes(Path.Combine(folder, "jobs", id + ".trail"), trail);
            bytes += trail.Length;
            told.Add(new ShopEvent.JobOpened(id, stamp, [.. demo.Texts.Select(t => Digest.Of(t.Span))]));
            told.Add(new ShopEvent.JobClosedOut(id, EntriesEach, last));
            if (told.Count >= BookBatch || number == jobs - 1)
            {
                store.AppendShop("vale", [.. told]);
                told.Clear();
            }
        }

        return bytes;
    }

    private (string Id, string Stamp, Digest Last, byte[] Trail) Job(int number, BookMark mark)
    {
        string id = JobId.New(_random.NextBytes);
        string stamp = Stamp(number);
        DateTimeOffset at = Start.AddMinutes(75L * number);
        using MemoryStream trail = new();
        Digest last = Digest.Zero;
        long sequence = 0;
        JobOpening opening = new(stamp, [.. demo.Texts.Select(t => Digest.Of(t.Span))]);
        foreach (RunEvent happened in Events(number, stamp))
        {
            sequence++;
            TrailEntry entry = new()
            {
                Of = id,
                Sequence = sequence,
                Previous = last,
                At = at.AddMinutes(7 * sequence),
                Offset = TimeSpan.Zero,
                Operator = People[number % People.Length],
                Bench = "bench one",
                Book = mark,
                Anchor =
                    sequence == 1 ? Anchor.Opened
                    : sequence == EntriesEach ? Anchor.ClosedOut
                    : Anchor.None,
                Opening = sequence == 1 ? opening : null,
                Events = [RunEventFormat.Write(_plan, happened)],
            };
            byte[] line = TrailLine.Encode(entry);
            trail.Write(line);
            last = TrailLine.DigestOf(line);
        }

        return (id, stamp, last, trail.ToArray());
    }

    private IEnumerable<RunEvent> Events(int number, string stamp)
    {
        Digest[] texts = [.. demo.Texts.Select(t => Digest.Of(t.Span))];
        yield return new RunEvent.JobOpened(
            new JobHeader
            {
                Stamp = stamp,
                ProcedureDigest = texts[0].ToString(),
                HeadDigest = texts[1].ToString(),
                Customer = $"{Words[number % 8]} {Words[number / 8 % 8]} no. {Number(number / 64 % 200)} (invented)",
            }
        );
        int remark = StepOf(s => s.Work is StepWork.Do && !s.OfHead);
        yield return new RunEvent.StepDone(
            new At(remark, 0),
            $"pilot 8.5, cutter K{Number(number % 7)} edge {Number(number % 3)}"
        );
        int fit = StepOf(s => s.Work is StepWork.Fit && !s.OfHead);
        int recession = Taker("recession");
        int bore = Taker("guide bore");
        for (int position = 0; position < 8; position++)
        {
            yield return Reading(recession, position, "recession", 0.0520m, 0.0580m, 0.0640m, "D1");
            yield return Reading(
                bore,
                position,
                "guide bore",
                0.3433m,
                0.3438m,
                0.3443m,
                number % 2 == 0 ? "B1" : "B2"
            );
            if (position % 2 == 0)
            {
                string lot = $"L{Number(number / 50)}";
                yield return new RunEvent.PartFitted(
                    new At(fit, position),
                    "seat insert",
                    $"SI-{Number(number % 40)}",
                    lot
                );
            }
        }

        yield return new RunEvent.Noted(
            null,
            $"{Words[number % 8]} bench, look again at {Number(number % 8)}, box {Number(number)}"
        );
        Mark mark = new("moss", "T. Moss", Start.AddMinutes(75L * number), "none");
        int sign = StepOf(s => s.Work is StepWork.Sign { Meaning: SignMeanings.Released });
        yield return new RunEvent.JobReleased(new At(sign, At.Head), new string('0', 64), mark, null);
    }

    private RunEvent.ReadingTaken Reading(
        int step,
        int position,
        string name,
        decimal low,
        decimal aim,
        decimal high,
        string gauge
    )
    {
        decimal value = decimal.Round(
            aim + ((high - aim) * (decimal)(_random.NextDouble() + _random.NextDouble() - 1) * 1.02m),
            4
        );
        Quantity In(decimal amount) => new(amount, Units.Inch);
        Verdict verdict = value < low || value > high ? Verdict.Out : Verdict.In;
        return new(
            new At(step, position),
            new TakenReading
            {
                Characteristic = name,
                Typed = value.ToString(CultureInfo.InvariantCulture),
                Places = [new("", In(value))],
                Value = In(value),
                Gauge = gauge,
                Judgement = new(verdict, In(low), In(aim), In(high), "maker", ""),
                Worked = [],
            }
        );
    }

    // A letter, a dash and figures as they are stamped; no two alike.
    private static string Stamp(int number) =>
        string.Create(CultureInfo.InvariantCulture, $"{(char)('A' + (number % 5))}{10_000 + (number / 5)}");

    private int Taker(string name) =>
        _plan.Takers(_plan.CharacteristicIndex(name)).First(step => !_plan.IsAsFound(step));

    private int StepOf(Func<Step, bool> which) => _plan.Steps.ToList().FindIndex(step => which(step));

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);
}
