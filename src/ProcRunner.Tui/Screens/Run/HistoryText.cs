using System.Globalization;
using ProcRunner.Runs;
using ProcRunner.Trail;
using ProcRunner.Tui.Lines;

namespace ProcRunner.Tui.Screens.Run;

/// <summary>What was entered, position by position, the last first.</summary>
internal static class HistoryText
{
    /// <summary>The lines of one position, or of the whole job, each that was written after the clock was set back marked.</summary>
    public static IReadOnlyList<string> WithClock(RunWork work, int? position) =>
        work.Job.Store is { } store
            ? Of(
                work,
                position,
                [
                    .. ClockSetBack
                        .In(store.ReadTrail(work.State.JobId).Entries.Select(line => line.Entry))
                        .Select(set => set.Entry),
                ]
            )
            : Of(work, position);

    /// <summary>The lines of one position, or of the whole job, from what the run knows; it reads no trail.</summary>
    public static IReadOnlyList<string> Of(RunWork work, int? position) => Of(work, position, []);

    private static string[] Of(RunWork work, int? position, HashSet<long> setBack)
    {
        RunState state = work.State;
        string[] lines =
        [
            .. work
                .Outlook.All.Where(a => position is null || a.Position == position)
                .Select(a => (at: a, record: state.Find(a)))
                .Where(a => a.record is { Sequence: > 0 })
                .SelectMany(a => Lines(work, a.at, a.record!))
                .Concat(
                    state
                        .Corrections.Where(c => position is null || c.At.Position == position)
                        .Select(c => (c.Sequence, $"{Entry(c.Sequence)}{CorrectionWords.Of(state, c)}"))
                )
                .Concat(
                    state
                        .Notes.Where(n => position is null || n.Note.At?.Position == position)
                        .Select(n => (n.Sequence, $"{Entry(n.Sequence)}note: {n.Note.Text}"))
                )
                .OrderByDescending(l => l.Item1)
                .Select(l => setBack.Contains(l.Item1) ? $"{l.Item2} (clock set back)" : l.Item2),
        ];
        return lines.Length == 0 ? ["Nothing was entered here yet."] : lines;
    }

    private static IEnumerable<(long Sequence, string Text)> Lines(RunWork work, At at, StepRecord record)
    {
        string name = work.Plan.NameOf(at);
        string entry = Entry(record.Sequence);
        if (record.Readings.Count == 0)
        {
            string said = record.Said.Length > 0 ? record.Said : "done";
            string left =
                record.Standing == StepStanding.LeftOut ? " (left out)"
                : record.Standing == StepStanding.Waiting ? " (to be done over)"
                : "";
            yield return (record.Sequence, $"{entry}{name}: {said}{left}");
            yield break;
        }

        // Of several readings at a step only the last one's entry is known here.
        for (int i = record.Readings.Count - 1; i >= 0; i--)
        {
            bool last = i == record.Readings.Count - 1;
            string conceded = last && record.Conceded ? ", conceded" : "";
            string text = $"{(last ? entry : "before that  ")}{name}: {Words(record.Readings[i])}{conceded}";
            yield return (record.Sequence, text);
        }
    }

    private static string Entry(long sequence) => string.Create(CultureInfo.InvariantCulture, $"entry {sequence, 5}  ");

    private static string Words(TakenReading reading)
    {
        string verdict =
            !reading.Good ? ", out of spec"
            : reading.Judgement.Verdict == Verdict.In ? ", in limits"
            : "";
        return reading.Places.Count > 1
            ? $"{reading.Value} ({PlacesText.Of(reading)}){verdict}"
            : $"{reading.Value}{verdict}";
    }
}
