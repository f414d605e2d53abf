namespace ProcRunner.Store.Local;

/// <summary>
/// How like a stamp is to what was read off the iron. Half of them are read through grease and rust, so that O may be 0, I or 7
/// may be 1, S may be 5, B may be 8, and one character may be wrong, missing, too many, or changed with its neighbour.
/// </summary>
internal static class StampLikeness
{
    public const int Same = 100;
    public const int Begins = 90;
    public const int Holds = 84;
    public const int Folded = 80;
    public const int FoldedHolds = 74;
    public const int OneOff = 70;

    // A short stamp is one character off from too many.
    private const int ShortestForOneOff = 4;

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

    /// <summary>How well a stamp fits; 0 for not at all.</summary>
    /// <param name="stamp">The stamp, in capitals.</param>
    /// <param name="folded">The stamp, folded.</param>
    /// <param name="wanted">What was read, in capitals.</param>
    /// <param name="wantedFolded">What was read, folded.</param>
    public static int Of(string stamp, string folded, string wanted, string wantedFolded)
    {
        int holds = stamp.IndexOf(wanted, StringComparison.Ordinal);
        if (holds >= 0)
        {
            return stamp.Length == wanted.Length ? Same
                : holds == 0 ? Begins
                : Holds;
        }

        return wantedFolded.Length == 0 ? 0
            : folded == wantedFolded ? Folded
            : wantedFolded.Length >= 3 && folded.Contains(wantedFolded, StringComparison.Ordinal) ? FoldedHolds
            : wantedFolded.Length >= ShortestForOneOff && IsOneOff(folded, wantedFolded) ? OneOff
            : 0;
    }

    /// <summary>True when one character is wrong, missing or too many, or two neighbours are changed round.</summary>
    internal static bool IsOneOff(string a, string b)
    {
        if (Math.Abs(a.Length - b.Length) > 1)
        {
            return false;
        }

        int start = a.AsSpan().CommonPrefixLength(b);
        ReadOnlySpan<char> restA = a.AsSpan(start);
        ReadOnlySpan<char> restB = b.AsSpan(start);
        if (restA.Length != restB.Length)
        {
            return restA.Length > restB.Length ? restA[1..].SequenceEqual(restB) : restB[1..].SequenceEqual(restA);
        }

        return restA.Length < 2
            || restA[1..].SequenceEqual(restB[1..])
            || (restA[0] == restB[1] && restA[1] == restB[0] && restA[2..].SequenceEqual(restB[2..]));
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
