namespace ProcRunner.Trail;

/// <summary>
/// The keys of a trail entry, version 1, in their canonical order. They are a format: an entry with any other key isn't a
/// version 1 entry.
/// </summary>
public static class TrailKeys
{
    /// <summary>UTC time, always as <c>2026-11-25T01:02:03.456Z</c>.</summary>
    public const string At = "at";

    /// <summary>The bench that wrote the entry.</summary>
    public const string Bench = "bench";

    /// <summary>How far the shop book had got: a map of <see cref="BookDigest"/> and <see cref="BookSequence"/>.</summary>
    public const string Book = "book";

    /// <summary>Inside <see cref="Book"/>: the digest of the book's last entry.</summary>
    public const string BookDigest = "d";

    /// <summary>Inside <see cref="Book"/>: the number of the book's last entry.</summary>
    public const string BookSequence = "n";

    /// <summary>The id of the person at work, empty when nobody is.</summary>
    public const string By = "by";

    /// <summary>The list of events, each a map; all happened or none.</summary>
    public const string Events = "ev";

    /// <summary>Why the entry's digest stands in the shop book too; left out when it doesn't.</summary>
    public const string Mark = "mark";

    /// <summary>The number of the entry in its trail, from 1.</summary>
    public const string Sequence = "n";

    /// <summary>Whose trail this is: a job id, or <c>shop</c> for the shop book.</summary>
    public const string Of = "of";

    /// <summary>The local time's offset from UTC, as <c>+01:00</c>.</summary>
    public const string Offset = "off";

    /// <summary>In a job's first entry only: a map of <see cref="Stamp"/> and <see cref="Texts"/>.</summary>
    public const string Opens = "opens";

    /// <summary>Inside <see cref="Opens"/>: the job's stamp.</summary>
    public const string Stamp = "stamp";

    /// <summary>Inside <see cref="Opens"/>: the digests of the pinned texts.</summary>
    public const string Texts = "texts";

    /// <summary>The digest of the entry before; 64 zeros in the first entry.</summary>
    public const string Previous = "prev";

    /// <summary>The version of this format.</summary>
    public const string Version = "v";
}
