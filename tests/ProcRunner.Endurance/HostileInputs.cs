using System.Diagnostics;
using System.Text;
using ProcRunner.Runs;
using ProcRunner.Runs.Prompts;
using ProcRunner.Store.Local;
using ProcRunner.Text;
using ProcRunner.Trail;
using ProcRunner.Tui.Jobs;
using ProcRunner.Tui.Lines;
using ProcRunner.Tui.Shell;
using ProcRunner.Yaml;

namespace ProcRunner.Endurance;

/// <summary>
/// Hostile inputs into decide, line mode, the loader and import. Nothing may throw, take longer than
/// <see cref="Longest"/>, put a control character on a terminal, or leave a file outside the store.
/// </summary>
internal sealed class HostileInputs(ReleasedJob job, int seed)
{
    /// <summary>The longest that one input may take, on a machine that is busy with other things.</summary>
    public static readonly TimeSpan Longest = TimeSpan.FromSeconds(10);

    private const int LinesInARow = 40;
    private readonly Random _random = new(seed);
    private readonly HostileText _text = new(new Random(seed + 1));
    private (TimeSpan Took, string What) _slowest;

    /// <summary>Sends them.</summary>
    /// <exception cref="InvalidDataException">One did harm.</exception>
    public HostileTally Run(int decided, int lines, int loaded, int imported)
    {
        (int, int) commands = (decided, Decide(decided));
        int typed = Lines(lines);
        (int, int) files = (loaded, Load(loaded));
        (int, int) jobs = (imported, Import(imported));
        string[] there = [.. Directory.EnumerateFileSystemEntries(job.Folder).Select(p => Path.GetFileName(p)!)];
        return there is ["shop"]
            ? new(commands, typed, files, jobs, _slowest)
            : throw new InvalidDataException($"Outside the store: {string.Join(", ", there)}");
    }

    private int Decide(int count)
    {
        int taken = 0;
        for (int i = 0; i < count; )
        {
            RunState state = job.After(_random.Next(1, job.Trail.Count));
            for (int j = 0; j < 2_000 && i < count; j++, i++)
            {
                RunCommand command = Command(state);
                Moment moment = new(DateTimeOffset.UnixEpoch, "vale", Digest.Zero.ToString());
                Decision decision = Timed(() => RunDecider.Decide(state, job.Store.Shop, command, moment), "decide");
                if (decision is Decision.Accepted accepted)
                {
                    taken++;
                    Json.Map[] written = [.. accepted.Events.Select(e => RunEventFormat.Write(state.Plan, e))];
                    Require(
                        Array.TrueForAll(written, map => RunEventFormat.Read(state.Plan, map) is not null),
                        $"{command} was written so that it can't be read"
                    );
                    Require(
                        !CanonicalJson.Write(Json.ListOf([.. written])).AsSpan().Contains((byte)0x1b),
                        "an escape byte in a trail"
                    );
                }
            }
        }

        return taken;
    }

    private int Lines(int count)
    {
        int typed = 0;
        string[] words = [.. LineWords.All.Select(word => word.Form), .. File.ReadAllLines(BuiltProgram.Entries)];
        while (typed < count)
        {
            int rows = Math.Min(LinesInARow, count - typed);
            string input = string.Join('\n', Enumerable.Range(0, rows).Select(_ => Line(words)));
            JobRun run = InMemory(_random.Next(1, job.Trail.Count));
            using StringReader reader = new(input);
            using StringWriter output = new();
            Timed(() => new LineRun(run, new LineInput(reader, _random.Next(2) == 0, output), output).Run(), "lines");
            Require(IsHarmless(output.ToString()), "a control character on the terminal");
            typed += rows;
        }

        return typed;
    }

    private int Load(int count)
    {
        byte[][] samples =
        [
            .. Directory
                .EnumerateFiles(Machine.ProceduresFolder, "*.yaml", SearchOption.AllDirectories)
                .Order(StringComparer.Ordinal)
                .Select(File.ReadAllBytes),
        ];
        int good = 0;
        for (int i = 0; i < count; i++)
        {
            byte[] sample = samples[_random.Next(samples.Length)];
            int from = _random.Next(3) == 0 ? 0 : _random.Next(sample.Length);
            int length = Math.Min(sample.Length - from, _random.Next(200, 6_000));
            byte[] spoiled = Spoiled(sample.AsSpan(from, length).ToArray());
            bool head = _random.Next(2) == 0;
            IReadOnlyList<Problems.Problem> problems = Timed(
                () => head ? HeadSpecFile.Load("x", spoiled).Problems : ProcedureFile.Load("x", spoiled).Problems,
                "load"
            );
            good += problems.Count == 0 ? 1 : 0;
            Require(problems.All(p => IsHarmless(SafeText.Show(p.ToString()))), "a control character in a problem");
        }

        return good;
    }

    private int Import(int count)
    {
        int held = 0;
        HostileJobs jobs = new(job, _random, _text);
        for (int i = 0; i < count; i++)
        {
            byte[] file = i % 4 == 0 ? Spoiled(job.File[..]) : jobs.Next();
            bool holds = Timed(() => Imports(file), "import");
            held += holds ? 1 : 0;
        }

        return held;
    }

    private bool Imports(byte[] file)
    {
        (ExportedJob? read, JobCheck? check, string fault) = JobFile.Check(file);
        Require(IsHarmless(SafeText.Show(fault)), "a control character in a fault");
        if (read is null || check is null)
        {
            return false;
        }

        Require(check.Findings.All(f => IsHarmless(SafeText.Show(f.Text))), "a control character in a finding");
        (JobAccount? account, fault) = JobAccount.Read(read, read.JobId);
        string[] lines = account is null ? [fault] : [.. JobAccountLines.Of(account)];
        Require(lines.All(line => IsHarmless(SafeText.Show(line))), "a control character in a job that is shown");
        Recompute.Of(read, read.JobId);
        if (check.Holds)
        {
            JobFile.Import(job.Store.Reader, file, read);
        }

        return check.Holds;
    }

    private RunCommand Command(RunState state)
    {
        At at = new(_random.Next(-1, state.Plan.Steps.Count + 1), _random.Next(-2, state.Plan.Positions.Count + 1));
        at = _random.Next(2) == 0 ? Prompter.Next(state) ?? at : at;
        Mark mark = new(_text.NextOr(["moss", "vale"]), _text.Next(), DateTimeOffset.UnixEpoch, _text.Next());
        string text = _text.Next();
        bool isStep = at.Step >= 0 && at.Step < state.Plan.Steps.Count;
        string[] ways = isStep ? [.. state.Plan.Steps[at.Step].WaysOn.Select(w => w.Text)] : [];
        return _random.Next(16) switch
        {
            0 => new RunCommand.Correct(at, text, _text.Next()),
            1 => new RunCommand.LiftToMeasure(at),
            2 => new RunCommand.EndCut(at),
            3 => new RunCommand.TakeWay(at, _text.NextOr(ways), text, _random.Next(2) == 0 ? mark : null),
            4 => new RunCommand.Sign(at, mark, _random.Next(2) == 0 ? mark : null),
            5 => new RunCommand.LeaveOut(at, text),
            6 => new RunCommand.Note(_random.Next(2) == 0 ? at : null, text),
            7 => new RunCommand.Hold(text),
            8 => new RunCommand.HandOver(_text.NextOr(["moss", "finch"])),
            9 => new RunCommand.ChooseGauge(_text.NextOr(["depth"]), _text.NextOr(["D1"])),
            10 => new RunCommand.ChooseLimit(_text.NextOr(["recession"]), at.Position, null, null, null, text),
            11 => new RunCommand.Report(
                _text.NextOr([.. state.Plan.Procedure.Changes.Select(c => c.Name)]),
                at.Position
            ),
            _ => new RunCommand.Enter(at, text),
        };
    }

    private string Line(string[] words) =>
        _random.Next(4) switch
        {
            0 => words[_random.Next(words.Length)],
            1 => words[_random.Next(words.Length)] + " " + _text.Next(),
            2 => words[_random.Next(words.Length)].Split(' ')[0] + " " + _text.Next(),
            _ => _text.Next(),
        };

    private JobRun InMemory(int entries)
    {
        RunState state = job.After(entries);
        return new JobRun(
            () => job.Store.Shop,
            (_, draft) => new AppendResult.Written(Composed(state, draft), Digest.Zero),
            TimeProvider.System,
            state,
            Digest.Zero,
            "vale",
            [],
            new PinGate(() => job.Store.Shop, (_, _) => new AppendResult.Refused("not here"), TimeProvider.System)
        );
    }

    private TrailEntry Composed(RunState state, EntryDraft draft)
    {
        TrailEntry entry = job.Trail[0].Entry with
        {
            Sequence = state.Sequence + 1,
            Operator = draft.Operator,
            Opening = null,
            Anchor = draft.Anchor,
            Events = draft.Events,
        };
        TrailLine.Encode(entry);
        return entry;
    }

    private byte[] Spoiled(byte[] bytes)
    {
        List<byte> spoiled = [.. bytes];
        for (int i = _random.Next(1, 5); i > 0 && spoiled.Count > 0; i--)
        {
            int at = _random.Next(spoiled.Count);
            switch (_random.Next(5))
            {
                case 0:
                    spoiled[at] = (byte)_random.Next(256);
                    break;
                case 1:
                    spoiled.RemoveRange(at, Math.Min(_random.Next(1, 60), spoiled.Count - at));
                    break;
                case 2:
                    spoiled.InsertRange(at, Encoding.UTF8.GetBytes(_text.Next()));
                    break;
                case 3:
                    spoiled.InsertRange(at, spoiled.GetRange(at, Math.Min(_random.Next(1, 300), spoiled.Count - at)));
                    break;
                default:
                    spoiled.RemoveRange(at, spoiled.Count - at);
                    break;
            }
        }

        return [.. spoiled];
    }

    private T Timed<T>(Func<T> act, string what)
    {
        long start = Stopwatch.GetTimestamp();
        T came = act();
        TimeSpan took = Stopwatch.GetElapsedTime(start);
        _slowest = took > _slowest.Took ? (took, what) : _slowest;
        Require(took < Longest, $"{what} took {took}");
        return came;
    }

    private static bool IsHarmless(string text) =>
        text.All(c => c is '\n' or '\r' || !char.IsControl(c)) && SafeText.IsWellFormed(text);

    private static void Require(bool truth, string what)
    {
        if (!truth)
        {
            throw new InvalidDataException(what);
        }
    }
}
