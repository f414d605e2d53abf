using ProcRunner.Procedures;

namespace ProcRunner.Runs;

/// <summary>How the kinds of disposition are written in a trail.</summary>
public static class WayWord
{
    private static readonly (WayKind Kind, string Word)[] All =
    [
        (WayKind.Again, "again"),
        (WayKind.Rework, "rework"),
        (WayKind.Replace, "replace"),
        (WayKind.Concession, "concession"),
        (WayKind.Scrap, "scrap"),
    ];

    /// <summary>The word of a kind.</summary>
    public static string Of(WayKind kind) => Array.Find(All, w => w.Kind == kind).Word;

    /// <summary>The kind of a word, or null.</summary>
    public static WayKind? Find(string word)
    {
        int index = Array.FindIndex(All, w => w.Word == word);
        return index < 0 ? null : All[index].Kind;
    }
}
