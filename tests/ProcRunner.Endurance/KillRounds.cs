using System.Diagnostics;
using System.Globalization;
using ProcRunner.Store.Local;
using ProcRunner.Trail;

namespace ProcRunner.Endurance;

/// <summary>
/// Kills the program again and again while it works, and looks each time whether everything it acknowledged is on disk,
/// whether the store holds, and whether the next start goes on at the same step.
/// </summary>
internal sealed class KillRounds(string program, string folder, int seed, Action<string>? progress = null)
{
    private readonly Random _random = new(seed);
    private readonly KillTally _tally = new();
    private StraightRun _straight = null!;
    private string _store = "";
    private int _stores;
    private DemoTrail _onDisk = new([], [], null);

    /// <summary>Runs the rounds.</summary>
    /// <exception cref="InvalidDataException">Something doesn't hold; the message says what, and in which round.</exception>
    public KillTally Run(int rounds)
    {
        _straight = StraightRun.Make(program, Path.Combine(folder, "undisturbed"));
        NextStore();
        while (_tally.Rounds < rounds)
        {
            _tally.Rounds++;
            KillMoment moment = KillMoment.Choose(_random, isNew: _onDisk.Entries.Count == 0);
            try
            {
                Round(moment);
            }
            catch (Exception e) when (e is InvalidDataException or TimeoutException)
            {
                throw new InvalidDataException(
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"Round {_tally.Rounds} of seed {seed}, {moment}, store {_store}: {e.Message}"
                    ),
                    e
                );
            }

            if (_tally.Rounds % 10 == 0)
            {
                progress?.Invoke(string.Create(CultureInfo.InvariantCulture, $"{_tally.Rounds} of {rounds}"));
            }
        }

        return _tally;
    }

    private void NextStore()
    {
        _store = Path.Combine(folder, string.Create(CultureInfo.InvariantCulture, $"store-{++_stores}"));
        _onDisk = new([], [], null);
    }

    private void Round(KillMoment moment)
    {
        using LineProgram run = new(program, _store);
        if (moment.Answered is { } count)
        {
            WaitForPrompt(run);
            Answered(run, count);
        }

        if (moment.Streams)
        {
            SendAllBut(run, moment.Answered is { } sent ? sent + 1 : 0);
        }

        Spin(moment.Delay);
        IReadOnlyList<string> lines = run.Kill();
        bool released = lines.Any(line => line.StartsWith("  RELEASED", StringComparison.Ordinal));
        Examine(lines, run.Errors);
        if (released || _onDisk.Entries.Count == _straight.Trail.Entries.Count)
        {
            Check(_onDisk.Entries.Count == _straight.Trail.Entries.Count, "released, but the trail isn't complete");
            NextStore();
            _tally.Released++;
        }
    }

    /// <summary>Waits for the prompt of the step after the last entry on disk; then all that a kill left behind is mended.</summary>
    private void WaitForPrompt(LineProgram run)
    {
        DemoEntry next = EntryAfter(_onDisk.Entries.Count);
        if (run.WaitFor(0, line => line.StartsWith(next.PromptStart, StringComparison.Ordinal)) is null)
        {
            throw new InvalidDataException($"the run doesn't go on at {next.Place}: {run.Errors}");
        }

        (StoreReader? reader, _) = StoreReader.Open(_store);
        StoreFinding? broken = StoreCheck.All(reader!).FirstOrDefault(finding => finding.IsBroken);
        Check(broken is null, $"after the start: {broken?.Text}");
    }

    // The last of them isn't waited for: the kill may fall into it.
    private void Answered(LineProgram run, int count)
    {
        int first = Math.Max(_onDisk.Entries.Count, 1) - 1;
        int last = Math.Min(first + count, _straight.Entries.Count - 1);
        for (int i = first; i <= last; i++)
        {
            int from = run.Count;
            run.Send(_straight.Entries[i].Place, _straight.Entries[i].Text);
            if (i < last)
            {
                Check(
                    run.WaitFor(from, line => line == _straight.Answers[i]) is not null,
                    $"no answer to {_straight.Entries[i]}"
                );
            }
        }
    }

    private void SendAllBut(LineProgram run, int sent)
    {
        int first = Math.Max(_onDisk.Entries.Count, 1) - 1 + sent;
        run.Send([.. _straight.Entries.Skip(first).SelectMany(entry => new[] { entry.Place, entry.Text })]);
    }

    private void Examine(IReadOnlyList<string> lines, string errors)
    {
        int before = _onDisk.Entries.Count;
        int acknowledged = AcknowledgedBy(lines);
        DemoTrail now = DemoTrail.Read(_store);
        string counts = string.Create(
            CultureInfo.InvariantCulture,
            $"{before} entries at the start, {acknowledged} acknowledged, {now.Entries.Count} on disk"
        );
        Check(now.Entries.Count >= acknowledged, $"ACKNOWLEDGED AND LOST: {counts}");
        Check(now.Entries.Count <= acknowledged + 1, $"more than one entry ahead of the output: {counts}");
        Check(now.Bytes.AsSpan().StartsWith(_onDisk.Bytes), "what was on disk before isn't there as it was");
        Check(
            now.Entries.SequenceEqual(_straight.Trail.Entries.Take(now.Entries.Count)),
            "the trail isn't that of an undisturbed run"
        );
        Check(!errors.Contains("nhandled", StringComparison.Ordinal), errors);
        bool isTorn = now.Verdict is TrailVerdict.Broken { Fault: TrailFault.TornTail };
        Check(now.Verdict is null or TrailVerdict.Holds || isTorn, now.Verdict?.InWords() ?? "");

        _tally.Acknowledged += acknowledged - Math.Min(before, acknowledged);
        _tally.BeforeFirstPrompt += HasPrompt(lines, before) ? 0 : 1;
        _tally.AheadOfOutput += now.Entries.Count > acknowledged ? 1 : 0;
        _tally.TornTails += isTorn ? 1 : 0;
        _tally.BookBehind += errors.Contains("was behind", StringComparison.Ordinal) ? 1 : 0;
        _onDisk = now;
    }

    /// <summary>How far the trail must have got, from what the program said.</summary>
    private int AcknowledgedBy(IReadOnlyList<string> lines)
    {
        int reached = _onDisk.Entries.Count;
        if (!HasPrompt(lines, reached))
        {
            return reached;
        }

        CheckLastShown(lines, reached);
        reached = Math.Max(reached, 1);
        bool atPrompt = false;
        foreach (string line in lines)
        {
            Check(!line.StartsWith("  REFUSED", StringComparison.Ordinal), line);
            if (reached > _straight.Entries.Count)
            {
                break;
            }

            if (!atPrompt)
            {
                atPrompt = line.StartsWith(EntryAfter(reached).PromptStart, StringComparison.Ordinal);
            }
            else if (line == _straight.Answers[reached - 1])
            {
                (reached, atPrompt) = (reached + 1, false);
            }
        }

        return reached;
    }

    // Nobody should enter again what is on disk: the start says what the last entry was.
    private void CheckLastShown(IReadOnlyList<string> lines, int reached)
    {
        if (reached > 1)
        {
            string number = reached.ToString(CultureInfo.InvariantCulture);
            string shown = $"Recorded last, entry {number}, ";
            int at = lines.ToList().FindIndex(line => line.StartsWith(shown, StringComparison.Ordinal));
            Check(
                at >= 0 && lines[at + 1] == _straight.Answers[reached - 2],
                $"entry {number} isn't shown at the start"
            );
        }
    }

    private bool HasPrompt(IReadOnlyList<string> lines, int reached) =>
        lines.Any(line => line.StartsWith(EntryAfter(reached).PromptStart, StringComparison.Ordinal));

    private DemoEntry EntryAfter(int onDisk) => _straight.Entries[Math.Max(onDisk, 1) - 1];

    private static void Spin(TimeSpan delay)
    {
        long start = Stopwatch.GetTimestamp();
        if (delay > TimeSpan.FromMilliseconds(20))
        {
            Thread.Sleep(delay - TimeSpan.FromMilliseconds(20));
        }

        while (Stopwatch.GetElapsedTime(start) < delay)
        {
            Thread.SpinWait(20);
        }
    }

    private static void Check(bool holds, string otherwise)
    {
        if (!holds)
        {
            throw new InvalidDataException(otherwise);
        }
    }
}
