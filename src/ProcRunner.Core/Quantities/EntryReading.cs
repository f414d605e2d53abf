namespace ProcRunner.Quantities;

/// <summary>What the words of an entry say, before anyone asks whether it is believable.</summary>
internal abstract record EntryReading
{
    private EntryReading() { }

    /// <summary>One reading or more.</summary>
    public sealed record Clear(IReadOnlyList<EntryValue> Values) : EntryReading;

    /// <summary>It can be read in several ways.</summary>
    /// <param name="Why">What is doubtful.</param>
    /// <param name="Rewrites">The whole line as it would be typed for each; some may not fit the field.</param>
    public sealed record Ambiguous(string Why, IReadOnlyList<string> Rewrites) : EntryReading;

    /// <summary>It can't be read.</summary>
    /// <param name="WhatWasRead">What was found.</param>
    /// <param name="WhatToDo">How to type it.</param>
    public sealed record Faulty(string WhatWasRead, string WhatToDo) : EntryReading;
}
