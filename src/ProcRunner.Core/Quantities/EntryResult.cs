namespace ProcRunner.Quantities;

/// <summary>What became of a typed entry: taken, questioned because it can mean several things, or unreadable.</summary>
public abstract record EntryResult
{
    private EntryResult() { }

    /// <summary>Read without doubt.</summary>
    /// <param name="Values">One or more, in the order typed, each in the unit typed or else the field's.</param>
    /// <param name="Typed">The text as typed, without the spaces and line end around it.</param>
    public sealed record Taken(IReadOnlyList<Quantity> Values, string Typed) : EntryResult;

    /// <summary>It can mean several things, or one that is hard to believe.</summary>
    /// <param name="Why">What is doubtful.</param>
    /// <param name="Meanings">
    /// One or more, likeliest first; each is a whole entry that is taken without question when typed back.
    /// </param>
    public sealed record Questioned(string Why, IReadOnlyList<string> Meanings) : EntryResult;

    /// <summary>It can't be read.</summary>
    /// <param name="WhatWasRead">What was found, control characters made visible.</param>
    /// <param name="Expected">What the field waits for.</param>
    /// <param name="WhatToDo">How to type it.</param>
    public sealed record Unreadable(string WhatWasRead, string Expected, string WhatToDo) : EntryResult;
}
