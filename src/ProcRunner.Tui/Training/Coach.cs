using System.Globalization;
using ProcRunner.Lessons;
using ProcRunner.Procedures;
using ProcRunner.Quantities;
using ProcRunner.Runs;
using ProcRunner.Runs.Prompts;
using ProcRunner.Tui.Lines;

namespace ProcRunner.Tui.Training;

/// <summary>
/// What the coach says, with the numbers of the head in hand: before an answer how to come to it, after one what it means. A
/// reading that isn't typed yet is never in it.
/// </summary>
internal static class Coach
{
    /// <summary>What an answer means, line by line: how it lies in its limits, what follows from it, and the rule.</summary>
    /// <param name="lesson">The lesson, after the answer.</param>
    /// <param name="events">What was recorded.</param>
    /// <param name="misreads">Places whose gauge showed something else.</param>
    public static IReadOnlyList<string> OnAnswer(
        LessonRun lesson,
        IReadOnlyList<RunEvent> events,
        IReadOnlyList<Misread> misreads
    )
    {
        RunState state = lesson.Job.State;
        List<string> lines = [.. Slips(misreads)];
        foreach (RunEvent happened in events)
        {
            lines.AddRange(Meaning(state, happened));
        }

        lines.AddRange(Planted(lesson, events));
        return lines.Count == 0 ? [] : [.. lines, .. Next(lesson)];
    }

    /// <summary>How to come to the answer of a step, and why it matters.</summary>
    public static IReadOnlyList<string> Hint(LessonRun lesson, Prompt prompt)
    {
        List<string> lines = [$"{prompt.Step.FullName}, {prompt.Position}"];
        if (lesson.Lesson.Hints.TryGetValue(prompt.Step.FullName, out string? own))
        {
            lines.Add($"Here: {own}{(own[^1] is '?' or '!' ? "" : ".")}");
        }

        if (lesson.ReadoutOf(prompt) is not null)
        {
            lines.Add(
                "Down feeds the tool by about ten steps of the readout, + by one and now and then by two: coarse while there is "
                    + "room, fine at the end. Stop, then type what the readout shows; what is cut is cut."
            );
        }

        if (lesson.GaugeIn(prompt) is { Resolution: var least })
        {
            lines.Add($"To read it: {GaugeLesson.Of(lesson.GaugeOf(prompt).Character)}");

            lines.Add(
                prompt.Places.Count > 1
                    ? $"Read every place to the gauge's last digit, {least}: {string.Join(", ", prompt.Places)}."
                    : $"Read the gauge to its last digit, {least}."
            );
        }

        if (prompt.Awaits == Awaited.WayOn)
        {
            lines.AddRange(prompt.Faults.Select(fault => $"Out of spec: {fault}."));
        }
        else if (prompt.Window.Origin.Length > 0)
        {
            lines.Add($"It will be held against {LineWording.Window(prompt.Window)}.");
        }

        lines.AddRange(Target(prompt));
        lines.AddRange(
            prompt.Numbers.Select(number => $"{LineWording.Worked(number.Name, number.Working, number.Value)}.")
        );
        if (Matters(lesson.Job.State, prompt.Step) is { Length: > 0 } why)
        {
            lines.Add($"Why it is asked: {why}");
        }

        return lines;
    }

    // One line for all places of a reading, and once what to do about them.
    private static IEnumerable<string> Slips(IReadOnlyList<Misread> misreads)
    {
        foreach (Misread one in misreads.Where(m => m.Place == Misread.OfReadout))
        {
            yield return $"Misread: {one.Typed} was typed, the readout stood at {one.Shown}, and so deep it was cut.";
        }

        Misread[] read = [.. misreads.Where(m => m.Place != Misread.OfReadout)];
        if (read.Length > 0)
        {
            IEnumerable<string> each = read.Select(one =>
                $"{one.InWords("typed", "shown")}{(read.Length == 1 ? one.Why : "")}"
            );
            yield return $"Misread: {string.Join("; ", each)}. "
                + $"Menu, correct, puts the right {(read.Length == 1 ? "one" : "ones")} in {(read.Length == 1 ? "its" : "their")} place; "
                + "both stay in the trail.";
        }
    }

    private static IEnumerable<string> Meaning(RunState state, RunEvent happened)
    {
        switch (happened)
        {
            case RunEvent.ReadingTaken { At: var at, Reading: var reading }:
                yield return $"{reading.Characteristic}{Of(state, at)}: {reading.Value}. {Against(reading.Value, Judged(state, at, reading))}";
                foreach (WorkedValue worked in reading.Worked)
                {
                    yield return $"{LineWording.Worked(worked.Name, worked.Working, worked.Value)}. {Against(worked.Value, worked.Judgement)}";
                }

                if (reading.Predicted is { } predicted)
                {
                    yield return predicted.CompareTo(reading.Value) == 0
                        ? "That is what the readout had promised."
                        : $"The readout had promised {predicted}; the gauge says {reading.Value}: the gauge counts.";
                }

                if (Matters(state, state.Plan.Steps[at.Step]) is { Length: > 0 } why)
                {
                    yield return $"Why it is asked: {why}";
                }

                break;
            case RunEvent.EntryQuestioned e:
                yield return $"Not taken yet: {e.Why}. Look at the gauge again before you answer.";
                break;
            case RunEvent.ZeroSet e:
                yield return $"Where the readout shows {e.Zero.Set} the depth is {e.Zero.Measured}: every number to cut to counts from there.";
                break;
            case RunEvent.WentStale e:
                yield return $"Due again, since {e.Cause}: {Due(state, e)}.";
                break;
            case RunEvent.FindingNoted { Good: false } e:
                yield return $"\"{e.Finding}\" stops the run here until one of the ways on is taken.";
                break;
            case RunEvent.Conceded e:
                yield return $"Conceded: it stands in the customer's record, with {e.Mark.Name}'s name and the reason.";
                break;
            default:
                break;
        }
    }

    // The steps by name; of many the first ones.
    private static string Due(RunState state, RunEvent.WentStale stale)
    {
        const int Named = 3;
        string[] steps = [.. stale.Items.Select(item => NameOf(state, item)).Distinct()];
        string more =
            steps.Length > Named
                ? string.Create(CultureInfo.InvariantCulture, $" and {steps.Length - Named} more")
                : "";
        return $"{string.Join(", ", steps.Take(Named))}{more}";
    }

    private static string NameOf(RunState state, StaleItem item) =>
        item.Step >= 0
            ? state.Plan.NameOf(new At(item.Step, item.Position))
            : $"{state.Plan.Procedure.Characteristics[item.Characteristic].Name}{Of(state, new At(0, item.Position))}";

    // The next number to work to follows from what was just entered; the next reading is for the learner to take.
    private static IEnumerable<string> Next(LessonRun lesson) =>
        !lesson.IsOver && Prompter.Next(lesson.Job.State) is { } at
            ? Target(Prompter.At(lesson.Job.State, lesson.Job.Shop, at)).Select(line => $"Next: {line}")
            : [];

    private static IEnumerable<string> Target(Prompt prompt) =>
        prompt switch
        {
            { Awaits: Awaited.Readout, Target: { Working.Length: > 0 } target } =>
            [
                $"{target.Working}; on the readout {target.Show}"
                    + (target.StopsShort ? ", short of the aim: lift and measure there." : "."),
            ],
            { NumberToSet: { } set } => [$"with the cutter just touching, the readout is set to {set}."],
            _ => [],
        };

    /// <summary>How a value lies in its window, with what is left to the end it is nearer to.</summary>
    private static string Against(Quantity value, Judgement judged)
    {
        string ends = judged.Origin.Length == 0 ? "" : LineWording.Window(judged);
        return judged.Verdict switch
        {
            Verdict.Out => $"Out of spec: {judged.Detail}.",
            Verdict.Short => $"Not there yet: {ends}. {Rest(value, judged.Aim, "to", "the aim")}",
            Verdict.In =>
                $"In limits: {ends}. {Nearer(value, judged)} {Rest(value, judged.Aim, "from", "the aim")}".TrimEnd(),
            Verdict.Unjudged when judged.Low is { } low && value.CompareTo(low) < 0 =>
                $"It isn't judged here, but the head spec's {ends}: {Rest(value, low, "below", "the low end")} A decision that follows rests on it.",
            Verdict.Unjudged when judged.High is { } high && value.CompareTo(high) > 0 =>
                $"It isn't judged here, but the head spec's {ends}: {Rest(value, high, "above", "the high end")} A decision that follows rests on it.",
            Verdict.Unjudged when judged.Origin.Length > 0 =>
                $"It isn't judged here; it lies within the head spec's {ends}.",
            _ => "Nothing is judged by it here; later steps work with it.",
        };
    }

    // Where a step judges nothing, what the head spec says is what the decision that follows is made by.
    private static Judgement Judged(RunState state, At at, TakenReading reading) =>
        reading.Judgement.Verdict == Verdict.Unjudged
        && state.Plan.Head.LimitOf(reading.Characteristic, state.Plan.PositionOf(at.Position)) is { } limit
        && (limit.Low ?? limit.High) is not null
            ? new Judgement(Verdict.Unjudged, limit.Low, limit.Aim, limit.High, OriginWords.Of(limit.Origin), "")
            : reading.Judgement;

    private static string Nearer(Quantity value, Judgement judged)
    {
        bool isLow =
            judged.High is not { } high || (judged.Low is { } low && Gap(value, low).CompareTo(Gap(value, high)) <= 0);
        return isLow
            ? Rest(value, judged.Low, "above", "the low end")
            : Rest(value, judged.High, "below", "the high end");
    }

    // Two temperatures lie apart by a difference, which is said in the unit of both.
    private static string Rest(Quantity value, Quantity? end, string side, string what) =>
        end is not { } limit ? ""
        : value.CompareTo(limit) == 0 ? $"Just on {what}."
        : limit.Unit == value.Unit ? $"{new Quantity(Math.Abs(value.Value - limit.Value), value.Unit)} {side} {what}."
        : Gap(value, limit).TryToQuantity(limit.Unit, limit.Value.Scale, Rounding.Down, out Quantity gap)
            ? $"{gap} {side} {what}."
        : "";

    private static Exact Gap(Quantity value, Quantity end)
    {
        Exact gap = Exact.Of(value) - Exact.Of(end);
        return gap.Value.Sign < 0 ? Exact.Of(end) - Exact.Of(value) : gap;
    }

    // Said once, of the answer itself. A reading that is still to be answered is no answer yet, and measuring again never a
    // wrong one.
    private static IEnumerable<string> Planted(LessonRun lesson, IReadOnlyList<RunEvent> events)
    {
        Plan plan = lesson.Job.State.Plan;
        LessonAnswers answers = new(plan);
        (At At, string Answer)[] all = [.. events.SelectMany(LessonAnswers.Of)];
        foreach (PlantedFault fault in lesson.Lesson.Planted)
        {
            if (all.Any(one => answers.IsRight(one, fault)))
            {
                yield return $"Caught: {fault.What}. {fault.Why}";
            }
            else if (
                lesson.IsCaught(fault) != true
                && all.Any(one => answers.IsOf(one, fault) && IsDecision(plan, one))
            )
            {
                yield return lesson.IsOver ? $"Passed over: {fault.What}. {fault.Why}" : $"Look again. {fault.Why}";
            }
        }
    }

    private static bool IsDecision(Plan plan, (At At, string Answer) one) =>
        one.At.Step >= 0
        && plan.Steps[one.At.Step] is var step
        && (
            step.Work is StepWork.Inspect or StepWork.Decide
            || step.WaysOn.Any(way => way.Text == one.Answer && way.Kind != WayKind.Again)
        );

    private static string Matters(RunState state, Step step) =>
        step.Why.Length > 0 ? step.Why
        : step.Taking is { } taking && state.Plan.TryCharacteristic(taking.Characteristic, out int index)
            ? state.Plan.Procedure.Characteristics[index].Why
        : "";

    private static string Of(RunState state, At at) =>
        at.Position == At.Head ? "" : $" at {state.Plan.PositionName(at.Position)}";
}
