namespace ProcRunner.Runs;

/// <summary>The command that an entry's events came of, so that it can be decided again.</summary>
public static class CommandOf
{
    /// <summary>The command; null when the events are none that one command brings about.</summary>
    public static RunCommand? Events(IReadOnlyList<RunEvent> events)
    {
        ArgumentNullException.ThrowIfNull(events);
        if (events.OfType<RunEvent.WayTaken>().FirstOrDefault() is { } way)
        {
            Mark? mark = events
                .Select(e =>
                    e switch
                    {
                        RunEvent.Conceded conceded => conceded.Mark,
                        RunEvent.HeadScrapped scrapped => scrapped.Mark,
                        _ => null,
                    }
                )
                .FirstOrDefault(m => m is not null);
            return new RunCommand.TakeWay(way.At, way.Way, way.Reason, mark);
        }

        RunCommand? command = events.Select(Said).FirstOrDefault(c => c is not null);
        return events.OfType<RunEvent.EntryCorrected>().FirstOrDefault() is { } corrected
            ? command is RunCommand.Enter again
                ? new RunCommand.Correct(corrected.At, again.Text, corrected.Reason)
                : null
            : command ?? events.Select(Chosen).FirstOrDefault(c => c is not null);
    }

    private static RunCommand? Said(RunEvent happened) =>
        happened switch
        {
            RunEvent.JobOpened e => new RunCommand.OpenJob(e.Header),
            RunEvent.ReadingTaken e => new RunCommand.Enter(e.At, e.Reading.Typed),
            RunEvent.EntryQuestioned e => new RunCommand.Enter(e.At, e.Typed),
            RunEvent.FindingNoted e => new RunCommand.Enter(e.At, e.Finding),
            RunEvent.ChoiceMade e => new RunCommand.Enter(e.At, e.Choice),
            RunEvent.StepDone e => new RunCommand.Enter(e.At, e.Said.Length == 0 ? "done" : $"done {e.Said}"),
            RunEvent.PartFitted e => new RunCommand.Enter(e.At, $"{e.Number}, lot {e.Lot}"),
            RunEvent.ZeroSet e => new RunCommand.Enter(e.At, e.Typed),
            RunEvent.PassCut e => new RunCommand.Enter(e.At, e.Typed),
            RunEvent.CutterLifted e => new RunCommand.LiftToMeasure(e.At),
            RunEvent.CutEnded e => new RunCommand.EndCut(e.At),
            RunEvent.SignedOff e => new RunCommand.Sign(e.At, e.Mark, e.Beside),
            RunEvent.JobReleased e => new RunCommand.Sign(e.At, e.Mark, e.Beside),
            _ => OfJob(happened),
        };

    private static RunCommand? OfJob(RunEvent happened) =>
        happened switch
        {
            RunEvent.LeftOut e => new RunCommand.LeaveOut(e.At, e.Reason),
            RunEvent.Noted e => new RunCommand.Note(e.At, e.Text),
            RunEvent.JobHeld e => new RunCommand.Hold(e.Reason),
            RunEvent.JobTakenUp => new RunCommand.TakeUp(),
            RunEvent.HandedOver e => new RunCommand.HandOver(e.To),
            RunEvent.ChangeReported e => new RunCommand.Report(e.Change, e.Position),
            RunEvent.LimitChosen e => new RunCommand.ChooseLimit(
                e.Characteristic,
                e.Position,
                e.Low,
                e.Aim,
                e.High,
                e.Reason
            ),
            _ => null,
        };

    // A gauge is also chosen beside a reading, for want of another.
    private static RunCommand? Chosen(RunEvent happened) =>
        happened is RunEvent.GaugeChosen e ? new RunCommand.ChooseGauge(e.Kind, e.Gauge) : null;
}
