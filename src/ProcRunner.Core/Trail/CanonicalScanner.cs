using System.Buffers;
using System.Buffers.Text;
using System.Text;
using System.Text.Unicode;

namespace ProcRunner.Trail;

/// <summary>
/// Walks over canonical JSON in place and stops at the first byte that the canonical writer wouldn't have written. It
/// builds nothing and allocates nothing (but for keys with escapes), so that a long trail is checked about as fast as it
/// is hashed. Bytes it accepts are exactly those that come out again when the value is read and written.
/// </summary>
internal ref struct CanonicalScanner
{
    private static readonly SearchValues<byte> StringStops = SearchValues.Create(StopBytes());

    private readonly ReadOnlySpan<byte> _bytes;

    /// <summary>Starts at the first byte. The bytes must be UTF-8: see <see cref="FirstByteNotUtf8"/>.</summary>
    public CanonicalScanner(ReadOnlySpan<byte> utf8) => _bytes = utf8;

    /// <summary>The next byte to look at.</summary>
    public int Position { get; private set; }

    /// <summary>Why the last step failed.</summary>
    public JsonFault Fault { get; private set; }

    /// <summary>True when everything has been walked over.</summary>
    public readonly bool AtEnd => Position == _bytes.Length;

    /// <summary>The first byte that isn't UTF-8, or -1.</summary>
    public static int FirstByteNotUtf8(ReadOnlySpan<byte> bytes)
    {
        if (Utf8.IsValid(bytes))
        {
            return -1;
        }

        int at = 0;
        while (Rune.DecodeFromUtf8(bytes[at..], out _, out int used) == OperationStatus.Done)
        {
            at += used;
        }

        return at;
    }

    /// <summary>Steps over one value that stands inside <paramref name="depth"/> containers.</summary>
    public bool SkipValue(int depth)
    {
        if (AtEnd)
        {
            return Fail(JsonFaultKind.EndsTooSoon);
        }

        return _bytes[Position] switch
        {
            (byte)'"' => TrySkipString(out _),
            (byte)'{' => SkipMap(depth),
            (byte)'[' => SkipList(depth),
            (byte)'t' => SkipWord("true"u8),
            (byte)'f' => SkipWord("false"u8),
            (byte)'n' => SkipWord("null"u8),
            (byte)'-' or (>= (byte)'0' and <= (byte)'9') => TrySkipWhole(out _),
            _ => Fail(JsonFaultKind.Unexpected),
        };
    }

    /// <summary>Steps over a list inside one container.</summary>
    /// <param name="isShaped">True when it holds at least one map and nothing else.</param>
    public bool SkipListOfMaps(out bool isShaped)
    {
        Position++;
        isShaped = !IsNext((byte)']');
        for (bool first = true; !IsNext((byte)']'); first = false)
        {
            if (!first && !Skip((byte)','))
            {
                return false;
            }

            isShaped &= IsNext((byte)'{');
            if (!SkipValue(2))
            {
                return false;
            }
        }

        Position++;
        return true;
    }

    /// <summary>Steps over one byte that must stand here.</summary>
    public bool Skip(byte expected)
    {
        if (!IsNext(expected))
        {
            return Fail(AtEnd ? JsonFaultKind.EndsTooSoon : JsonFaultKind.Unexpected);
        }

        Position++;
        return true;
    }

    /// <summary>True when this byte comes next.</summary>
    public readonly bool IsNext(byte expected) => Position < _bytes.Length && _bytes[Position] == expected;

    /// <summary>
    /// Steps over a key and its colon inside a map. A comma is stepped over first unless this is the first key.
    /// </summary>
    /// <param name="previous">The key before, raw; empty with <paramref name="first"/>.</param>
    /// <param name="first">True for the first key.</param>
    /// <param name="key">The key's bytes between the quotes, raw.</param>
    public bool TrySkipKey(scoped ReadOnlySpan<byte> previous, bool first, out ReadOnlySpan<byte> key)
    {
        key = default;
        if (!first && !Skip((byte)','))
        {
            return false;
        }

        int start = Position;
        if (!IsNext((byte)'"'))
        {
            return Fail(AtEnd ? JsonFaultKind.EndsTooSoon : JsonFaultKind.Unexpected);
        }

        if (!TrySkipString(out key))
        {
            return false;
        }

        if (!first)
        {
            int order = CompareKeys(previous, key);
            if (order >= 0)
            {
                Position = start;
                return Fail(order == 0 ? JsonFaultKind.DuplicateKey : JsonFaultKind.KeysNotSorted);
            }
        }

        return Skip((byte)':');
    }

    /// <summary>Steps over a string; gives the bytes between its quotes, escapes and all.</summary>
    public bool TrySkipString(out ReadOnlySpan<byte> raw)
    {
        int start = Position + 1;
        int at = start;
        raw = default;
        while (true)
        {
            int stop = _bytes[at..].IndexOfAny(StringStops);
            if (stop < 0)
            {
                Position = _bytes.Length;
                return Fail(JsonFaultKind.EndsTooSoon);
            }

            at += stop;
            if (_bytes[at] == (byte)'"')
            {
                raw = _bytes[start..at];
                Position = at + 1;
                return true;
            }

            Position = at;
            if (_bytes[at] != (byte)'\\')
            {
                return Fail(JsonFaultKind.Unexpected);
            }

            int length = CanonicalEscape.Length(_bytes[at..]);
            if (length == 0)
            {
                return Fail(JsonFaultKind.WrongEscape);
            }

            at += length;
        }
    }

    /// <summary>Steps over a whole number below 2^53 in size.</summary>
    public bool TrySkipWhole(out long value)
    {
        value = 0;
        ReadOnlySpan<byte> rest = _bytes[Position..];
        int sign = rest.Length > 0 && rest[0] == (byte)'-' ? 1 : 0;
        int end = sign;
        while (end < rest.Length && rest[end] is >= (byte)'0' and <= (byte)'9')
        {
            end++;
        }

        bool leadingZero = end > sign + 1 && rest[sign] == (byte)'0';
        bool minusZero = sign == 1 && end == 2 && rest[1] == (byte)'0';
        if (end == sign || leadingZero || minusZero)
        {
            return Fail(end == rest.Length && end == sign ? JsonFaultKind.EndsTooSoon : JsonFaultKind.Unexpected);
        }

        if (end < rest.Length && rest[end] is (byte)'.' or (byte)'e' or (byte)'E')
        {
            return Fail(JsonFaultKind.NotAWholeNumber);
        }

        // 2^53 has 16 digits, so 16 digits always fit a long.
        if (end - sign > 16 || !Utf8Parser.TryParse(rest[..end], out value, out _) || !IsExact(value))
        {
            return Fail(JsonFaultKind.NumberTooLarge);
        }

        Position += end;
        return true;
    }

    private static bool IsExact(long value) => value is >= -Json.LargestWhole and <= Json.LargestWhole;

    private bool SkipMap(int depth)
    {
        if (depth >= Json.MaxDepth)
        {
            return Fail(JsonFaultKind.TooDeep);
        }

        Position++;
        ReadOnlySpan<byte> previous = default;
        for (bool first = true; !IsNext((byte)'}'); first = false)
        {
            if (!TrySkipKey(previous, first, out ReadOnlySpan<byte> key) || !SkipValue(depth + 1))
            {
                return false;
            }

            previous = key;
        }

        Position++;
        return true;
    }

    private bool SkipList(int depth)
    {
        if (depth >= Json.MaxDepth)
        {
            return Fail(JsonFaultKind.TooDeep);
        }

        Position++;
        for (bool first = true; !IsNext((byte)']'); first = false)
        {
            if ((!first && !Skip((byte)',')) || !SkipValue(depth + 1))
            {
                return false;
            }
        }

        Position++;
        return true;
    }

    private bool SkipWord(ReadOnlySpan<byte> word)
    {
        ReadOnlySpan<byte> rest = _bytes[Position..];
        int same = rest.CommonPrefixLength(word);
        Position += same;
        return same == word.Length || Fail(AtEnd ? JsonFaultKind.EndsTooSoon : JsonFaultKind.Unexpected);
    }

    private bool Fail(JsonFaultKind kind)
    {
        Fault = new(kind, Position);
        return false;
    }

    /// <summary>Orders two raw keys by the UTF-16 code units of what they stand for.</summary>
    private static int CompareKeys(ReadOnlySpan<byte> a, ReadOnlySpan<byte> b)
    {
        if (a.Contains((byte)'\\') || b.Contains((byte)'\\'))
        {
            return string.CompareOrdinal(CanonicalEscape.Unescape(a), CanonicalEscape.Unescape(b));
        }

        int same = a.CommonPrefixLength(b);
        return same == a.Length || same == b.Length ? a.Length - b.Length : Utf16Rank(a[same]) - Utf16Rank(b[same]);
    }

    // UTF-8 bytes sort as code points do. UTF-16 differs in one place: a surrogate pair (lead byte F0 to F4) sorts before
    // U+E000 to U+FFFF (lead bytes EE and EF).
    private static int Utf16Rank(byte unit) =>
        unit < 0xEE ? unit
        : unit < 0xF0 ? unit + 0x10
        : unit - 2;

    private static byte[] StopBytes()
    {
        byte[] stops = new byte[34];
        for (byte i = 0; i < 0x20; i++)
        {
            stops[i] = i;
        }

        stops[32] = (byte)'"';
        stops[33] = (byte)'\\';
        return stops;
    }
}
