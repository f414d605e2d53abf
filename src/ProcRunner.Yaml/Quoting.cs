using ProcRunner.Formulas;

namespace ProcRunner.Yaml;

/// <summary>Texts of a file inside a message.</summary>
internal static class Quoting
{
    private const int Longest = 60;
    private const int MostCompared = 1000;

    /// <summary>In quotes, cut after 60 characters.</summary>
    public static string Of(string text) => $"'{Shorten(text, Longest)}'";

    /// <summary>Cut with an ellipsis after so many characters, never inside a pair of surrogates.</summary>
    public static string Shorten(string text, int longest)
    {
        if (text.Length <= longest)
        {
            return text;
        }

        int end = char.IsHighSurrogate(text[longest - 2]) ? longest - 2 : longest - 1;
        return string.Concat(text.AsSpan(0, end), "\u2026");
    }

    /// <summary><c>a, b or c</c>.</summary>
    public static string AnyOf(IReadOnlyCollection<string> words) =>
        words.Count < 2 ? string.Concat(words) : $"{string.Join(", ", words.Take(words.Count - 1))} or {words.Last()}";

    /// <summary>What was probably meant, or what there is: <c>did you mean 'seat'?</c></summary>
    public static string Hint(string word, IReadOnlyCollection<string> known)
    {
        if (known.Count > MostCompared)
        {
            return "correct it";
        }

        IReadOnlyList<string> near = NearNames.Of(Shorten(word, Longest), known);
        return (near.Count, known.Count) switch
        {
            (> 0, _) => $"did you mean {AnyOf([.. near.Select(Of)])}?",
            (_, 0) => "there is none",
            (_, <= 16) => $"known are {string.Join(", ", known)}",
            _ => "correct it",
        };
    }
}
