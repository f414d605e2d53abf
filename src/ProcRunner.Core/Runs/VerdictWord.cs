namespace ProcRunner.Runs;

/// <summary>How verdicts are written in a trail.</summary>
public static class VerdictWord
{
    private static readonly (Verdict Verdict, string Word)[] All =
    [
        (Verdict.Unjudged, "unjudged"),
        (Verdict.In, "in"),
        (Verdict.Out, "out"),
        (Verdict.Short, "short"),
    ];

    /// <summary>The word of a verdict.</summary>
    public static string Of(Verdict verdict) => Array.Find(All, w => w.Verdict == verdict).Word;

    /// <summary>The verdict of a word, or null.</summary>
    public static Verdict? Find(string word)
    {
        int index = Array.FindIndex(All, w => w.Word == word);
        return index < 0 ? null : All[index].Verdict;
    }
}
