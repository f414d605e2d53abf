using System.Collections.Immutable;

namespace ProcRunner.Store.Local;

/// <summary>What is looked for. Everything that is given must hold; nothing given means every job.</summary>
public sealed record JobQuery
{
    /// <summary>Looked for in every field: as a whole, or where nothing holds it, each word in whichever field has it. May be empty.</summary>
    public string Text { get; init; } = "";

    /// <summary>Looked for in one field.</summary>
    public ImmutableArray<(JobField Field, string Text)> In { get; init; } = [];

    /// <summary>Jobs in which something happened at this moment or later.</summary>
    public DateTimeOffset? From { get; init; }

    /// <summary>Jobs that were opened before this moment.</summary>
    public DateTimeOffset? Before { get; init; }
}
