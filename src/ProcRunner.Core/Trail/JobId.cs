using System.Buffers;

namespace ProcRunner.Trail;

/// <summary>
/// The name of a job's files: 128 random bits as 26 letters and digits of RFC 4648's base32 alphabet, in small letters.
/// It is safe as a file name on every platform and never follows from the stamp.
/// </summary>
public static class JobId
{
    /// <summary>The scope of the shop book, which is a trail too.</summary>
    public const string Shop = "shop";

    private const string Alphabet = "abcdefghijklmnopqrstuvwxyz234567";
    private static readonly SearchValues<char> Letters = SearchValues.Create(Alphabet);

    private const int Length = 26;

    /// <summary>A new id from 16 random bytes.</summary>
    public static string New(EntropySource entropy)
    {
        ArgumentNullException.ThrowIfNull(entropy);
        Span<byte> random = stackalloc byte[16];
        entropy(random);
        Span<char> text = stackalloc char[Length];
        for (int i = 0; i < Length; i++)
        {
            int bits = 0;
            for (int bit = i * 5; bit < (i * 5) + 5; bit++)
            {
                // RFC 4648, section 6: zero bits fill up the last letter.
                int set = bit < 128 ? (random[bit / 8] >> (7 - (bit % 8))) & 1 : 0;
                bits = (bits << 1) | set;
            }

            text[i] = Alphabet[bits];
        }

        return new(text);
    }

    /// <summary>True when the text can be a job id.</summary>
    public static bool IsValid(ReadOnlySpan<char> text) => text.Length == Length && !text.ContainsAnyExcept(Letters);
}
