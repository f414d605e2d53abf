using ProcRunner.Records;
using ProcRunner.Runs;
using ProcRunner.Trail;
using ProcRunner.Tui.Drawing;
using ProcRunner.Tui.Lines;
using ProcRunner.Tui.Screens.Parts;

namespace ProcRunner.Tui.Screens.Shop;

/// <summary>
/// What happened at a position, in order: every reading, the refused ones too, every cut, part, recheck, mark and note. For
/// the head itself: its own steps, and what was about the whole job.
/// </summary>
internal static class PositionStory
{
    private const int Indent = 4;

    /// <summary>The story.</summary>
    /// <param name="state">The run.</param>
    /// <param name="entries">The trail's entries, in order.</param>
    /// <param name="position">The position, or <see cref="At.Head"/>.</param>
    /// <param name="nameOf">A person's name by id.</param>
    public static IReadOnlyList<TextLine> Of(
        RunState state,
        IEnumerable<TrailEntry> entries,
        int position,
        Func<string, string> nameOf
    )
    {
        List<TextLine> lines = [];
        TrailEntry[] all = [.. entries];
        HashSet<long> setBack = [.. ClockSetBack.In(all).Select(set => set.Entry)];
        foreach (TrailEntry entry in all)
        {
            RunEvent[] here =
            [
                .. entry
                    .Events.Select(map => RunEventFormat.Read(state.Plan, map))
                    .OfType<RunEvent>()
                    .Where(happened => IsHere(happened, position)),
            ];
            if (here.Length == 0)
            {
                continue;
            }

            string step = here.Select(EventPlace.Of).FirstOrDefault(at => at is not null) is { } at
                ? $", {state.Plan.Steps[at.Step].FullName}"
                : "";
            string clock = setBack.Contains(entry.Sequence) ? "  (clock set back)" : "";
            lines.Add(
                new($"{Ago.Clock(entry.At.ToOffset(entry.Offset))}{clock}  {nameOf(entry.Operator)}{step}", Ink.Quiet)
            );
            lines.AddRange(here.SelectMany(happened => Told(state, happened)));
        }

        return lines;
    }

    private static bool IsHere(RunEvent happened, int position) =>
        happened switch
        {
            RunEvent.WentStale stale => stale.Items.Any(item => item.Position == position),
            RunEvent.Reopened reopened => reopened.Items.Any(at => at.Position == position),
            RunEvent.ChangeReported change => change.Position == position,
            RunEvent.LimitChosen limit => limit.Position is not { } one || one == position,
            _ => (EventPlace.Of(happened)?.Position ?? At.Head) == position,
        };

    private static IEnumerable<TextLine> Told(RunState state, RunEvent happened) =>
        happened switch
        {
            RunEvent.JobOpened e => [Line($"job {e.Header.Stamp} opened")],
            RunEvent.Noted e => [Line($"note: {e.Text}")],
            RunEvent.JobHeld e => [Line($"on hold: {e.Reason}", Ink.Mind)],
            RunEvent.WayTaken e => [Line($"way on: {e.Way}{(e.Reason.Length > 0 ? $", {e.Reason}" : "")}")],
            RunEvent.WentStale or RunEvent.Reopened => [Line(LineWording.Of(state, happened), Ink.Mind)],
            RunEvent.Conceded or RunEvent.HeadScrapped => [Line(LineWording.Of(state, happened), Ink.Bad)],
            RunEvent.EntryQuestioned e => [Line($"\"{e.Typed}\" not taken: {e.Why}", Ink.Mind)],
            RunEvent.FindingNoted { Good: false } => [Line(LineWording.Of(state, happened), Ink.Bad)],
            RunEvent.ReadingTaken e => Reading(state, e),
            _ => [Line(LineWording.Of(state, happened))],
        };

    private static IEnumerable<TextLine> Reading(RunState state, RunEvent.ReadingTaken taken)
    {
        TakenReading reading = taken.Reading;
        yield return Line(LineWording.Of(state, taken), reading.Good ? Ink.Plain : Ink.Bad);
        foreach (string fault in reading.Faults)
        {
            yield return Line(fault, Ink.Bad, 2);
        }

        Judgement window = reading.Judgement;
        bool judged = window.Low is not null || window.Aim is not null || window.High is not null;
        string places =
            reading.Places.Count > 1 ? string.Join(", ", reading.Places.Select(p => $"{p.Place} {p.Value}")) : "";
        string[] facts =
        [
            places,
            judged ? LineWording.Window(window) : "",
            reading.Gauge.Length > 0 ? $"gauge {reading.Gauge}" : "",
        ];
        string told = string.Join("; ", facts.Where(fact => fact.Length > 0));
        if (told.Length > 0)
        {
            yield return Line(told, Ink.Quiet, 2);
        }
    }

    private static TextLine Line(string text, Ink ink = Ink.Plain, int more = 0) =>
        new(Fitting.Words(text), ink, Indent + more);
}
