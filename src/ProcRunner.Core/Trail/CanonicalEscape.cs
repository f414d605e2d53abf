using System.Text;

namespace ProcRunner.Trail;

/// <summary>
/// The escapes that RFC 8785, section 3.2.2.2, writes: two characters where JSON has a short form, else <c>\u00xx</c> in
/// small letters, and only for control characters, the quote and the backslash.
/// </summary>
internal static class CanonicalEscape
{
    private const string ShortForms = "\"\"\\\\b\bt\tn\nf\fr\r";

    /// <summary>The short form's letter for a character, or 0.</summary>
    public static byte ShortForm(char character)
    {
        for (int i = 1; i < ShortForms.Length; i += 2)
        {
            if (ShortForms[i] == character)
            {
                return (byte)ShortForms[i - 1];
            }
        }

        return 0;
    }

    /// <summary>How many bytes the canonical escape at the start takes, 0 when there is none.</summary>
    public static int Length(ReadOnlySpan<byte> bytes)
    {
        if (bytes.Length < 2)
        {
            return 0;
        }

        if (bytes[1] != (byte)'u')
        {
            return Meaning(bytes[1]) >= 0 ? 2 : 0;
        }

        bool control = bytes.Length >= 6 && bytes[2..4].SequenceEqual("00"u8) && bytes[4] is (byte)'0' or (byte)'1';
        int low = control ? HexDigit(bytes[5]) : -1;
        if (low < 0)
        {
            return 0;
        }

        char character = (char)(((bytes[4] - '0') * 16) + low);
        return ShortForm(character) == 0 ? 6 : 0;
    }

    /// <summary>The text that raw bytes between quotes stand for. The bytes must be canonical.</summary>
    public static string Unescape(ReadOnlySpan<byte> raw)
    {
        int at = raw.IndexOf((byte)'\\');
        if (at < 0)
        {
            return Encoding.UTF8.GetString(raw);
        }

        var built = new StringBuilder(raw.Length);
        while (at >= 0)
        {
            built.Append(Encoding.UTF8.GetString(raw[..at]));
            raw = raw[at..];
            bool isShort = raw[1] != (byte)'u';
            built.Append(isShort ? (char)Meaning(raw[1]) : (char)(((raw[4] - '0') * 16) + HexDigit(raw[5])));
            raw = raw[(isShort ? 2 : 6)..];
            at = raw.IndexOf((byte)'\\');
        }

        return built.Append(Encoding.UTF8.GetString(raw)).ToString();
    }

    private static int Meaning(byte letter)
    {
        for (int i = 0; i < ShortForms.Length; i += 2)
        {
            if (ShortForms[i] == letter)
            {
                return ShortForms[i + 1];
            }
        }

        return -1;
    }

    private static int HexDigit(byte digit) =>
        digit switch
        {
            >= (byte)'0' and <= (byte)'9' => digit - '0',
            >= (byte)'a' and <= (byte)'f' => digit - 'a' + 10,
            _ => -1,
        };
}
