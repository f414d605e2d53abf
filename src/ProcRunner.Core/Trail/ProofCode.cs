using System.Globalization;

namespace ProcRunner.Trail;

/// <summary>
/// The short code of a closed-out job, for paper: the first 120 bits of the closing entry's digest as 24 characters of
/// base32 and one check character, in five groups of five. The closing entry holds the digest of the entry before it, and
/// with it the whole trail.
/// </summary>
/// <remarks>
/// The letters are those of RFC 4648, so that any base32 tool makes the code; they leave out 0, 1, 8 and 9, and three
/// of these can be read as what they look like. The check character is a sum over GF(32), the field with
/// x^5 + x^2 + 1, of each character times a power of x of its own: one wrong character and any two that changed places give
/// another sum. Two trails with one code: nobody finds a second trail to a given code (2^120 tries); whoever writes
/// both could (2^60).
/// </remarks>
public sealed record ProofCode
{
    /// <summary>Characters of a code, hyphens left out.</summary>
    public const int Length = 25;

    private const int Group = 5;
    private const int Bytes = 15;

    // x^5 + x^2 + 1, primitive over GF(2): x has 31 different powers, more than a code has places.
    private const int Polynomial = 0b100101;

    private ProofCode(string letters) => Letters = letters;

    /// <summary>The 25 characters in capitals without hyphens.</summary>
    public string Letters { get; }

    /// <summary>The code of a trail whose closing entry has this digest.</summary>
    public static ProofCode Of(Digest closing)
    {
        Span<byte> bytes = stackalloc byte[32];
        closing.CopyTo(bytes);
        string body = Base32.Encode(bytes[..Bytes]);
        return new(body + CheckOf(body));
    }

    /// <summary>
    /// Reads a code as someone typed it: any case, spaces and hyphens anywhere, 0 for O, 1 for I, 8 for B.
    /// </summary>
    /// <param name="text">What was typed.</param>
    /// <param name="fault">What is wrong with it, in words; empty when nothing is.</param>
    /// <returns>The code, or null.</returns>
    public static ProofCode? TryRead(string? text, out string fault)
    {
        Span<char> letters = stackalloc char[Length];
        int count = 0;
        foreach (char typed in text ?? "")
        {
            if (typed is '-' || char.IsWhiteSpace(typed))
            {
                continue;
            }

            char letter = Meant(typed);
            if (Base32.ValueOf(letter) < 0)
            {
                fault = $"{Shown(typed)} stands in no proof code: they have the letters A to Z and the digits 2 to 7.";
                return null;
            }

            if (count < Length)
            {
                letters[count] = letter;
            }

            count++;
        }

        fault =
            count != Length
                ? string.Create(
                    CultureInfo.InvariantCulture,
                    $"A proof code has {Length} letters and digits; this has {count}."
                )
            : CheckOf(letters[..^1]) != letters[^1]
                ? "The check character doesn't fit: one character is wrong, or two have changed places."
            : "";
        return fault.Length == 0 ? new(new string(letters)) : null;
    }

    /// <summary>True when the digest is that of this code's closing entry.</summary>
    public bool Matches(Digest closing) => Of(closing) == this;

    /// <summary>The code in five groups of five with hyphens between.</summary>
    public override string ToString() =>
        string.Join('-', Enumerable.Range(0, Length / Group).Select(i => Letters.Substring(i * Group, Group)));

    // Horner's rule: each character is added, then the sum goes up by one power of x.
    private static char CheckOf(ReadOnlySpan<char> body)
    {
        int sum = 0;
        foreach (char letter in body)
        {
            sum = (sum ^ Base32.ValueOf(letter)) << 1;
            sum = sum >= 32 ? sum ^ Polynomial : sum;
        }

        return Base32.Letters[sum];
    }

    // Codes are written in capitals, so that what looks like 1 is I and never L.
    private static char Meant(char typed) =>
        typed switch
        {
            '0' => 'O',
            '1' => 'I',
            '8' => 'B',
            >= 'a' and <= 'z' => (char)(typed - 'a' + 'A'),
            _ => typed,
        };

    private static string Shown(char typed) =>
        typed is > ' ' and <= '~'
            ? $"\"{typed}\""
            : string.Create(CultureInfo.InvariantCulture, $"The character U+{(int)typed:X4}");
}
