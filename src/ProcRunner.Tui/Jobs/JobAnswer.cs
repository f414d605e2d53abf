using ProcRunner.Runs;

namespace ProcRunner.Tui.Jobs;

/// <summary>What came of a command given to an open job.</summary>
internal abstract record JobAnswer
{
    private JobAnswer() { }

    /// <summary>It is decided and on disk.</summary>
    public sealed record Recorded(IReadOnlyList<RunEvent> Events) : JobAnswer;

    /// <summary>It can't be done.</summary>
    public sealed record Refused(string Why, IReadOnlyList<string> WhatToDo) : JobAnswer;

    /// <summary>It was decided but couldn't be written; nothing has happened and it can be tried again.</summary>
    public sealed record NotWritten(string Why) : JobAnswer;
}
