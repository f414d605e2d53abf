using System.Collections.Immutable;

namespace ProcRunner.Trail;

/// <summary>
/// One entry of a trail: what one command brought about, with who, where, when, and what went before. In a file it is one
/// line: canonical JSON, TAB, the SHA-256 of exactly the bytes before the TAB, LF.
/// </summary>
public sealed record TrailEntry
{
    /// <summary>The version that this program writes.</summary>
    public const int Version = 1;

    /// <summary>Whose trail this is: a job id, or <see cref="JobId.Shop"/>.</summary>
    public required string Of { get; init; }

    /// <summary>The entry's number, from 1.</summary>
    public required long Sequence { get; init; }

    /// <summary>The digest of the entry before; zero in the first entry.</summary>
    public required Digest Previous { get; init; }

    /// <summary>UTC time, to the millisecond; finer parts aren't written.</summary>
    public required DateTimeOffset At { get; init; }

    /// <summary>Local time's offset from UTC, in whole minutes, at most 14 hours.</summary>
    public required TimeSpan Offset { get; init; }

    /// <summary>The id of the person at work, empty when nobody is.</summary>
    public required string Operator { get; init; }

    /// <summary>The bench that wrote the entry.</summary>
    public required string Bench { get; init; }

    /// <summary>How far the shop book had got.</summary>
    public required BookMark Book { get; init; }

    /// <summary>Why the digest goes into the shop book as well.</summary>
    public Anchor Anchor { get; init; }

    /// <summary>In a job's first entry: its stamp and pinned texts. Null in every other entry.</summary>
    public JobOpening? Opening { get; init; }

    /// <summary>What happened, at least one event.</summary>
    public required ImmutableArray<Json.Map> Events { get; init; }

    /// <summary>True when the other entry says the same.</summary>
    public bool Equals(TrailEntry? other) =>
        other is not null && TrailLine.Encode(this).AsSpan().SequenceEqual(TrailLine.Encode(other));

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Of, Sequence, Previous);
}
