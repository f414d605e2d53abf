using System.Collections.Immutable;
using ProcRunner.Quantities;
using ProcRunner.Records;
using ProcRunner.Runs;
using ProcRunner.Store.Local;
using ProcRunner.Trail;

namespace ProcRunner.Tui.Jobs;

/// <summary>What of a job's entries is searched for and made history of, gathered entry by entry.</summary>
internal sealed class JobGathering
{
    private readonly SortedSet<string> _people = new(StringComparer.Ordinal);
    private readonly SortedSet<string> _gauges = new(StringComparer.Ordinal);
    private readonly SortedSet<string> _cutters = new(StringComparer.Ordinal);
    private readonly Dictionary<int, string> _cutterAt = [];
    private readonly List<string> _notes = [];
    private readonly List<(At At, long Sequence, IndexedReading Reading)> _readings = [];

    /// <summary>Everyone who entered or signed something.</summary>
    public ImmutableArray<string> People => [.. _people];

    /// <summary>The gauges used.</summary>
    public ImmutableArray<string> Gauges => [.. _gauges];

    /// <summary>The cutters named.</summary>
    public ImmutableArray<string> Cutters => [.. _cutters];

    /// <summary>Notes, remarks and reasons.</summary>
    public IEnumerable<string> Notes => _notes;

    /// <summary>The readings, those that were corrected left out.</summary>
    public IEnumerable<IndexedReading> Readings => _readings.Select(r => r.Reading);

    /// <summary>Takes what one entry says; the run is as it was before it.</summary>
    public void Take(RunState state, TrailEntry entry, IReadOnlyList<RunEvent> events)
    {
        Add(_people, entry.Operator);
        foreach (RunEvent happened in events)
        {
            switch (happened)
            {
                case RunEvent.EntryCorrected corrected:
                    TakeBack(corrected.At, entry.Sequence);
                    break;
                case RunEvent.ReadingTaken taken:
                    Take(state.Plan, entry, taken);
                    break;
                case RunEvent.StepDone { Said: { Length: > 0 } said } done:
                    Remark(done.At.Position, said);
                    break;
                case RunEvent.Noted noted:
                    Remark(noted.At?.Position ?? At.Head, noted.Text);
                    break;
                default:
                    Mark(happened);
                    break;
            }
        }
    }

    private void Mark(RunEvent happened)
    {
        if (JobMark.Of(0, happened) is not { } mark)
        {
            return;
        }

        Add(_people, mark.Mark.Person);
        Add(_people, mark.Mark.Name);
        Add(_people, mark.Beside?.Person ?? "");
        Add(_people, mark.Beside?.Name ?? "");
        if (mark.Reason.Length > 0)
        {
            _notes.Add(mark.Reason);
        }
    }

    private void Remark(int position, string text)
    {
        _notes.Add(text);
        if (CutterName.In(text) is { } cutter)
        {
            _cutters.Add(cutter);
            _cutterAt[position] = cutter;
            _cutterAt[Latest] = cutter;
        }
    }

    // The cutter named last, wherever that was.
    private const int Latest = -2;

    private void Take(Plan plan, TrailEntry entry, RunEvent.ReadingTaken taken)
    {
        TakenReading reading = taken.Reading;
        Add(_gauges, reading.Gauge);
        Keep(plan, entry, taken.At, reading.Characteristic, reading.Value, reading.Judgement, reading.Gauge);
        foreach (WorkedValue worked in reading.Worked)
        {
            Keep(plan, entry, taken.At, worked.Name, worked.Value, worked.Judgement, reading.Gauge);
        }
    }

    private void Keep(
        Plan plan,
        TrailEntry entry,
        At at,
        string name,
        Quantity value,
        Judgement judgement,
        string gauge
    ) =>
        _readings.Add(
            (
                at,
                entry.Sequence,
                new(
                    name,
                    entry.At,
                    entry.Operator,
                    gauge,
                    _cutterAt.GetValueOrDefault(at.Position) ?? _cutterAt.GetValueOrDefault(Latest, ""),
                    plan.PositionName(at.Position),
                    plan.PositionOf(at.Position)?.Kind ?? "",
                    value.ToString(),
                    judgement.Low?.ToString() ?? "",
                    judgement.Aim?.ToString() ?? "",
                    judgement.High?.ToString() ?? "",
                    VerdictWord.Of(judgement.Verdict),
                    plan.IsAsFound(at.Step)
                )
            )
        );

    private void TakeBack(At at, long before)
    {
        long last = _readings.FindLast(r => r.At == at && r.Sequence < before).Sequence;
        _readings.RemoveAll(r => r.At == at && r.Sequence == last);
    }

    private static void Add(SortedSet<string> to, string text)
    {
        if (text.Length > 0)
        {
            to.Add(text);
        }
    }
}
