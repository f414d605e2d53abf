using System.Globalization;
using ProcRunner.Lessons;
using ProcRunner.Procedures;
using ProcRunner.Runs;
using ProcRunner.Store.Local;
using ProcRunner.Trail;

namespace ProcRunner.Tui.Training;

/// <summary>How a lesson went, against its own solution.</summary>
/// <param name="Lesson">The lesson's name.</param>
/// <param name="Person">Who took it.</param>
/// <param name="Caught">Planted faults that were answered as they should be.</param>
/// <param name="Missed">Those that were passed over.</param>
/// <param name="Misreads">Readings typed otherwise than shown.</param>
/// <param name="TooDeep">What was measured after cuts that went past the high limit.</param>
/// <param name="Redone">Where a reading was taken again though nothing was out of limits.</param>
/// <param name="Questioned">Entries that were hard to believe.</param>
/// <param name="Minutes">From when the learner took over to the last of the learner's entries, begun minutes.</param>
internal sealed record Debrief(
    string Lesson,
    string Person,
    IReadOnlyList<PlantedFault> Caught,
    IReadOnlyList<PlantedFault> Missed,
    IReadOnlyList<Misread> Misreads,
    IReadOnlyList<RunEvent.ReadingTaken> TooDeep,
    IReadOnlyList<At> Redone,
    int Questioned,
    int Minutes
)
{
    /// <summary>How long the lesson's own solution takes, in minutes; null: nobody has said.</summary>
    public int? Own { get; init; }

    /// <summary>True when everything planted was caught, nothing misread for good and nothing cut too deep.</summary>
    public bool IsClean => ToMend == 0;

    /// <summary>How many things there are to do better: missed, misread, cut too deep.</summary>
    public int ToMend => Missed.Count + Misreads.Count(one => !one.IsPutRight) + TooDeep.Count;

    /// <summary>Looks back at a lesson.</summary>
    public static Debrief Of(LessonRun run, StoreReader reader)
    {
        RunState state = run.Job.State;
        TrailEntry[] all = [.. reader.ReadTrail(state.JobId).Entries.Select(e => e.Entry)];
        TrailEntry[] mine = [.. all.Where(e => e.Operator == run.Job.Person && e.Sequence > 1)];
        RunEvent[] events =
        [
            .. mine.SelectMany(e => e.Events).Select(map => RunEventFormat.Read(state.Plan, map)).OfType<RunEvent>(),
        ];
        return new Debrief(
            run.Lesson.Name,
            run.Job.Person,
            [.. run.Lesson.Planted.Where(fault => run.IsCaught(fault) == true)],
            [.. run.Lesson.Planted.Where(fault => run.IsCaught(fault) == false)],
            run.Misreads,
            [.. OwnCuts.TooDeep(state.Plan, events)],
            AgainForNothing(events),
            events.OfType<RunEvent.EntryQuestioned>().Count(),
            mine.Length == 0 ? 0 : MinutesOf(mine[^1].At - BeforeOf(all, mine[0]).At)
        )
        {
            Own = run.Lesson.Minutes,
        };
    }

    /// <summary>In words, line by line: the rule behind each fault stands with it.</summary>
    public IEnumerable<string> Lines(RunState state)
    {
        yield return IsClean ? "As it should be." : "Not yet as it should be.";
        foreach (PlantedFault fault in Caught)
        {
            yield return $"caught: {fault.What}. {fault.Why}";
        }

        foreach (PlantedFault fault in Missed)
        {
            string where = fault.Position is { } position ? $"{fault.Step}, {position}" : fault.Step;
            string read = Read(state, fault) is { Length: > 0 } text ? $"; {text}" : "";
            yield return $"missed: {fault.What}{read}. At {where} the answer is: {fault.Answer}. {fault.Why}";
        }

        foreach (IGrouping<At, Misread> of in Misreads.GroupBy(one => one.At))
        {
            string all = string.Join("; ", of.Select(Said));
            yield return $"misread: {state.Plan.NameOf(of.Key)}: {all}.";
        }

        foreach (RunEvent.ReadingTaken one in TooDeep)
        {
            yield return $"cut too deep: {state.Plan.NameOf(one.At)}: {one.Reading.Value}, and the high limit is "
                + $"{one.Reading.Judgement.High}. Metal can't be put back: stop at the approach, measure, then cut the rest.";
        }

        if (Redone.Count > 0)
        {
            IEnumerable<string> where = Redone.Distinct().Select(state.Plan.NameOf);
            yield return $"measured again for nothing: {string.Join("; ", where)}. Every reading there was in its limits.";
        }

        if (Questioned > 0)
        {
            yield return $"entries that were hard to believe: {Number(Questioned)}";
        }

        yield return $"time: {Number(Minutes)} min"
            + (Own is { } own ? $"; the lesson's own solution takes about {Number(own)}" : "");
    }

    private static string Said(Misread one) =>
        $"{one.InWords("typed", "shown")}{one.Why}{(one.IsPutRight ? ", and put right" : "")}";

    // From when the learner took over: the first face is read before the first entry.
    private static TrailEntry BeforeOf(TrailEntry[] all, TrailEntry first) =>
        all.LastOrDefault(e => e.Sequence < first.Sequence) ?? first;

    private static int MinutesOf(TimeSpan took) => Math.Max(1, (int)Math.Ceiling(took.TotalMinutes));

    // What was measured where a fault was passed over, against its limits: the number that should have told.
    private static string Read(RunState state, PlantedFault fault)
    {
        state.Plan.TryStep(fault.Step, out int step);
        int position = fault.Position is { } name && state.Plan.TryPosition(name, out int index) ? index : At.Head;
        if (fault.ShownBy is { } shown)
        {
            return state.Value(shown, position) is { } value
                    ? $"{shown} was {value.Value}{Ends(state.Plan.Head.LimitOf(shown, state.Plan.PositionOf(position)))}"
                : state.FindingOf(shown, position) is { } finding ? $"{shown}: {finding}"
                : "";
        }

        return state.Find(new At(step, position))?.Readings is [.., var last]
            ? last.Faults.Any()
                ? string.Join(", ", last.Faults)
                : $"{last.Characteristic} was {last.Value}"
            : "";
    }

    private static string Ends(Limit? limit)
    {
        string low = limit?.Low is { } least ? $", low {least}" : "";
        string high = limit?.High is { } most ? $", high {most}" : "";
        return low + high;
    }

    // The same step read again with nothing out, nothing moved and no cut in between.
    private static List<At> AgainForNothing(IReadOnlyList<RunEvent> events)
    {
        Dictionary<At, bool> settled = [];
        List<At> again = [];
        foreach (RunEvent happened in events)
        {
            switch (happened)
            {
                case RunEvent.ReadingTaken taken:
                    if (settled.GetValueOrDefault(taken.At))
                    {
                        again.Add(taken.At);
                    }

                    settled[taken.At] = taken.Reading.Good && taken.Reading.Judgement.Verdict != Verdict.Short;
                    break;
                case RunEvent.WentStale stale:
                    settled.Clear();
                    break;
                case RunEvent.PassCut pass:
                    settled[pass.At] = false;
                    break;
                case RunEvent.EntryCorrected corrected:
                    settled[corrected.At] = false;
                    break;
                case RunEvent.Reopened:
                    settled.Clear();
                    break;
                default:
                    break;
            }
        }

        return again;
    }

    private static string Number(int value) => value.ToString(CultureInfo.InvariantCulture);
}
