using ProcRunner.Runs;

namespace ProcRunner.Records;

/// <summary>Where an event happened.</summary>
public static class EventPlace
{
    /// <summary>The step and position, or null for one of the whole job.</summary>
    public static At? Of(RunEvent happened) =>
        happened switch
        {
            RunEvent.ReadingTaken e => e.At,
            RunEvent.EntryQuestioned e => e.At,
            RunEvent.FindingNoted e => e.At,
            RunEvent.ChoiceMade e => e.At,
            RunEvent.StepDone e => e.At,
            RunEvent.PartFitted e => e.At,
            RunEvent.ZeroSet e => e.At,
            RunEvent.PassCut e => e.At,
            RunEvent.CutterLifted e => e.At,
            RunEvent.CutEnded e => e.At,
            RunEvent.WayTaken e => e.At,
            RunEvent.Conceded e => e.At,
            RunEvent.HeadScrapped e => e.At,
            RunEvent.SignedOff e => e.At,
            RunEvent.JobReleased e => e.At,
            RunEvent.EntryCorrected e => e.At,
            RunEvent.LeftOut e => e.At,
            RunEvent.LeavingOutTakenBack e => e.At,
            RunEvent.Noted e => e.At,
            _ => null,
        };
}
