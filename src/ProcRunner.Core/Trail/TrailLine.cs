using System.Buffers;
using System.Collections.Immutable;
using System.Globalization;

namespace ProcRunner.Trail;

/// <summary>An entry as one line of bytes, and back.</summary>
public static class TrailLine
{
    /// <summary>The longest line, in bytes.</summary>
    public const int MaxLength = 8 * 1024 * 1024;

    /// <summary>TAB, digest and LF: what follows the JSON.</summary>
    internal const int TailLength = 1 + Digest.HexLength + 1;

    /// <summary>The line of an entry, its LF included.</summary>
    /// <exception cref="ArgumentException">The entry breaks a rule that its properties state, or is too long.</exception>
    public static byte[] Encode(TrailEntry entry) =>
        TryEncode(entry) ?? throw new ArgumentException("The entry is too long for a trail.", nameof(entry));

    /// <summary>The line of an entry, its LF included; null when it would be longer than a line may be.</summary>
    /// <exception cref="ArgumentException">The entry breaks a rule that its properties state.</exception>
    public static byte[]? TryEncode(TrailEntry entry)
    {
        ArgumentNullException.ThrowIfNull(entry);
        var buffer = new ArrayBufferWriter<byte>(1024);
        CanonicalJson.Write(ToJson(entry), buffer);
        var digest = Digest.Of(buffer.WrittenSpan);
        Span<byte> tail = buffer.GetSpan(TailLength);
        tail[0] = (byte)'\t';
        digest.WriteHex(tail[1..]);
        tail[TailLength - 1] = (byte)'\n';
        buffer.Advance(TailLength);
        return buffer.WrittenCount <= MaxLength ? buffer.WrittenSpan.ToArray() : null;
    }

    /// <summary>The digest that an encoded line carries.</summary>
    public static Digest DigestOf(ReadOnlySpan<byte> line) =>
        Digest.Parse(line[^(TailLength - 1)..^1]) ?? throw new ArgumentException("Not an encoded line.", nameof(line));

    /// <summary>Reads one line, its LF included. The place in a trail isn't looked at.</summary>
    /// <returns>The entry, or what is wrong with the line.</returns>
    public static (TrailEntry? Entry, TrailFault? Fault) Decode(ReadOnlySpan<byte> line)
    {
        Span<byte> hex = stackalloc byte[Digest.HexLength];
        TrailFault? fault = TrailHeader.Read(line, hex, out TrailHeader header);
        return fault is null ? (header.ToEntry(), null) : (null, fault);
    }

    private static Json.Map ToJson(TrailEntry entry)
    {
        bool offsetFits =
            entry.Offset.Duration() <= TimeSpan.FromHours(14) && entry.Offset.Ticks % TimeSpan.TicksPerMinute == 0;
        if (
            entry.Sequence < 1
            || entry.Book.Sequence < 0
            || entry.Of.Length == 0
            || entry.Events.IsDefaultOrEmpty
            || !offsetFits
        )
        {
            throw new ArgumentException("The entry breaks a rule of the trail.", nameof(entry));
        }

        var pairs = new List<(string, Json)>(11)
        {
            (
                TrailKeys.At,
                new Json.Text(
                    entry.At.UtcDateTime.ToString("yyyy-MM-dd'T'HH:mm:ss.fff'Z'", CultureInfo.InvariantCulture)
                )
            ),
            (TrailKeys.Bench, new Json.Text(entry.Bench)),
            (TrailKeys.Book, BookJson(entry.Book)),
            (TrailKeys.By, new Json.Text(entry.Operator)),
            (TrailKeys.Events, new Json.List(ImmutableArray<Json>.CastUp(entry.Events))),
            (TrailKeys.Sequence, new Json.Whole(entry.Sequence)),
            (TrailKeys.Of, new Json.Text(entry.Of)),
            (TrailKeys.Offset, new Json.Text(OffsetText(entry.Offset))),
            (TrailKeys.Previous, new Json.Text(entry.Previous.ToString())),
            (TrailKeys.Version, new Json.Whole(TrailEntry.Version)),
        };
        if (entry.Anchor != Anchor.None)
        {
            pairs.Add((TrailKeys.Mark, new Json.Text(AnchorWord.Of(entry.Anchor))));
        }

        if (entry.Opening is { } opening)
        {
            pairs.Add((TrailKeys.Opens, OpeningJson(opening)));
        }

        return new(System.Runtime.InteropServices.CollectionsMarshal.AsSpan(pairs));
    }

    private static Json.Map BookJson(BookMark book) =>
        Json.MapOf(
            (TrailKeys.BookDigest, new Json.Text(book.Digest.ToString())),
            (TrailKeys.BookSequence, new Json.Whole(book.Sequence))
        );

    private static Json.Map OpeningJson(JobOpening opening) =>
        Json.MapOf(
            (TrailKeys.Stamp, new Json.Text(opening.Stamp)),
            (
                TrailKeys.Texts,
                new Json.List([.. opening.Texts.Select(digest => (Json)new Json.Text(digest.ToString()))])
            )
        );

    private static string OffsetText(TimeSpan offset) =>
        (offset < TimeSpan.Zero ? "-" : "+") + offset.ToString("hh':'mm", CultureInfo.InvariantCulture);
}
