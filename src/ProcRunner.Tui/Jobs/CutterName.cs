namespace ProcRunner.Tui.Jobs;

/// <summary>The cutter that a remark at a set-up names: "done, pilot 8.5, cutter K4 edge 2" names K4.</summary>
internal static class CutterName
{
    private const string Word = "cutter";
    private static readonly System.Buffers.SearchValues<char> Ends = System.Buffers.SearchValues.Create(" ,;:/()");

    /// <summary>The name after the word "cutter", or null. A name has a figure in it: "cutter edge" names none.</summary>
    public static string? In(string remark)
    {
        for (int from = 0; ; )
        {
            int at = remark.IndexOf(Word, from, StringComparison.OrdinalIgnoreCase);
            if (at < 0)
            {
                return null;
            }

            from = at + Word.Length;
            ReadOnlySpan<char> rest = remark.AsSpan(from).TrimStart(" :");
            int end = rest.IndexOfAny(Ends);
            ReadOnlySpan<char> name = (end < 0 ? rest : rest[..end]).TrimEnd('.');
            bool apart = from < remark.Length && remark[from] is ' ' or ':';
            if (apart && name.IndexOfAnyInRange('0', '9') >= 0)
            {
                return name.ToString().ToUpperInvariant();
            }
        }
    }
}
