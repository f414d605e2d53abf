using System.Text;

namespace ProcRunner.Trail;

/// <summary>
/// Checks a trail from its first byte on, in bounded memory, and stops at the first entry that doesn't hold. The bytes
/// prove that nothing inside was changed; whether the end was cut off shows only against the shop book.
/// </summary>
public sealed class TrailCheck
{
    private readonly Action<TrailEntry, Digest>? _sink;
    private readonly byte[] _previous = [.. Enumerable.Repeat((byte)'0', Digest.HexLength)];
    private readonly byte[] _hex = new byte[Digest.HexLength];
    private byte[] _of;
    private long _entries;
    private long _offset;
    private bool _closed;
    private JobOpening? _opening;
    private readonly List<AnchoredEntry> _anchored = [];
    private readonly List<BookMark> _books = [];

    /// <summary>Prepares a check.</summary>
    /// <param name="of">Whose trail it must be; null takes the first entry's word.</param>
    /// <param name="sink">Gets each entry that holds, with its digest.</param>
    public TrailCheck(string? of = null, Action<TrailEntry, Digest>? sink = null)
    {
        _of = of is null ? [] : Encoding.UTF8.GetBytes(of);
        _sink = sink;
    }

    /// <summary>Checks a whole trail in memory.</summary>
    public static TrailVerdict Verify(
        ReadOnlySpan<byte> trail,
        string? of = null,
        Action<TrailEntry, Digest>? sink = null
    )
    {
        var check = new TrailCheck(of, sink);
        return check.TakeLines(trail, out int used) ?? check.Finish(trail.Length - used);
    }

    /// <summary>Checks a whole trail from a stream.</summary>
    public static TrailVerdict Verify(Stream trail, string? of = null, Action<TrailEntry, Digest>? sink = null) =>
        new TrailCheck(of, sink).Run(trail);

    /// <summary>Checks a whole trail from a stream and keeps what a store needs to know of it.</summary>
    public static TrailSummary Summarise(Stream trail, string of)
    {
        var check = new TrailCheck(of);
        TrailVerdict verdict = check.Run(trail);
        Digest last = Digest.Parse(check._previous) ?? Digest.Zero;
        return new(
            verdict,
            check._entries,
            last,
            check._offset,
            check._opening,
            [.. check._anchored],
            [.. check._books]
        );
    }

    private TrailVerdict Run(Stream trail)
    {
        ArgumentNullException.ThrowIfNull(trail);
        byte[] buffer = new byte[256 * 1024];
        int held = 0;
        int read;
        while ((read = trail.Read(buffer, held, buffer.Length - held)) > 0)
        {
            held += read;
            if (TakeLines(buffer.AsSpan(0, held), out int used) is { } broken)
            {
                return broken;
            }

            held -= used;
            if (held > TrailLine.MaxLength)
            {
                return Broken(TrailFault.TooLong);
            }

            buffer.AsSpan(used, held).CopyTo(buffer);
            if (held == buffer.Length)
            {
                Array.Resize(ref buffer, buffer.Length * 2);
            }
        }

        return Finish(held);
    }

    private TrailVerdict.Broken? TakeLines(ReadOnlySpan<byte> bytes, out int used)
    {
        used = 0;
        int length;
        while ((length = bytes[used..].IndexOf((byte)'\n') + 1) > 0)
        {
            if (TakeLine(bytes.Slice(used, length)) is { } fault)
            {
                return Broken(fault);
            }

            used += length;
            _offset += length;
        }

        return null;
    }

    private TrailFault? TakeLine(ReadOnlySpan<byte> line)
    {
        TrailFault? fault = TrailHeader.Read(line, _hex, out TrailHeader header);
        if (fault is not null)
        {
            return fault;
        }

        if (_of.Length == 0)
        {
            _of = header.Of.ToArray();
        }

        long expected = _entries + 1;
        fault =
            _closed ? TrailFault.AfterCloseOut
            : !header.Of.SequenceEqual(_of) ? TrailFault.AnotherTrail
            : header.Sequence > expected ? TrailFault.Missing
            : header.Sequence < expected ? TrailFault.OutOfOrder
            : !header.PreviousHex.SequenceEqual(_previous) ? TrailFault.Unchained
            : null;
        if (fault is null)
        {
            _hex.CopyTo(_previous.AsSpan());
            _entries = expected;
            _closed = header.Anchor == Anchor.ClosedOut;
            Note(header);
            _sink?.Invoke(header.ToEntry(), Digest.Parse(_hex) ?? Digest.Zero);
        }

        return fault;
    }

    private void Note(TrailHeader header)
    {
        if (header.Sequence == 1)
        {
            _opening = header.Opening;
        }

        if (header.Anchor != Anchor.None)
        {
            _anchored.Add(new(header.Sequence, Digest.Parse(_hex) ?? Digest.Zero, header.Anchor, header.Operator));
        }

        if (_books.Count == 0 || _books[^1].Sequence != header.BookSequence || _books[^1].Digest != header.BookDigest)
        {
            _books.Add(new(header.BookSequence, header.BookDigest));
        }
    }

    private TrailVerdict Finish(int left)
    {
        if (left > 0)
        {
            return Broken(TrailFault.TornTail);
        }

        return _entries == 0
            ? Broken(TrailFault.Empty)
            : new TrailVerdict.Holds(_entries, Digest.Parse(_previous) ?? Digest.Zero);
    }

    private TrailVerdict.Broken Broken(TrailFault fault) => new(_entries + 1, fault, _offset);
}
