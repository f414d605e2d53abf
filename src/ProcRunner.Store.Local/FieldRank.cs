namespace ProcRunner.Store.Local;

/// <summary>How well a text of a field fits what is looked for: as a whole, from the beginning of a word, or from within one.</summary>
internal static class FieldRank
{
    private const byte Beginning = 8;
    private const byte Within = 16;

    /// <summary>The rank of a text that holds what is looked for.</summary>
    /// <param name="field">The field.</param>
    /// <param name="text">The text.</param>
    /// <param name="length">How long what is looked for is.</param>
    /// <param name="at">Where in the text it begins first.</param>
    public static byte OfPart(JobField field, ReadOnlySpan<char> text, int length, int at)
    {
        byte best = Best(field);
        return text.Length == length ? best
            : at == 0 || !char.IsLetterOrDigit(text[at - 1]) ? (byte)(best - Beginning)
            : (byte)(best - Within);
    }

    /// <summary>The rank of any text of a field; 0 when it doesn't fit.</summary>
    /// <param name="field">The field.</param>
    /// <param name="text">The text.</param>
    /// <param name="wanted">What is looked for.</param>
    public static byte Of(JobField field, string text, string wanted)
    {
        int at = wanted.Length == 0 ? -1 : text.IndexOf(wanted, StringComparison.OrdinalIgnoreCase);
        if (field != JobField.Stamp)
        {
            return at < 0 ? (byte)0 : OfPart(field, text, wanted.Length, at);
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

    private static byte Best(JobField field) =>
        field switch
        {
            JobField.Part or JobField.Lot or JobField.Proof => 92,
            JobField.Customer => 88,
            JobField.Gauge or JobField.Cutter or JobField.Person => 78,
            JobField.Head => 66,
            _ => 60,
        };
}
