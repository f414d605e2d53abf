using ProcRunner.Procedures;

namespace ProcRunner.Runs;

/// <summary>What was entered at a step, by the step's kind.</summary>
internal static class EntryDecider
{
    /// <summary>Takes an entry at an open step.</summary>
    public static Decision Enter(Deciding on, At at, string text)
    {
        string said = text.Trim();
        return on.StepOf(at).Work switch
        {
            StepWork.Measure measure => Measure(on, at, measure.Taking, said),
            StepWork.Zero zero => ZeroDecider.Enter(on, at, zero, said),
            StepWork.Cut cut => CutDecider.Enter(on, at, cut, said),
            StepWork.Inspect inspect => Inspect(on, at, inspect, said),
            StepWork.Decide decide => Choose(on, at, decide, said),
            StepWork.Fit fit => Fit(on, at, fit, said),
            StepWork.Do => Do(on, at, said),
            _ => Deciding.No("This is signed, not entered.", "sign"),
        };
    }

    /// <summary>An entry in place of the last one.</summary>
    public static Decision Correct(Deciding on, RunCommand.Correct command)
    {
        if (string.IsNullOrWhiteSpace(command.Reason))
        {
            return Deciding.No("A correction needs a reason.", "Say why: correct … because …");
        }

        At at = command.At;
        if (on.State.Find(at) is not { Sequence: > 0 } record || record.Standing == StepStanding.Waiting)
        {
            return Deciding.No($"There is nothing to correct at {on.Plan.NameOf(at)}.");
        }

        Step step = on.StepOf(at);
        bool lastWasPass = record.Cut is { } cut && cut.Travel != cut.TravelAtReading;
        Decision decision = step.Work switch
        {
            StepWork.Sign => Deciding.No("A sign-off can't be corrected.", "Correct what it covers, then sign again."),
            StepWork.Cut when lastWasPass => CutDecider.CorrectPass(on, at, command.Text.Trim()),
            StepWork.Zero zero when record.Standing == StepStanding.Done => Deciding.No(
                $"The zero is set ({zero.Kind}).",
                "Report what changed and set it again."
            ),
            StepWork.Zero { From: { } from } => Measure(on, at, from, command.Text.Trim()),
            StepWork.Cut aim => CutDecider.CorrectReading(on, at, aim, command.Text.Trim()),
            _ => Enter(on, at, command.Text),
        };
        return decision is Decision.Accepted accepted && accepted.Events is not [RunEvent.EntryQuestioned]
            ? Deciding.Yes([
                new RunEvent.EntryCorrected(at, command.Reason),
                .. accepted.Events,
                .. StillStale(on, at, record),
            ])
            : decision;
    }

    // A corrected entry is as old as the one it takes the place of: what was stale stays stale, to be taken again.
    private static IEnumerable<RunEvent> StillStale(Deciding on, At at, StepRecord record)
    {
        if (record.Stale)
        {
            yield return new RunEvent.WentStale([new StaleItem(-1, at.Step, at.Position)], record.Cause, -1);
        }

        foreach (string given in on.StepOf(at).Gives)
        {
            int characteristic = on.Plan.CharacteristicIndex(given);
            if (on.State.Value(characteristic, at.Position) is { Stale: true } value && value.ByStep == at.Step)
            {
                yield return new RunEvent.WentStale(
                    [new StaleItem(characteristic, -1, at.Position)],
                    value.Cause,
                    value.Mover
                );
            }
        }
    }

    private static Decision Measure(Deciding on, At at, Taking taking, string said) =>
        ReadingTaker.Read(on, at, taking, said) switch
        {
            ReadingResult.Questioned questioned => Deciding.Yes(questioned.Question),
            ReadingResult.Refused refused => refused.Why,
            ReadingResult.Taken taken => Deciding.Yes(
                taken.Gauge,
                on.Stales(at, taken.Reading, on.MovesOf(at), $"{taking.Characteristic} was measured"),
                new RunEvent.ReadingTaken(at, taken.Reading)
            ),
            _ => throw new System.Diagnostics.UnreachableException(),
        };

    private static Decision Inspect(Deciding on, At at, StepWork.Inspect inspect, string said)
    {
        Finding? finding = inspect.Findings.FirstOrDefault(f => Same(f.Text, said));
        return finding is null
            ? Deciding.No($"Read \"{said}\"; expected one of the findings.", [.. inspect.Findings.Select(f => f.Text)])
            : Deciding.Yes(
                on.Stales(
                    at,
                    Said(on, at, "found.", on.State.FindingOf(on.StepOf(at).Subject, at.Position), finding.Text),
                    $"{on.StepOf(at).Name} was found {finding.Text}"
                ),
                new RunEvent.FindingNoted(at, finding.Text, finding.Good)
            );
    }

    private static Decision Choose(Deciding on, At at, StepWork.Decide decide, string said)
    {
        string? choice = decide.Choices.FirstOrDefault(c => Same(c, said));
        return choice is null
            ? Deciding.No($"Read \"{said}\"; expected one of the choices.", [.. decide.Choices])
            : Deciding.Yes(
                on.Stales(
                    at,
                    Said(on, at, "decided.", on.State.ChoiceOf(decide.Subject, at.Position), choice),
                    $"{decide.Subject}: {choice}"
                ),
                new RunEvent.ChoiceMade(at, choice)
            );
    }

    private static Decision Fit(Deciding on, At at, StepWork.Fit fit, string said)
    {
        int comma = said.IndexOf(',', StringComparison.Ordinal);
        string number = comma < 0 ? "" : said[..comma].Trim();
        string lot = comma < 0 ? "" : said[(comma + 1)..].Trim();
        lot = lot.StartsWith("lot ", StringComparison.OrdinalIgnoreCase) ? lot[4..].Trim() : lot;
        return number.Length == 0 || lot.Length == 0
            ? Deciding.No(
                $"Read \"{said}\"; expected the {fit.Part}'s part number, a comma, its lot.",
                "For a part without a lot: NUMBER, no lot"
            )
            : Deciding.Yes(
                on.Stales(at, on.MovesOf(at), $"another {fit.Part}"),
                new RunEvent.PartFitted(at, fit.Part, number, lot)
            );
    }

    private static Decision Do(Deciding on, At at, string said)
    {
        bool done = Same(said, "done") || said.StartsWith("done ", StringComparison.OrdinalIgnoreCase);
        string remark = done ? said[4..].TrimStart(' ', ',') : "";
        return done
            ? Deciding.Yes(on.Stales(at, on.MovesOf(at), on.StepOf(at).Name), new RunEvent.StepDone(at, remark))
            : Deciding.No($"Read \"{said}\"; expected done, and what there is to say of it.", "done");
    }

    // The declared moves, and what was said itself when it isn't what was said before.
    private static IReadOnlyList<MovedName> Said(Deciding on, At at, string kind, string? before, string now) =>
        before == now
            ? on.MovesOf(at)
            : [.. on.MovesOf(at), new MovedName(kind + on.StepOf(at).Subject, at.Position, before is null)];

    private static bool Same(string a, string b) => string.Equals(a, b, StringComparison.OrdinalIgnoreCase);
}
