using ProcRunner.Quantities;

namespace ProcRunner.Runs;

/// <summary>What a person at the machine wants. Imperative; what comes of it is <see cref="RunDecider"/>'s to say.</summary>
public abstract record RunCommand
{
    private RunCommand() { }

    /// <summary>Open a job.</summary>
    public sealed record OpenJob(JobHeader Header) : RunCommand
    {
        /// <summary>The earlier job on the same head; null for none.</summary>
        public RunEvent.CameBack? Earlier { get; init; }

        /// <summary>Another head of the same engine; null for none.</summary>
        public RunEvent.HeadLinked? Linked { get; init; }
    }

    /// <summary>Say that another head belongs to the same engine.</summary>
    public sealed record LinkHead(string Job, string Stamp) : RunCommand;

    /// <summary>Say how this head goes out, the other head of the engine compared.</summary>
    public sealed record CompareHeads(RunEvent.HeadsCompared Compared) : RunCommand;

    /// <summary>What was typed, sent or chosen at a step: a reading, a finding, a choice, a part, "done".</summary>
    public sealed record Enter(At At, string Text) : RunCommand;

    /// <summary>An entry in place of the last one at that step.</summary>
    public sealed record Correct(At At, string Text, string Reason) : RunCommand;

    /// <summary>Lift the cutter and measure before the target is reached.</summary>
    public sealed record LiftToMeasure(At At) : RunCommand;

    /// <summary>End a cut that is within its window, short of its aim.</summary>
    public sealed record EndCut(At At) : RunCommand;

    /// <summary>Choose a way on for a result out of spec; concession and scrap carry a lead's mark.</summary>
    public sealed record TakeWay(At At, string Way, string Reason, Mark? Mark) : RunCommand;

    /// <summary>Sign; a trainee's mark needs a lead's beside it.</summary>
    public sealed record Sign(At At, Mark Mark, Mark? Beside) : RunCommand;

    /// <summary>Leave a step out: not for this head.</summary>
    public sealed record LeaveOut(At At, string Reason) : RunCommand;

    /// <summary>Take back that a step was left out.</summary>
    public sealed record TakeBack(At At, string Reason) : RunCommand;

    /// <summary>Write a note.</summary>
    public sealed record Note(At? At, string Text) : RunCommand;

    /// <summary>Put the job aside.</summary>
    public sealed record Hold(string Reason) : RunCommand;

    /// <summary>Take a held job up again.</summary>
    public sealed record TakeUp : RunCommand;

    /// <summary>Hand the job to another person.</summary>
    public sealed record HandOver(string To) : RunCommand;

    /// <summary>Choose the gauge for a kind of reading.</summary>
    public sealed record ChooseGauge(string Kind, string Gauge) : RunCommand;

    /// <summary>Choose limits that nobody knows; position null: for all.</summary>
    public sealed record ChooseLimit(
        string Characteristic,
        int? Position,
        Quantity? Low,
        Quantity? Aim,
        Quantity? High,
        string Reason
    ) : RunCommand;

    /// <summary>Report a change that the procedure names.</summary>
    public sealed record Report(string Change, int Position) : RunCommand;
}
