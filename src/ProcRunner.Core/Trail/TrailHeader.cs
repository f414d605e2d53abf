using System.Collections.Immutable;
using System.Security.Cryptography;

namespace ProcRunner.Trail;

/// <summary>
/// One line of a trail taken apart in place: every field checked, nothing built. <see cref="ToEntry"/> builds the entry of
/// a line that has no fault.
/// </summary>
internal ref struct TrailHeader
{
    private ReadOnlySpan<byte> _bench;
    private ReadOnlySpan<byte> _by;
    private ReadOnlySpan<byte> _events;
    private ReadOnlySpan<byte> _opens;
    private ReadOnlySpan<byte> _bookDigest;
    private long _bookSequence;
    private long _version;
    private DateTime _at;
    private TimeSpan _offset;
    private TrailFieldSet _seen;

    /// <summary>The entry's number.</summary>
    public long Sequence { get; private set; }

    /// <summary>Why the digest goes into the shop book.</summary>
    public Anchor Anchor { get; private set; }

    /// <summary>The trail's owner, raw.</summary>
    public ReadOnlySpan<byte> Of { get; private set; }

    /// <summary>The digest of the entry before, 64 digits.</summary>
    public ReadOnlySpan<byte> PreviousHex { get; private set; }

    /// <summary>How far the shop book had got.</summary>
    public readonly long BookSequence => _bookSequence;

    /// <summary>The digest of the shop book's last entry then.</summary>
    public readonly Digest BookDigest => Digest.Parse(_bookDigest) ?? Digest.Zero;

    /// <summary>The id of the person at work.</summary>
    public readonly string Operator => CanonicalEscape.Unescape(_by);

    /// <summary>What a first entry says for the store.</summary>
    public readonly JobOpening? Opening =>
        _opens.IsEmpty ? null : OpeningOf((Json.Map)CanonicalJson.ReadTrusted(_opens));

    /// <summary>Takes a line with its LF apart.</summary>
    /// <param name="line">The bytes, LF included.</param>
    /// <param name="hex">Gets the line's digest, 64 digits.</param>
    /// <param name="header">The fields.</param>
    /// <returns>What is wrong with the line by itself, or null.</returns>
    public static TrailFault? Read(ReadOnlySpan<byte> line, Span<byte> hex, out TrailHeader header)
    {
        header = default;
        if (line.IsEmpty || line[^1] != (byte)'\n')
        {
            return TrailFault.TornTail;
        }

        if (line.Length > TrailLine.MaxLength)
        {
            return TrailFault.TooLong;
        }

        int length = line.Length - TrailLine.TailLength;
        if (length < 2 || line[length] != (byte)'\t')
        {
            return TrailFault.NotAnEntry;
        }

        ReadOnlySpan<byte> json = line[..length];
        Span<byte> hash = stackalloc byte[32];
        SHA256.HashData(json, hash);
        Convert.TryToHexStringLower(hash, hex, out _);
        if (!hex.SequenceEqual(line[(length + 1)..^1]))
        {
            return CanonicalScanner.FirstByteNotUtf8(json) >= 0 ? TrailFault.NotUtf8 : TrailFault.Changed;
        }

        return header.ReadJson(json);
    }

    /// <summary>The entry that the line holds.</summary>
    public readonly TrailEntry ToEntry() =>
        new()
        {
            Of = CanonicalEscape.Unescape(Of),
            Sequence = Sequence,
            Previous = Digest.Parse(PreviousHex) ?? Digest.Zero,
            At = new(_at, TimeSpan.Zero),
            Offset = _offset,
            Operator = Operator,
            Bench = CanonicalEscape.Unescape(_bench),
            Book = new(_bookSequence, BookDigest),
            Anchor = Anchor,
            Opening = Opening,
            Events = [.. ((Json.List)CanonicalJson.ReadTrusted(_events)).Items.Cast<Json.Map>()],
        };

    private static JobOpening? OpeningOf(Json.Map map)
    {
        if (
            map.Items.Length != 2
            || map.TextAt(TrailKeys.Stamp) is not { } stamp
            || map[TrailKeys.Texts] is not Json.List list
        )
        {
            return null;
        }

        var texts = ImmutableArray.CreateBuilder<Digest>(list.Items.Length);
        foreach (Json item in list.Items)
        {
            if (item is not Json.Text text || Digest.Parse(text.Value) is not { } digest)
            {
                return null;
            }

            texts.Add(digest);
        }

        return new(stamp, texts.DrainToImmutable());
    }

    // One walk over the bytes does everything: what isn't canonical comes before what has the wrong shape, and a version
    // that isn't known before both a wrong and a right shape.
    private TrailFault? ReadJson(ReadOnlySpan<byte> json)
    {
        if (CanonicalScanner.FirstByteNotUtf8(json) >= 0)
        {
            return TrailFault.NotUtf8;
        }

        var scanner = new CanonicalScanner(json);
        if (!scanner.IsNext((byte)'{'))
        {
            return scanner.SkipValue(0) && scanner.AtEnd ? TrailFault.WrongShape : TrailFault.NotCanonical;
        }

        scanner.Skip((byte)'{');
        bool fits = true;
        ReadOnlySpan<byte> previous = default;
        for (bool first = true; !scanner.IsNext((byte)'}'); first = false)
        {
            if (!scanner.TrySkipKey(previous, first, out ReadOnlySpan<byte> key))
            {
                return TrailFault.NotCanonical;
            }

            previous = key;
            TrailFieldSet field = TrailFields.Of(key);
            int start = scanner.Position;
            bool isShaped = field != TrailFieldSet.Events || scanner.IsNext((byte)'[');
            if (
                !(
                    field == TrailFieldSet.Events && isShaped
                        ? scanner.SkipListOfMaps(out isShaped)
                        : scanner.SkipValue(1)
                )
            )
            {
                return TrailFault.NotCanonical;
            }

            fits &= isShaped && Take(field, json[start..scanner.Position]);
        }

        return !scanner.Skip((byte)'}') || !scanner.AtEnd ? TrailFault.NotCanonical
            : (_seen & TrailFieldSet.Version) == TrailFieldSet.None ? TrailFault.WrongShape
            : _version != TrailEntry.Version ? TrailFault.UnknownVersion
            : fits && IsComplete() ? null
            : TrailFault.WrongShape;
    }

    private readonly bool IsComplete() =>
        (_seen & TrailFieldSet.Required) == TrailFieldSet.Required
        && Sequence >= 1
        && !Of.IsEmpty
        && (_opens.IsEmpty || (Sequence == 1 && Opening is not null));

    private bool Take(TrailFieldSet field, ReadOnlySpan<byte> value)
    {
        _seen |= field;
        ReadOnlySpan<byte> text = value[0] == (byte)'"' ? value[1..^1] : default;
        bool isText = value[0] == (byte)'"';
        switch (field)
        {
            case TrailFieldSet.At:
                return isText && TrailTime.TryReadTime(text, out _at);
            case TrailFieldSet.Bench:
                _bench = text;
                return isText;
            case TrailFieldSet.Book:
                return TakeBook(value);
            case TrailFieldSet.By:
                _by = text;
                return isText;
            case TrailFieldSet.Events:
                _events = value;
                return true;
            case TrailFieldSet.Mark:
                return isText && TakeMark(text);
            case TrailFieldSet.Sequence:
                return TryWhole(value, out long sequence) && (Sequence = sequence) >= 1;
            case TrailFieldSet.Of:
                Of = text;
                return isText;
            case TrailFieldSet.Offset:
                return isText && TrailTime.TryReadOffset(text, out _offset);
            case TrailFieldSet.Opens:
                _opens = value;
                return value[0] == (byte)'{';
            case TrailFieldSet.Previous:
                PreviousHex = text;
                return Digest.Parse(text) is not null;
            case TrailFieldSet.Version:
                return TryWhole(value, out _version);
            default:
                return false;
        }
    }

    private bool TakeMark(ReadOnlySpan<byte> text)
    {
        Anchor = AnchorWord.Parse(CanonicalEscape.Unescape(text)) ?? Anchor.None;
        return Anchor != Anchor.None;
    }

    private bool TakeBook(ReadOnlySpan<byte> value)
    {
        // {"d":"<64 digits>","n":<number>}
        ReadOnlySpan<byte> open = "{\"d\":\""u8;
        ReadOnlySpan<byte> middle = "\",\"n\":"u8;
        int end = open.Length + Digest.HexLength;
        if (value.Length <= end + middle.Length || !value.StartsWith(open) || !value[end..].StartsWith(middle))
        {
            return false;
        }

        _bookDigest = value[open.Length..end];
        return Digest.Parse(_bookDigest) is not null
            && TryWhole(value[(end + middle.Length)..^1], out _bookSequence)
            && _bookSequence >= 0;
    }

    private static bool TryWhole(ReadOnlySpan<byte> value, out long whole)
    {
        var scanner = new CanonicalScanner(value);
        return scanner.TrySkipWhole(out whole) && scanner.AtEnd;
    }
}
