namespace ProcRunner.Store.Local;

/// <summary>
/// How like a stamp is to what was read off the iron. Half of them are read through grease and rust, so that O may be 0, I or 7
/// may be 1, S may be 5, B may be 8, and one character may be wrong, missing, too many, or changed with its neighbour.
/// </summary>
internal static class StampLikeness
{
    public const byte Same = 100;
    public const byte Begins = 90;
    public const byte Holds = 84;

    // What is only like a stamp has an odd rank, and nothing else has.
    public const byte FoldedOnce = 83;
    public const byte Folded = 81;
    public const byte FoldedHolds = 75;
    public const byte OneOff = 71;

    // A short stamp is one character off from too many.
    public const int ShortestForOneOff = 4;

    /// <summary>Of two folded characters every stamp holds some.</summary>
    public const int ShortestPart = 3;

    /// <summary>True for the rank of what is only like a stamp.</summary>
    public static bool IsLike(int rank) => rank % 2 == 1;

    /// <summary>The stamp in the letters and figures that are told apart even on greasy iron; marks between them left out.</summary>
    public static string Fold(string stamp) =>
        string.Create(
            stamp.Count(char.IsLetterOrDigit),
            stamp,
            static (span, from) =>
            {
                int at = 0;
                foreach (char c in from)
                {
                    if (char.IsLetterOrDigit(c))
                    {
                        span[at++] = Fold(char.ToUpperInvariant(c));
                    }
                }
            }
        );

    /// <summary>How well a stamp fits that holds what was read.</summary>
    /// <param name="stamp">The stamp.</param>
    /// <param name="wanted">What was read.</param>
    /// <param name="at">Where it begins in the stamp.</param>
    public static byte OfPart(ReadOnlySpan<char> stamp, string wanted, int at) =>
        stamp.Length == wanted.Length ? Same
        : at == 0 ? Begins
        : Holds;

    /// <summary>How well a stamp fits that holds what was read once both are folded; one character taken for another is better than two.</summary>
    /// <param name="stamp">The stamp, in capitals or not.</param>
    /// <param name="folded">The stamp, folded.</param>
    /// <param name="wanted">What was read.</param>
    /// <param name="foldedWanted">What was read, folded.</param>
    public static byte OfFolded(
        ReadOnlySpan<char> stamp,
        ReadOnlySpan<char> folded,
        ReadOnlySpan<char> wanted,
        ReadOnlySpan<char> foldedWanted
    ) =>
        folded.Length != foldedWanted.Length ? FoldedHolds
        : Confused(stamp, wanted) <= 1 ? FoldedOnce
        : Folded;

    /// <summary>True when one character is wrong, missing or too many, or two neighbours are changed round.</summary>
    public static bool IsOneOff(ReadOnlySpan<char> a, ReadOnlySpan<char> b)
    {
        if (Math.Abs(a.Length - b.Length) > 1)
        {
            return false;
        }

        // One slip leaves the first character or the last; most of a hundred thousand stamps go no further than here.
        if (a.Length > 2 && b.Length > 2 && a[0] != b[0] && a[^1] != b[^1])
        {
            return false;
        }

        int start = a.CommonPrefixLength(b);
        ReadOnlySpan<char> restA = a[start..];
        ReadOnlySpan<char> restB = b[start..];
        if (restA.Length != restB.Length)
        {
            return restA.Length > restB.Length ? restA[1..].SequenceEqual(restB) : restB[1..].SequenceEqual(restA);
        }

        return restA.Length < 2
            || restA[1..].SequenceEqual(restB[1..])
            || (restA[0] == restB[1] && restA[1] == restB[0] && restA[2..].SequenceEqual(restB[2..]));
    }

    // Of two that fold alike, the characters that differ all the same; marks between them don't count.
    private static int Confused(ReadOnlySpan<char> a, ReadOnlySpan<char> b)
    {
        int confused = 0;
        int i = 0;
        foreach (char c in a)
        {
            if (!char.IsLetterOrDigit(c))
            {
                continue;
            }

            while (i < b.Length && !char.IsLetterOrDigit(b[i]))
            {
                i++;
            }

            confused += i < b.Length && char.ToUpperInvariant(b[i]) == char.ToUpperInvariant(c) ? 0 : 1;
            i++;
        }

        return confused;
    }

    private static char Fold(char c) =>
        c switch
        {
            'O' => '0',
            'I' or '7' => '1',
            'S' => '5',
            'B' => '8',
            _ => c,
        };
}
