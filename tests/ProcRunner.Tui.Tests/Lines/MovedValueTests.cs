using System.Collections.Concurrent;
using System.Globalization;
using ProcRunner.Quantities;
using ProcRunner.Runs;
using ProcRunner.Tui.Jobs;
using Xunit.Abstractions;

namespace ProcRunner.Tui.Tests.Lines;

/// <summary>
/// Every reading of the demo's file in turn, with one of its values moved just past a limit: the run must stop at that
/// gate, with exit status 1, naming that line. Whatever the file says afterwards is fed to it as it stands.
/// </summary>
public class MovedValueTests(ITestOutputHelper output)
{
    // The story's own refusals (procedures/demo/README.md): the file answers them with a way on, which is taken away here.
    private const int AnsweredInTheFile = 3;

    [Fact]
    public void The_file_as_it_stands_ends_released()
    {
        Assert.Equal(0, DemoRun.Shared.Status);
        Assert.Equal(JobStanding.Released, DemoRun.Shared.Final.Standing);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void A_value_moved_just_past_its_own_limit_stops_the_run_at_its_line(bool high)
    {
        (int Line, RunEvent.ReadingTaken Taken)[] judged =
        [
            .. DemoRun.Shared.Readings.Where(r =>
                EndOf(r.Taken.Reading.Judgement, high) is not null && (high || !IsBetweenPasses(r.Taken))
            ),
        ];
        Moved[] moved = [.. judged.Select(r => Move(r.Line, r.Taken, JustPast(r.Line, r.Taken, high)))];

        ConcurrentBag<string> faults = RunAll(moved);

        output.WriteLine(
            string.Create(CultureInfo.InvariantCulture, $"{moved.Length} readings moved past a limit of their own")
        );
        Assert.True(moved.Length > 80, "few readings have that limit");
        Assert.True(faults.IsEmpty, string.Join("\n", faults));
    }

    // Bores and stems are judged by the clearances worked out from them: how far a value may move isn't written down
    // anywhere, so it is felt for with the program's own verdict. What is tested is that the run then stops, and where.
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void A_value_moved_until_what_is_worked_out_from_it_is_out_of_limits_stops_the_run_at_its_line(bool up)
    {
        (int Line, RunEvent.ReadingTaken Taken)[] judged =
        [
            .. DemoRun.Shared.Readings.Where(r =>
                r.Taken.Reading.Worked.Any(w => w.Judgement.Verdict is not Verdict.Unjudged) || IsBySpread(r.Taken)
            ),
        ];
        ConcurrentBag<Moved> moved = [];
        Parallel.ForEach(
            judged,
            r =>
            {
                if (Felt(r.Line, r.Taken, up) is { } tokens)
                {
                    moved.Add(Move(r.Line, r.Taken, tokens));
                }
            }
        );

        ConcurrentBag<string> faults = RunAll([.. moved]);

        output.WriteLine(
            string.Create(
                CultureInfo.InvariantCulture,
                $"{judged.Length} readings are judged by worked-out values; {moved.Count} can be moved {(up ? "up" : "down")} out of them"
            )
        );
        Assert.True(moved.Count > 20, "few readings can be moved out");
        Assert.True(faults.IsEmpty, string.Join("\n", faults));
    }

    [Fact]
    public void Every_reading_that_is_judged_can_be_moved_out_one_way_at_least()
    {
        (int Line, RunEvent.ReadingTaken Taken)[] judged =
        [
            .. DemoRun.Shared.Readings.Where(r =>
                r.Taken.Reading.Judgement.Verdict != Verdict.Unjudged
                || r.Taken.Reading.Worked.Any(w => w.Judgement.Verdict != Verdict.Unjudged)
            ),
        ];
        ConcurrentBag<string> never = [];
        Parallel.ForEach(
            judged,
            r =>
            {
                Judgement own = r.Taken.Reading.Judgement;
                bool canBe =
                    own.High is not null
                    || (own.Low is not null && !IsBetweenPasses(r.Taken))
                    || Felt(r.Line, r.Taken, up: true) is not null
                    || Felt(r.Line, r.Taken, up: false) is not null;
                if (!canBe)
                {
                    never.Add(
                        string.Create(
                            CultureInfo.InvariantCulture,
                            $"line {r.Line}: {DemoBench.EntryLines[r.Line - 1]}"
                        )
                    );
                }
            }
        );

        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{judged.Length} readings are judged"));
        Assert.True(never.IsEmpty, string.Join("\n", never));
    }

    // Counterbores and seats of 2E and 3E, and the skim (procedures/demo/README.md, the table of cuts).
    [Fact]
    public void Readings_between_passes_are_the_five_of_the_story() =>
        Assert.Equal(5, DemoRun.Shared.Readings.Count(r => IsBetweenPasses(r.Taken)));

    [Fact]
    public void Every_reading_that_nothing_judges_is_one_that_the_procedure_only_records()
    {
        string[] recorded =
        [
            .. DemoRun
                .Shared.Readings.Where(r =>
                    r.Taken.Reading.Judgement.Verdict == Verdict.Unjudged
                    && r.Taken.Reading.Worked.All(w => w.Judgement.Verdict == Verdict.Unjudged)
                )
                .Select(r => DemoBench.Shared.Plan.Steps[r.Taken.At.Step].FullName)
                .Distinct(),
        ];
        int all = DemoRun.Shared.Readings.Count();

        output.WriteLine(
            string.Create(CultureInfo.InvariantCulture, $"{all} readings; only recorded: {string.Join(", ", recorded)}")
        );
        Assert.All(
            recorded,
            name =>
            {
                Procedures.Taking taking = DemoBench.Shared.Plan.Steps.Single(s => s.FullName == name).Taking!;
                Assert.Null(taking.Spread);
                Assert.All(taking.WorksOut, w => Assert.IsType<Procedures.Window.None>(w.Window));
                Assert.IsType<Procedures.Window.None>(taking.Window);
            }
        );
    }

    // Measured before the cut has reached its aim, so that it is short of it as it stands: shorter still, the cut goes on.
    private static bool IsBetweenPasses(RunEvent.ReadingTaken taken) =>
        taken.Reading.Judgement.Verdict == Verdict.Short;

    private static bool IsBySpread(RunEvent.ReadingTaken taken) =>
        taken.Reading.Judgement is { Verdict: not Verdict.Unjudged, Low: null, High: null };

    private static Quantity? EndOf(Judgement judgement, bool high) => high ? judgement.High : judgement.Low;

    private static string[] Tokens(int line) =>
        DemoBench.EntryLines[line - 1].Split(' ', StringSplitOptions.RemoveEmptyEntries);

    // Another place of each line, so that over the whole file every place has its turn.
    private static int PlaceOf(int line, RunEvent.ReadingTaken taken) => line % taken.Reading.Places.Count;

    private static string[] JustPast(int line, RunEvent.ReadingTaken taken, bool high)
    {
        Quantity limit = EndOf(taken.Reading.Judgement, high)!.Value;
        Quantity typed = taken.Reading.Places[0].Value;
        decimal step = Step(Math.Max(limit.Value.Scale, typed.Value.Scale));
        Assert.Equal(limit.Unit, typed.Unit);
        return With(line, PlaceOf(line, taken), limit.Value + (high ? step : -step));
    }

    private static string[]? Felt(int line, RunEvent.ReadingTaken taken, bool up)
    {
        int place = PlaceOf(line, taken);
        Quantity typed = taken.Reading.Places[place].Value;
        decimal step = up ? Step(typed.Value.Scale) : -Step(typed.Value.Scale);
        int within = 0;
        int beyond = 1;
        while (IsTakenAs(line, taken, With(line, place, typed.Value + (step * beyond))) is { Reading.Good: true })
        {
            (within, beyond) = (beyond, beyond * 2);
            if (beyond > 1 << 12)
            {
                return null;
            }
        }

        while (beyond - within > 1)
        {
            int middle = (within + beyond) / 2;
            bool good =
                IsTakenAs(line, taken, With(line, place, typed.Value + (step * middle))) is { Reading.Good: true };
            (within, beyond) = good ? (middle, beyond) : (within, middle);
        }

        string[] tokens = With(line, place, typed.Value + (step * beyond));
        return IsTakenAs(line, taken, tokens) is { Reading.Good: false } ? tokens : null;
    }

    // The reading that the program takes, or null when it questions or refuses the entry.
    private static RunEvent.ReadingTaken? IsTakenAs(int line, RunEvent.ReadingTaken taken, string[] tokens) =>
        DemoRun.Shared.Before(line).Do(new RunCommand.Enter(taken.At, string.Join(' ', tokens)))
            is JobAnswer.Recorded recorded
            ? recorded.Events.OfType<RunEvent.ReadingTaken>().FirstOrDefault()
            : null;

    private static string[] With(int line, int place, decimal value)
    {
        string[] tokens = Tokens(line);
        tokens[place] = value.ToString(CultureInfo.InvariantCulture);
        return tokens;
    }

    private static Moved Move(int line, RunEvent.ReadingTaken taken, string[] tokens) =>
        new(line, string.Join(' ', tokens), taken.Reading.Good);

    private static decimal Step(int scale)
    {
        decimal step = 1;
        for (int i = 0; i < scale; i++)
        {
            step /= 10;
        }

        return step;
    }

    private ConcurrentBag<string> RunAll(Moved[] moved)
    {
        ConcurrentBag<string> faults = [];
        Parallel.ForEach(
            moved,
            one =>
            {
                if (one.Fault() is { } fault)
                {
                    faults.Add(fault);
                }
            }
        );
        int answered = moved.Count(m => !m.WasGood);
        output.WriteLine(
            string.Create(
                CultureInfo.InvariantCulture,
                $"{answered} of them were refused in the file already; their answer was taken away"
            )
        );
        Assert.InRange(answered, 0, AnsweredInTheFile);
        return faults;
    }

    private sealed record Moved(int Line, string Text, bool WasGood)
    {
        // The lines before are empty, which keeps the numbers; the run begins where they had brought it.
        public string? Fault()
        {
            string[] lines = DemoBench.EntryLines;
            IEnumerable<string> rest = WasGood
                ? lines[Line..]
                : lines[Line..].SkipWhile(l => l.StartsWith('@')).Skip(1);
            string input = string.Join('\n', [.. new string[Line - 1], Text, .. rest]);
            JobRun job = DemoRun.Shared.Before(Line);
            long before = job.State.Sequence;
            (int status, string output) = DemoBench.Run(job, input);
            string named = string.Create(CultureInfo.InvariantCulture, $"Stopped at line {Line}: ");
            bool stopped =
                status == 1
                && output.Contains(named, StringComparison.Ordinal)
                && job.State.Sequence <= before + 1
                && job.State.Standing == JobStanding.Open;
            return stopped
                ? null
                : string.Create(
                    CultureInfo.InvariantCulture,
                    $"line {Line}, \"{DemoBench.EntryLines[Line - 1]}\" as \"{Text}\": status {status}, {output.TrimEnd().Split('\n')[^1]}"
                );
        }
    }
}
