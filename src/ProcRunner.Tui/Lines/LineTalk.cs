using ProcRunner.Runs;
using ProcRunner.Runs.Prompts;
using ProcRunner.Tui.Jobs;

namespace ProcRunner.Tui.Lines;

/// <summary>What all words of line mode share: the job, the step in hand, what is read, printed and refused.</summary>
internal sealed class LineTalk(JobRun job, LineInput input, LinePrinter printer)
{
    private At? _chosen;

    public JobRun Job { get; } = job;

    public LineInput Input { get; } = input;

    public LinePrinter Printer { get; } = printer;

    /// <summary>The line whose value was refused, to be named when the run stops.</summary>
    public RefusedLine Held { get; } = new();

    public RunState State => Job.State;

    /// <summary>Why the last line wasn't taken; empty when it was.</summary>
    public string Refused { get; private set; } = "";

    /// <summary>A new line is taken.</summary>
    public void Begin() => Refused = "";

    /// <summary>Goes to another open step.</summary>
    public void Go(At at) => _chosen = at;

    /// <summary>Gives a command to the job and prints what came of it; true when it was refused.</summary>
    public bool Do(RunCommand command) => Answer(Job.Do(command));

    /// <summary>Prints what came of a command; true when it was refused, so that nothing needs to be shown again.</summary>
    public bool Answer(JobAnswer answer)
    {
        switch (answer)
        {
            case JobAnswer.Recorded recorded:
                Printer.Recorded(State, recorded.Events);
                Printer.Corrected(State, recorded.Events);
                Held.Remember(State, recorded.Events, Input.LineNumber);
                Printer.Proof(Job.Proof);
                return false;
            case JobAnswer.Refused refused:
                return Refuse(refused.Why, refused.WhatToDo);
            case JobAnswer.NotWritten failed:
                return Refuse(
                    $"NOT WRITTEN: {failed.Why} Nothing was recorded.",
                    ["Mend the cause, then enter it again."]
                );
            default:
                throw new System.Diagnostics.UnreachableException();
        }
    }

    /// <summary>Prints why something isn't taken.</summary>
    public bool Refuse(string why, IReadOnlyList<string> whatToDo)
    {
        Refused = why;
        Printer.Refused(why, whatToDo);
        return true;
    }

    /// <summary>The step in hand: the one gone to while it is open, else the next; null when none is open.</summary>
    public At? Focus()
    {
        if (_chosen is { } chosen && new Outlook(State).ViewOf(chosen) == StepView.Open)
        {
            return chosen;
        }

        _chosen = null;
        return Prompter.Next(State);
    }

    /// <summary>The prompt of the step in hand.</summary>
    public Prompt? CurrentPrompt() => Focus() is { } at ? Prompter.At(State, Job.Shop, at) : null;
}
