namespace ProcRunner.Trail;

/// <summary>How an anchor is written in a trail and in the shop book. The words are part of the format.</summary>
public static class AnchorWord
{
    private static readonly (Anchor Anchor, string Word)[] Table =
    [
        (Anchor.Opened, "opened"),
        (Anchor.SignedOff, "signed off"),
        (Anchor.HandedOver, "handed over"),
        (Anchor.ClosedOut, "closed out"),
    ];

    /// <summary>The written word; empty for <see cref="Anchor.None"/>.</summary>
    public static string Of(Anchor anchor)
    {
        foreach ((Anchor known, string word) in Table)
        {
            if (known == anchor)
            {
                return word;
            }
        }

        return "";
    }

    /// <summary>The anchor of a written word, null when there is none.</summary>
    public static Anchor? Parse(ReadOnlySpan<char> word)
    {
        foreach ((Anchor anchor, string known) in Table)
        {
            if (word.SequenceEqual(known))
            {
                return anchor;
            }
        }

        return null;
    }
}
