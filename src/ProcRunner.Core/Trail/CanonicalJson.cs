using System.Buffers;
using System.Buffers.Text;
using System.Collections.Immutable;
using System.Text;

namespace ProcRunner.Trail;

/// <summary>
/// Canonical JSON as RFC 8785 defines it: no white space, keys sorted by UTF-16 code units, one way to write each string
/// and number. Equal values give equal bytes, so that a digest of the bytes is a digest of the value.
/// </summary>
public static class CanonicalJson
{
    private static readonly SearchValues<char> Escaped = SearchValues.Create(
        "\"\\\0\u0001\u0002\u0003\u0004\u0005\u0006\u0007\b\t\n\u000b\f\r\u000e\u000f\u0010\u0011\u0012\u0013\u0014\u0015"
            + "\u0016\u0017\u0018\u0019\u001a\u001b\u001c\u001d\u001e\u001f"
    );

    /// <summary>Writes a value.</summary>
    /// <exception cref="ArgumentException">More than <see cref="Json.MaxDepth"/> containers inside each other.</exception>
    public static byte[] Write(Json value)
    {
        var buffer = new ArrayBufferWriter<byte>(512);
        Write(value, buffer);
        return buffer.WrittenSpan.ToArray();
    }

    /// <summary>Writes a value to a buffer.</summary>
    /// <exception cref="ArgumentException">More than <see cref="Json.MaxDepth"/> containers inside each other.</exception>
    public static void Write(Json value, IBufferWriter<byte> output)
    {
        ArgumentNullException.ThrowIfNull(output);
        Write(value, output, 0);
    }

    /// <summary>Reads one value that fills the bytes; they must be what <see cref="Write(Json)"/> writes for it.</summary>
    public static JsonReading Read(ReadOnlySpan<byte> utf8)
    {
        int bad = CanonicalScanner.FirstByteNotUtf8(utf8);
        if (bad >= 0)
        {
            return new(null, new(JsonFaultKind.NotUtf8, bad));
        }

        var scanner = new CanonicalScanner(utf8);
        if (!scanner.SkipValue(0))
        {
            return new(null, scanner.Fault);
        }

        return scanner.AtEnd
            ? new(ReadTrusted(utf8), null)
            : new JsonReading(null, new(JsonFaultKind.MoreAfterEnd, scanner.Position));
    }

    /// <summary>Builds the value of bytes that a scanner has walked over.</summary>
    internal static Json ReadTrusted(ReadOnlySpan<byte> utf8)
    {
        int at = 0;
        return Build(utf8, ref at);
    }

    private static Json Build(ReadOnlySpan<byte> utf8, ref int at)
    {
        switch (utf8[at])
        {
            case (byte)'"':
                return new Json.Text(BuildString(utf8, ref at));
            case (byte)'{':
                return BuildMap(utf8, ref at);
            case (byte)'[':
                return BuildList(utf8, ref at);
            case (byte)'t':
                at += 4;
                return new Json.Flag(true);
            case (byte)'f':
                at += 5;
                return new Json.Flag(false);
            case (byte)'n':
                at += 4;
                return Json.Nothing;
            default:
                var scanner = new CanonicalScanner(utf8[at..]);
                scanner.TrySkipWhole(out long number);
                at += scanner.Position;
                return new Json.Whole(number);
        }
    }

    private static string BuildString(ReadOnlySpan<byte> utf8, ref int at)
    {
        var scanner = new CanonicalScanner(utf8[at..]);
        scanner.TrySkipString(out ReadOnlySpan<byte> raw);
        at += scanner.Position;
        return CanonicalEscape.Unescape(raw);
    }

    private static Json.Map BuildMap(ReadOnlySpan<byte> utf8, ref int at)
    {
        var pairs = new List<(string, Json)>();
        for (at++; utf8[at] != (byte)'}'; )
        {
            at += utf8[at] == (byte)',' ? 1 : 0;
            string key = BuildString(utf8, ref at);
            at++;
            pairs.Add((key, Build(utf8, ref at)));
        }

        at++;
        return new(System.Runtime.InteropServices.CollectionsMarshal.AsSpan(pairs));
    }

    private static Json.List BuildList(ReadOnlySpan<byte> utf8, ref int at)
    {
        var items = ImmutableArray.CreateBuilder<Json>();
        for (at++; utf8[at] != (byte)']'; )
        {
            at += utf8[at] == (byte)',' ? 1 : 0;
            items.Add(Build(utf8, ref at));
        }

        at++;
        return new(items.DrainToImmutable());
    }

    private static void Write(Json value, IBufferWriter<byte> output, int depth)
    {
        if (depth >= Json.MaxDepth && value is Json.Map or Json.List)
        {
            throw new ArgumentException("Nested too deep to be written.", nameof(value));
        }

        switch (value)
        {
            case Json.Text text:
                WriteString(text.Value, output);
                break;
            case Json.Whole whole:
                WriteWhole(whole.Value, output);
                break;
            case Json.Flag flag:
                output.Write(flag.Value ? "true"u8 : "false"u8);
                break;
            case Json.List list:
                WriteList(list, output, depth);
                break;
            case Json.Map map:
                WriteMap(map, output, depth);
                break;
            default:
                output.Write("null"u8);
                break;
        }
    }

    private static void WriteList(Json.List list, IBufferWriter<byte> output, int depth)
    {
        output.Write("["u8);
        for (int i = 0; i < list.Items.Length; i++)
        {
            output.Write(i == 0 ? ""u8 : ","u8);
            Write(list.Items[i], output, depth + 1);
        }

        output.Write("]"u8);
    }

    private static void WriteMap(Json.Map map, IBufferWriter<byte> output, int depth)
    {
        output.Write("{"u8);
        for (int i = 0; i < map.Items.Length; i++)
        {
            output.Write(i == 0 ? ""u8 : ","u8);
            WriteString(map.Items[i].Key, output);
            output.Write(":"u8);
            Write(map.Items[i].Value, output, depth + 1);
        }

        output.Write("}"u8);
    }

    private static void WriteWhole(long value, IBufferWriter<byte> output)
    {
        Utf8Formatter.TryFormat(value, output.GetSpan(20), out int written);
        output.Advance(written);
    }

    private static void WriteString(string text, IBufferWriter<byte> output)
    {
        output.Write("\""u8);
        ReadOnlySpan<char> rest = text;
        int stop;
        while ((stop = rest.IndexOfAny(Escaped)) >= 0)
        {
            Encoding.UTF8.GetBytes(rest[..stop], output);
            WriteEscape(rest[stop], output);
            rest = rest[(stop + 1)..];
        }

        Encoding.UTF8.GetBytes(rest, output);
        output.Write("\""u8);
    }

    private static void WriteEscape(char character, IBufferWriter<byte> output)
    {
        byte letter = CanonicalEscape.ShortForm(character);
        if (letter != 0)
        {
            output.Write([(byte)'\\', letter]);
        }
        else
        {
            byte high = (byte)('0' + (character >> 4));
            output.Write([.. "\\u00"u8, high, "0123456789abcdef"u8[character & 15]]);
        }
    }
}
