namespace ProcRunner.Tui.Screens.Run;

/// <summary>What a typed line came to.</summary>
internal abstract record EntryOutcome
{
    private EntryOutcome() { }

    /// <summary>More is to be typed.</summary>
    public sealed record More : EntryOutcome;

    /// <summary>The entry is whole.</summary>
    public sealed record Whole(string Text) : EntryOutcome;

    /// <summary>It can mean several things.</summary>
    public sealed record Doubt(string Typed, string Why, IReadOnlyList<string> Meanings) : EntryOutcome;

    /// <summary>It can't be taken.</summary>
    public sealed record Fault(string Why, IReadOnlyList<string> WhatToDo) : EntryOutcome;
}
