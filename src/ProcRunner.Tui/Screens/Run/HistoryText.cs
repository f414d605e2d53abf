using System.Globalization;
using ProcRunner.Runs;

namespace ProcRunner.Tui.Screens.Run;

/// <summary>What was entered, position by position, the last first.</summary>
internal static class HistoryText
{
    /// <summary>The lines of one position, or of the whole job.</summary>
    public static IReadOnlyList<string> Of(RunWork work, int? position)
    {
        RunState state = work.State;
        (long Sequence, string Text)[] lines =
        [
            .. work
                .Outlook.All.Where(a => position is null || a.Position == position)
                .Select(a => (at: a, record: state.Find(a)))
                .Where(a => a.record is { Sequence: > 0 })
                .SelectMany(a => Lines(work, a.at, a.record!).Select(text => (a.record!.Sequence, text)))
                .Concat(
                    state
                        .Notes.Where(n => position is null || n.Note.At?.Position == position)
                        .Select(n => (n.Sequence, $"note: {n.Note.Text}"))
                )
                .OrderByDescending(l => l.Item1),
        ];
        return lines.Length == 0
            ? ["Nothing was entered here yet."]
            : [.. lines.Select(l => string.Create(CultureInfo.InvariantCulture, $"entry {l.Sequence, 4}  {l.Text}"))];
    }

    private static IEnumerable<string> Lines(RunWork work, At at, StepRecord record)
    {
        string name = work.Plan.NameOf(at);
        if (record.Readings.Count == 0)
        {
            string said = record.Said.Length > 0 ? record.Said : "done";
            yield return $"{name}: {said}{(record.Standing == StepStanding.LeftOut ? " (left out)" : "")}";
            yield break;
        }

        foreach (TakenReading reading in record.Readings)
        {
            string verdict =
                !reading.Good ? ", out of spec"
                : reading.Judgement.Verdict == Verdict.In ? ", in limits"
                : "";
            string places =
                reading.Places.Count > 1
                    ? $" ({string.Join(" ", reading.Places.Select(p => p.Value.Value.ToString(CultureInfo.InvariantCulture)))})"
                    : "";
            yield return $"{name}: {reading.Value}{places}{verdict}{(record.Conceded ? ", conceded" : "")}";
        }
    }
}
