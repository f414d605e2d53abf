namespace ProcRunner.Runs;

/// <summary>What came of a command.</summary>
public abstract record Decision
{
    private Decision() { }

    /// <summary>It happened; a result out of spec is among what happens.</summary>
    /// <param name="Events">What to write down; never empty.</param>
    public sealed record Accepted(IReadOnlyList<RunEvent> Events) : Decision;

    /// <summary>It can't be done; nothing is written down.</summary>
    /// <param name="Why">What was read, what was expected.</param>
    /// <param name="WhatToDo">What can be done, line by line.</param>
    public sealed record Refused(string Why, IReadOnlyList<string> WhatToDo) : Decision;
}
