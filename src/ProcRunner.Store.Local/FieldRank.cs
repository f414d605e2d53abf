namespace ProcRunner.Store.Local;

/// <summary>How well a text of a field fits what is looked for: as a whole, from the beginning of a word, or from within one.</summary>
internal static class FieldRank
{
    private const byte Beginning = 8;
    private const byte Within = 16;

    // Of a proof code, a row of chance letters and figures, a short piece stands in most and says nothing.
    private const int ShortestOfProof = 4;

    /// <summary>True when a text is long enough to be looked for in a field.</summary>
    /// <param name="field">The field.</param>
    /// <param name="wanted">What is looked for.</param>
    public static bool IsWorthLooking(JobField field, string wanted) =>
        field != JobField.Proof || wanted.Length >= ShortestOfProof;

    /// <summary>The best rank that a text of a field can have.</summary>
    /// <param name="field">The field.</param>
    /// <param name="isWhole">False when none of its texts is exactly what is looked for.</param>
    public static byte Best(JobField field, bool isWhole) =>
        isWhole ? Best(field)
        : field == JobField.Stamp ? StampLikeness.Begins
        : OfPart(Best(field), isWhole: false, beginsWord: true);

    /// <summary>The best rank that a text of a field can have.</summary>
    public static byte Best(JobField field) =>
        field switch
        {
            JobField.Stamp => StampLikeness.Same,
            JobField.Part or JobField.Lot or JobField.Proof => 92,
            JobField.Customer => 88,
            JobField.Gauge or JobField.Cutter or JobField.Person => 78,
            JobField.Head => 66,
            _ => 60,
        };

    /// <summary>True when a text of a field can have this rank.</summary>
    public static bool IsOf(JobField field, byte rank) =>
        field == JobField.Stamp
            ? rank is StampLikeness.Same or StampLikeness.Begins or StampLikeness.Holds || StampLikeness.IsLike(rank)
            : Best(field) - rank is 0 or Beginning or Within;

    /// <summary>The rank of a text that holds what is looked for; not for stamps.</summary>
    /// <param name="best">The best rank of its field.</param>
    /// <param name="isWhole">True when the text is nothing else.</param>
    /// <param name="beginsWord">True when a word of the text begins there.</param>
    public static byte OfPart(byte best, bool isWhole, bool beginsWord) =>
        isWhole ? best
        : beginsWord ? (byte)(best - Beginning)
        : (byte)(best - Within);

    /// <summary>The rank of any text of a field; 0 when it doesn't fit.</summary>
    /// <param name="field">The field.</param>
    /// <param name="text">The text.</param>
    /// <param name="wanted">What is looked for.</param>
    public static byte Of(JobField field, string text, string wanted)
    {
        int at =
            wanted.Length == 0 || !IsWorthLooking(field, wanted)
                ? -1
                : text.IndexOf(wanted, StringComparison.OrdinalIgnoreCase);
        if (field != JobField.Stamp)
        {
            return at < 0
                ? (byte)0
                : OfPart(Best(field), text.Length == wanted.Length, at == 0 || !char.IsLetterOrDigit(text[at - 1]));
        }

        if (at >= 0)
        {
            return StampLikeness.OfPart(text, wanted, at);
        }

        string folded = StampLikeness.Fold(text);
        string foldedWanted = StampLikeness.Fold(wanted);
        bool holds =
            foldedWanted.Length >= StampLikeness.ShortestPart
            && folded.Contains(foldedWanted, StringComparison.Ordinal);
        return holds ? StampLikeness.OfFolded(text, folded, wanted, foldedWanted)
            : foldedWanted.Length >= StampLikeness.ShortestForOneOff && StampLikeness.IsOneOff(folded, foldedWanted)
                ? StampLikeness.OneOff
            : (byte)0;
    }
}
