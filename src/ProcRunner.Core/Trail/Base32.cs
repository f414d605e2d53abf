using System.Buffers;

namespace ProcRunner.Trail;

/// <summary>Base32 with the letters of RFC 4648 section 6, without padding: five bits a character, the highest first.</summary>
internal static class Base32
{
    /// <summary>The characters in the order of their values: A is 0, 7 is 31.</summary>
    public const string Letters = "ABCDEFGHIJKLMNOPQRSTUVWXYZ234567";

    /// <summary>The bytes as text; a last character that the bytes don't fill is filled with zero bits.</summary>
    public static string Encode(ReadOnlySpan<byte> bytes)
    {
        var text = new ArrayBufferWriter<char>();
        int bits = 0;
        int waiting = 0;
        foreach (byte b in bytes)
        {
            waiting = (waiting << 8) | b;
            bits += 8;
            for (; bits >= 5; bits -= 5)
            {
                text.Write([Letters[(waiting >> (bits - 5)) & 31]]);
            }

            waiting &= (1 << bits) - 1;
        }

        if (bits > 0)
        {
            text.Write([Letters[(waiting << (5 - bits)) & 31]]);
        }

        return new(text.WrittenSpan);
    }

    /// <summary>The value of a character, from 0 to 31; -1 when it isn't one of <see cref="Letters"/>.</summary>
    public static int ValueOf(char letter) => Letters.IndexOf(letter, StringComparison.Ordinal);
}
