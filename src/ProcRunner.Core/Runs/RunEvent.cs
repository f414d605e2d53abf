using ProcRunner.Procedures;
using ProcRunner.Quantities;

namespace ProcRunner.Runs;

/// <summary>
/// What happened. The names under which these are stored stand in <see cref="RunEventFormat"/>: a stored event's name and
/// shape never change their meaning.
/// </summary>
public abstract record RunEvent
{
    private RunEvent() { }

    /// <summary>A job was opened.</summary>
    public sealed record JobOpened(JobHeader Header) : RunEvent;

    /// <summary>A reading was taken, in limits or not.</summary>
    public sealed record ReadingTaken(At At, TakenReading Reading) : RunEvent;

    /// <summary>An entry was questioned rather than taken; it is kept here.</summary>
    /// <param name="At">The step.</param>
    /// <param name="Typed">What was typed.</param>
    /// <param name="Why">What is doubtful.</param>
    /// <param name="Meanings">What it can mean; none when it is clear and the reading itself is doubtful.</param>
    public sealed record EntryQuestioned(At At, string Typed, string Why, IReadOnlyList<string> Meanings) : RunEvent
    {
        /// <summary>True when a second reading answers it rather than a choice among meanings.</summary>
        public bool IsOfReading => Meanings.Count == 0;
    }

    /// <summary>An inspection found something.</summary>
    public sealed record FindingNoted(At At, string Finding, bool Good) : RunEvent;

    /// <summary>A choice was made that later steps depend on.</summary>
    public sealed record ChoiceMade(At At, string Choice) : RunEvent;

    /// <summary>An instruction was carried out.</summary>
    public sealed record StepDone(At At, string Said) : RunEvent;

    /// <summary>A part was fitted.</summary>
    public sealed record PartFitted(At At, string Part, string Number, string Lot) : RunEvent;

    /// <summary>The readout was set.</summary>
    public sealed record ZeroSet(At At, ZeroPoint Zero, string Readout, string Typed) : RunEvent;

    /// <summary>A pass was cut, to a target.</summary>
    public sealed record PassCut(At At, string Typed, CutProgress Progress, CutTarget Target) : RunEvent;

    /// <summary>The cutter was lifted to measure before the target was reached.</summary>
    public sealed record CutterLifted(At At) : RunEvent;

    /// <summary>A cut was ended within its window, short of its aim.</summary>
    public sealed record CutEnded(At At) : RunEvent;

    /// <summary>Values and steps went stale because something moved.</summary>
    public sealed record WentStale(IReadOnlyList<StaleItem> Items, string Cause, int Mover) : RunEvent;

    /// <summary>Steps are to be done over.</summary>
    public sealed record Reopened(IReadOnlyList<At> Items, string Cause) : RunEvent;

    /// <summary>A disposition was chosen for a result out of spec.</summary>
    public sealed record WayTaken(At At, string Way, WayKind Kind, string Reason) : RunEvent;

    /// <summary>A result out of spec was accepted in writing.</summary>
    /// <param name="At">Where.</param>
    /// <param name="Reason">Why.</param>
    /// <param name="Mark">The lead's mark.</param>
    /// <param name="Covers">Digest of the refused result and the reason; empty in events from before it was written down.</param>
    public sealed record Conceded(At At, string Reason, Mark Mark, string Covers = "") : RunEvent;

    /// <summary>The head was given up.</summary>
    /// <param name="At">Where.</param>
    /// <param name="Reason">Why.</param>
    /// <param name="Mark">The lead's mark.</param>
    /// <param name="Covers">Digest of the refused result and the reason; empty in events from before it was written down.</param>
    public sealed record HeadScrapped(At At, string Reason, Mark Mark, string Covers = "") : RunEvent;

    /// <summary>A stage was signed.</summary>
    public sealed record SignedOff(At At, string Meaning, string Covers, Mark Mark, Mark? Beside) : RunEvent;

    /// <summary>The job was closed out and the head handed over.</summary>
    public sealed record JobReleased(At At, string Covers, Mark Mark, Mark? Beside) : RunEvent;

    /// <summary>What follows in this entry corrects what stood before.</summary>
    public sealed record EntryCorrected(At At, string Reason) : RunEvent;

    /// <summary>A step was left out: not for this head.</summary>
    public sealed record LeftOut(At At, string Reason) : RunEvent;

    /// <summary>That a step was left out is taken back: it is to be done after all.</summary>
    public sealed record LeavingOutTakenBack(At At, string Reason) : RunEvent;

    /// <summary>A note.</summary>
    public sealed record Noted(At? At, string Text) : RunEvent;

    /// <summary>The job was put aside.</summary>
    public sealed record JobHeld(string Reason) : RunEvent;

    /// <summary>The job was taken up again.</summary>
    public sealed record JobTakenUp : RunEvent;

    /// <summary>Another person goes on.</summary>
    public sealed record HandedOver(string From, string To) : RunEvent;

    /// <summary>A gauge was chosen for a kind of reading.</summary>
    public sealed record GaugeChosen(string Kind, string Gauge) : RunEvent;

    /// <summary>Limits that nobody knew were chosen.</summary>
    public sealed record LimitChosen(
        string Characteristic,
        int? Position,
        Quantity? Low,
        Quantity? Aim,
        Quantity? High,
        string Reason
    ) : RunEvent;

    /// <summary>The head came back: an earlier job was done on it, whose trail stays as it is.</summary>
    /// <param name="Job">The earlier job's id.</param>
    /// <param name="Stamp">Its stamp.</param>
    /// <param name="Last">Digest of the last entry of its trail as it then was, lower hex.</param>
    public sealed record CameBack(string Job, string Stamp, string Last) : RunEvent;

    /// <summary>Another head belongs to the same engine.</summary>
    /// <param name="Job">The job on it.</param>
    /// <param name="Stamp">That job's stamp.</param>
    public sealed record HeadLinked(string Job, string Stamp) : RunEvent;

    /// <summary>The heads of one engine were compared, and it was decided how they go out.</summary>
    /// <param name="Job">The job on the other head.</param>
    /// <param name="Stamp">That job's stamp.</param>
    /// <param name="Figures">What was compared.</param>
    /// <param name="Together">True: they match; false: this head goes out although they don't, or the other isn't known yet.</param>
    /// <param name="Reason">Why; may be empty when they match.</param>
    public sealed record HeadsCompared(
        string Job,
        string Stamp,
        IReadOnlyList<HeadFigure> Figures,
        bool Together,
        string Reason
    ) : RunEvent;

    /// <summary>The operator reported a change.</summary>
    public sealed record ChangeReported(string Change, int Position) : RunEvent;
}
