using System.Buffers;
using System.Globalization;
using System.Text;
using System.Text.Unicode;
using ProcRunner.Problems;

namespace ProcRunner.Yaml.Trees;

/// <summary>Bytes to text: small enough, UTF-8, and with nothing in it that can't be seen.</summary>
internal static class SourceText
{
    private static readonly byte[] ByteOrderMark = [0xEF, 0xBB, 0xBF];

    /// <summary>Characters that hide, or that editors and parsers count differently as line ends.</summary>
    private static readonly SearchValues<char> Hidden = SearchValues.Create([
        .. Enumerable.Range(0, 0x20).Select(code => (char)code).Except(['\t', '\n', '\r']),
        .. Enumerable.Range(0x7F, 0xA0 - 0x7F).Select(code => (char)code),
        '\u061C', // the direction marks of Unicode Standard Annex 9
        '\u200E',
        '\u200F',
        '\u2028',
        '\u2029',
        .. Enumerable.Range(0x202A, 5).Select(code => (char)code),
        .. Enumerable.Range(0x2066, 4).Select(code => (char)code),
        '\uFEFF',
    ]);

    /// <summary>The text, or null with a problem.</summary>
    public static string? Read(ReadOnlySpan<byte> bytes, ProblemLog log)
    {
        var whole = new Place(log.File, 0, 0);
        if (bytes.Length > FileLimits.Bytes)
        {
            log.Add("PR-Y01", whole, TooLarge(bytes.Length));
            return null;
        }

        if (bytes.StartsWith(ByteOrderMark))
        {
            bytes = bytes[ByteOrderMark.Length..];
        }

        if (!Utf8.IsValid(bytes))
        {
            int line = 1 + bytes[..ValidLength(bytes)].Count((byte)'\n');
            log.Add("PR-Y02", new Place(log.File, line, 1), "this line isn't UTF-8 text; save the file as UTF-8");
            return null;
        }

        string text = Encoding.UTF8.GetString(bytes);
        int at = text.AsSpan().IndexOfAny(Hidden);
        if (at >= 0)
        {
            int line = 1 + text.AsSpan(0, at).Count('\n');
            int column = at - text.AsSpan(0, at).LastIndexOf('\n');
            log.Add("PR-Y03", new Place(log.File, line, column), Unseen(text[at]));
            return null;
        }

        return text;
    }

    /// <summary>Whether a text holds none of the characters that are refused; escapes can bring them in.</summary>
    public static bool IsVisible(string text) => !text.AsSpan().ContainsAny(Hidden) && Utf16IsWhole(text);

    public static string TooLarge(long bytes) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"the file has {bytes} bytes; at most {FileLimits.Bytes} are read: split it"
        );

    private static string Unseen(char hidden) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"the character U+{(int)hidden:X4} can't be seen and isn't allowed; delete it"
        );

    private static bool Utf16IsWhole(string text)
    {
        ReadOnlySpan<char> rest = text;
        int at;
        while ((at = rest.IndexOfAnyInRange('\uD800', '\uDFFF')) >= 0)
        {
            if (Rune.DecodeFromUtf16(rest[at..], out _, out int used) != OperationStatus.Done)
            {
                return false;
            }

            rest = rest[(at + used)..];
        }

        return true;
    }

    private static int ValidLength(ReadOnlySpan<byte> bytes)
    {
        int length = 0;
        while (Rune.DecodeFromUtf8(bytes[length..], out _, out int used) == OperationStatus.Done)
        {
            length += used;
        }

        return length;
    }
}
