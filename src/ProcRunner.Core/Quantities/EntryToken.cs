using System.Buffers;

namespace ProcRunner.Quantities;

/// <summary>A piece of a typed entry: something that begins as a number does, or anything else, which must be a unit.</summary>
/// <param name="IsNumber">Whether it is the former.</param>
/// <param name="Text">The piece.</param>
/// <param name="Start">Where it begins in the line.</param>
/// <param name="AfterSemicolon">Whether a semicolon parts it from the piece before.</param>
internal readonly record struct EntryToken(bool IsNumber, string Text, int Start, bool AfterSemicolon)
{
    private const string NumberStart = "0123456789.+-";
    private static readonly SearchValues<char> Separators = SearchValues.Create(" \t;");
    private static readonly SearchValues<char> NumberBody = SearchValues.Create("0123456789.+-/");

    // These marks stand between a number and the next one without a space: 45°30'.
    private const string MarkUnits = "\u00B0'\"\u2032\u2033";

    /// <summary>Where it ends in the line.</summary>
    public int End => Start + Text.Length;

    /// <summary>Whether it names this unit.</summary>
    public bool IsUnit(Unit unit) => !IsNumber && Units.Find(Text) == unit;

    /// <summary>Cuts a line into pieces; null if a semicolon has nothing on one side.</summary>
    public static IReadOnlyList<EntryToken>? Split(string line)
    {
        List<EntryToken> tokens = [];
        bool afterSemicolon = false;
        int at = 0;
        while (at < line.Length)
        {
            if (line[at] == ';')
            {
                if (afterSemicolon || tokens.Count == 0)
                {
                    return null;
                }

                afterSemicolon = true;
                at++;
            }
            else if (Separators.Contains(line[at]))
            {
                at++;
            }
            else
            {
                (bool isNumber, int end) = Measure(line, at);
                tokens.Add(new EntryToken(isNumber, line[at..end], at, afterSemicolon));
                afterSemicolon = false;
                at = end;
            }
        }

        return afterSemicolon ? null : tokens;
    }

    private static (bool IsNumber, int End) Measure(string line, int at)
    {
        int runEnd = EndOf(line, at, line.AsSpan(at).IndexOfAny(Separators));
        bool runIsUnit = Units.Find(line.AsSpan(at, runEnd - at)) is not null;
        if (runIsUnit || !NumberStart.Contains(line[at]))
        {
            return (false, !runIsUnit && MarkUnits.Contains(line[at]) ? at + 1 : runEnd);
        }

        return (true, EndOf(line, at, line.AsSpan(at).IndexOfAnyExcept(NumberBody)));
    }

    private static int EndOf(string line, int at, int length) => length < 0 ? line.Length : at + length;
}
