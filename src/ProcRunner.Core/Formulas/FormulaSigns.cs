using System.Collections.Frozen;

namespace ProcRunner.Formulas;

/// <summary>The table of signs and words: those that are taken, and those left out on purpose with what to write instead.</summary>
internal static class FormulaSigns
{
    /// <summary>Operators between two values, loosest first; those of one row bind alike and go from left to right.</summary>
    public static readonly (string[] Signs, string Meaning)[] Between =
    [
        (["or"], "yes if either side is; the right side is not looked at when the left one is yes"),
        (["and"], "yes if both sides are; the right side is not looked at when the left one is no"),
        (
            ["=", "<>", "<", "<=", ">", ">="],
            "equal, not equal, below, not above, above, not below: two quantities of one dimension; texts and yes-or-no are only equal or not"
        ),
        (["+", "-"], "sum, difference: two quantities of one dimension"),
        (["*", "/"], "product, quotient: any two quantities; the units go along"),
    ];

    /// <summary>Signs and words of other languages, and what to say to them; longer ones come before their beginnings.</summary>
    private static readonly (string Sign, string Say)[] LeftOutSigns =
    [
        ("**", "'**' is left out: write pow(x, 2) for a power"),
        ("==", "write '=' for equal"),
        ("!=", "write '<>' for not equal"),
        ("=>", "write '>=' for not below"),
        ("=<", "write '<=' for not above"),
        ("><", "write '<>' for not equal"),
        ("&&", "write 'and'"),
        ("||", "write 'or'"),
        ("<<", "bits are left out: multiply instead"),
        (">>", "bits are left out: divide instead"),
        ("??", "write else(x, fallback) for a value that may not be known yet"),
        ("//", "remarks are left out of formulas: a single '/' divides"),
        ("/*", "remarks are left out of formulas"),
        ("^", "'^' is left out: write pow(x, 2) for a power"),
        ("&", "bits are left out: write 'and' between two conditions"),
        ("|", "bits are left out: write 'or' between two conditions"),
        ("~", "bits are left out: write 'not' before a condition"),
        ("!", "write 'not' before a condition"),
        ("%", "'%' is left out: a percentage stands in quotes, '5 %'"),
        ("?", "write if(condition, value, other value)"),
        (":", "write if(condition, value, other value)"),
        (";", "values of a function are separated by ','"),
        ("#", "dates are left out of formulas"),
        ("{", "a name stands in square brackets: [name]"),
        ("}", "a name stands in square brackets: [name]"),
        ("\"", "a text or quantity stands in single quotes: '0.010 in'"),
        ("\u201C", "a text or quantity stands in single quotes: '0.010 in'"),
        ("\u201D", "a text or quantity stands in single quotes: '0.010 in'"),
        ("\u2018", "a text or quantity stands in straight single quotes: '0.010 in'"),
        ("\u2019", "a text or quantity stands in straight single quotes: '0.010 in'"),
        ("\u2212", "write '-' for minus"),
        ("\u2013", "write '-' for minus"),
        ("\u00D7", "write '*' for times"),
        ("\u00F7", "write '/' for divided by"),
        ("\u2264", "write '<=' for not above"),
        ("\u2265", "write '>=' for not below"),
        ("\u2260", "write '<>' for not equal"),
        ("\u221A", "write sqrt(x) for the root"),
        ("\u00B2", "write pow(x, 2) for the square"),
        ("\u00B3", "write pow(x, 3) for the cube"),
    ];

    private static readonly FrozenDictionary<string, string> LeftOutWords = new Dictionary<string, string>(
        StringComparer.OrdinalIgnoreCase
    )
    {
        ["true"] = "write 'yes'",
        ["false"] = "write 'no'",
        ["in"] = "'in' is left out: write [x] = 'a' or [x] = 'b'",
        ["like"] = "'like' is left out: a text is equal to another or it isn't",
        ["is"] = "write '=' for equal",
        ["null"] = "write known([name]) to ask whether a value is there",
        ["mod"] = "'mod' is left out: write x - downto(x, step)",
        ["xor"] = "write '<>' between two conditions",
        ["pi"] = "'pi' is left out: the functions that need it have it",
    }.ToFrozenDictionary(StringComparer.OrdinalIgnoreCase);

    // Longest first, so that '<=' is not read as '<'.
    private static readonly string[] Signs =
    [
        .. Between
            .SelectMany(row => row.Signs)
            .Where(sign => !char.IsLetter(sign[0]))
            .OrderByDescending(sign => sign.Length),
    ];

    /// <summary>What to say to a sign that is left out and stands at the start of the text; null if none does.</summary>
    public static (string Sign, string Say)? LeftOutAt(ReadOnlySpan<char> text)
    {
        foreach ((string sign, string say) in LeftOutSigns)
        {
            if (text.StartsWith(sign, StringComparison.Ordinal))
            {
                return (sign, say);
            }
        }

        return null;
    }

    /// <summary>The operator sign at the start of the text; null if there is none.</summary>
    public static string? SignAt(ReadOnlySpan<char> text)
    {
        foreach (string sign in Signs)
        {
            if (text.StartsWith(sign, StringComparison.Ordinal))
            {
                return sign;
            }
        }

        return null;
    }

    /// <summary>What to say to a word that is left out; null if it isn't one.</summary>
    public static string? LeftOutWord(string word) => LeftOutWords.GetValueOrDefault(word);
}
