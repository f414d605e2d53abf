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

        bool lastWasPass = record.Cut is { } cut && cut.Travel != cut.TravelAtReading;
        Decision decision = on.StepOf(at).Work switch
        {
            StepWork.Sign => Deciding.No("A sign-off can't be corrected.", "Correct what it covers, then sign again."),
            StepWork.Cut when lastWasPass => CutDecider.CorrectPass(on, at, command.Text.Trim()),
            StepWork.Zero zero when record.Standing == StepStanding.Done => Deciding.No(
                $"The zero is set ({zero.Kind}).",
                "Report what changed and set it again."
            ),
            StepWork.Zero { From: { } from } => Measure(on, at, from, command.Text.Trim()),
            StepWork.Cut aim => Measure(on, at, aim.Taking, command.Text.Trim()),
            _ => Enter(on, at, command.Text),
        };
        return decision is Decision.Accepted accepted
            ? new Decision.Accepted([new RunEvent.EntryCorrected(at, command.Reason), .. accepted.Events])
            : decision;
    }

    private static Decision Measure(Deciding on, At at, Taking taking, string said)
    {
        switch (ReadingTaker.Read(on, at, taking, said))
        {
            case ReadingResult.Questioned questioned:
                return Deciding.Yes(questioned.Question);
            case ReadingResult.Refused refused:
                return refused.Why;
            case ReadingResult.Taken taken:
                return Deciding.Yes(
                    taken.Gauge,
                    on.Stales(
                        at,
                        on.MovesOf(at).Concat(on.Changed(at, taken.Reading)),
                        $"{taking.Characteristic} was measured"
                    ),
                    new RunEvent.ReadingTaken(at, taken.Reading)
                );
            default:
                throw new System.Diagnostics.UnreachableException();
        }
    }

    private static Decision Inspect(Deciding on, At at, StepWork.Inspect inspect, string said)
    {
        Finding? finding = inspect.Findings.FirstOrDefault(f => Same(f.Text, said));
        return finding is null
            ? Deciding.No($"Read \"{said}\"; expected one of the findings.", [.. inspect.Findings.Select(f => f.Text)])
            : Deciding.Yes(
                on.Stales(
                    at,
                    on.MovesOf(at).Append(("found." + on.StepOf(at).Subject, at.Position)),
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
                    on.MovesOf(at).Append(("decided." + decide.Subject, at.Position)),
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

    private static bool Same(string a, string b) => string.Equals(a, b, StringComparison.OrdinalIgnoreCase);
}
