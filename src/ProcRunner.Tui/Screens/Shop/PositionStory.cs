using ProcRunner.Procedures;
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
    private const int Indent = 8;
    private const int DayLength = 10;

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
        string heading = "";
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

            Step? step = here.Select(EventPlace.Of).FirstOrDefault(at => at is not null) is { } at
                ? state.Plan.Steps[at.Step]
                : null;
            DateTimeOffset when = entry.At.ToOffset(entry.Offset);
            string now = $"{Ago.Clock(when)[..DayLength]}  {nameOf(entry.Operator)}{StageOf(step)}";
            if (now != heading)
            {
                lines.Add(new(now, Ink.Quiet));
                heading = now;
            }

            string clock = setBack.Contains(entry.Sequence) ? " (clock set back)" : "";
            lines.AddRange(
                Timed(
                    $"{Ago.Clock(when)[DayLength..].Trim()}{clock}",
                    step,
                    [.. here.OrderBy(IsOutcome).SelectMany(e => Told(state, e))]
                )
            );
        }

        return lines;
    }

    private static string StageOf(Step? step) => step is null ? "" : $", {step.FullName[..^(step.Name.Length + 3)]}";

    // The first line has the time of day, and the step's name where it doesn't begin with that by itself.
    private static IEnumerable<TextLine> Timed(string time, Step? step, TextLine[] told)
    {
        for (int i = 0; i < told.Length; i++)
        {
            bool named = i > 0 || step is null || told[i].Text.StartsWith(step.Name, StringComparison.Ordinal);
            string text = named ? told[i].Text : $"{step!.Name}: {told[i].Text}";
            yield return i == 0 ? told[i] with { Text = $"{time}  {text}", Indent = 1 } : told[i] with { Text = text };
        }
    }

    // What a part or step leaves to be done again is told after it.
    private static bool IsOutcome(RunEvent happened) => happened is RunEvent.WentStale or RunEvent.Reopened;

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
            RunEvent.ChoiceMade e => [Line($"decided: {e.Choice}")],
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
        Judgement window = reading.Judgement;
        bool judged = window.Low is not null || window.Aim is not null || window.High is not null;
        string gauge = reading.Gauge.Length > 0 ? $"gauge {reading.Gauge}" : "";
        string[] facts =
        [
            .. new[]
            {
                reading.Places.Count > 1 ? string.Join(", ", reading.Places.Select(p => $"{p.Place} {p.Value}")) : "",
                judged ? LineWording.Window(window) : "",
            }.Where(fact => fact.Length > 0),
        ];
        bool isShort = facts.Length == 0 && !reading.Faults.Any() && gauge.Length > 0;
        string said = LineWording.Of(state, taken);
        yield return Line(isShort ? $"{said}; {gauge}" : said, reading.Good ? Ink.Plain : Ink.Bad);
        foreach (string fault in reading.Faults)
        {
            yield return Line(fault, Ink.Bad);
        }

        string told = string.Join("; ", facts.Append(gauge).Where(fact => fact.Length > 0));
        if (told.Length > 0 && !isShort)
        {
            yield return Line(told, Ink.Quiet, 2);
        }
    }

    private static TextLine Line(string text, Ink ink = Ink.Plain, int more = 0) =>
        new(Fitting.Words(text), ink, Indent + more);
}
