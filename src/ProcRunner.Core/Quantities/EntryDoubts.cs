using ProcRunner.Text;

namespace ProcRunner.Quantities;

/// <summary>The forms that people write in more than one way; for each the line is rewritten once for every way.</summary>
internal static class EntryDoubts
{
    /// <summary>What is doubtful about the number at this place of the line; null if nothing is.</summary>
    public static EntryReading.Ambiguous? About(string line, IReadOnlyList<EntryToken> tokens, int at) =>
        AboutPoints(line, tokens[at])
        ?? AboutDash(line, tokens[at])
        ?? AboutSpace(line, tokens, at)
        ?? AboutMinutes(line, tokens, at)
        ?? AboutDegrees(line, tokens, at);

    // 0.0.52 was 0.052 or 0.52; two readings may also have lost the space between them.
    private static EntryReading.Ambiguous? AboutPoints(string line, EntryToken token)
    {
        if (token.Text.AsSpan().Count('.') < 2)
        {
            return null;
        }

        int[] points = [.. Enumerable.Range(0, token.Text.Length).Where(i => token.Text[i] == '.')];
        bool isPlain = !token.Text.AsSpan(1).ContainsAny("+-/") && token.Text.Any(char.IsAsciiDigit);
        if (!isPlain)
        {
            return null;
        }

        IEnumerable<string> texts = points.Select(kept =>
            string.Concat(token.Text.Where((c, i) => c != '.' || i == kept))
        );
        if (points.Length == 2)
        {
            texts = texts.Append($"{token.Text[..points[1]]}; {token.Text[points[1]..]}");
        }

        return new EntryReading.Ambiguous(
            $"{SafeText.Show(token.Text, EntryText.MostShown)} has more than one point.",
            [.. texts.Select(text => Replace(line, token.Start, token.End, text))]
        );
    }

    // 1-17/32, as it is often written.
    private static EntryReading.Ambiguous? AboutDash(string line, EntryToken token)
    {
        int dash = token.Text.IndexOf('-', 1);
        return dash > 0 && IsMixed(token.Text[..dash], token.Text[(dash + 1)..])
            ? new EntryReading.Ambiguous(
                $"{token.Text} is read as a mixed fraction only when it is typed with a plus.",
                [Replace(line, token.Start + dash, token.Start + dash + 1, "+")]
            )
            : null;
    }

    // 1 17/32: one value or two.
    private static EntryReading.Ambiguous? AboutSpace(string line, IReadOnlyList<EntryToken> tokens, int at)
    {
        EntryToken token = tokens[at];
        if (at + 1 >= tokens.Count || tokens[at + 1] is not { IsNumber: true, AfterSemicolon: false } next)
        {
            return null;
        }

        string fraction = next.Text.TrimStart('+');
        return IsMixed(token.Text, fraction)
            ? new EntryReading.Ambiguous(
                $"{token.Text} {next.Text} can be one mixed fraction or two values.",
                [
                    Replace(line, token.Start, next.End, $"{token.Text}+{fraction}"),
                    Replace(line, token.Start, next.End, $"{token.Text}; {fraction}"),
                ]
            )
            : null;
    }

    // 44°53 without the mark of minutes.
    private static EntryReading.Ambiguous? AboutMinutes(string line, IReadOnlyList<EntryToken> tokens, int at)
    {
        bool isDegreesAndNumber =
            at + 2 < tokens.Count
            && tokens[at + 1].IsUnit(Units.Degree)
            && tokens[at + 2] is { IsNumber: true, AfterSemicolon: false }
            && (at + 3 >= tokens.Count || tokens[at + 3].IsNumber || tokens[at + 3].AfterSemicolon);
        if (
            !isDegreesAndNumber
            || EntryNumber.Read(tokens[at].Text).Number is not { IsWhole: true }
            || EntryNumber.Read(tokens[at + 2].Text).Number is not { IsMinutes: true }
        )
        {
            return null;
        }

        EntryToken second = tokens[at + 2];
        return new EntryReading.Ambiguous(
            $"{second.Text} after the degrees can be minutes or another value.",
            [
                Replace(line, tokens[at + 1].Start, second.End, $" deg {second.Text} min"),
                Replace(line, tokens[at + 1].Start, second.End, $" deg; {second.Text}"),
            ]
        );
    }

    // 44 53' without the mark of degrees.
    private static EntryReading.Ambiguous? AboutDegrees(string line, IReadOnlyList<EntryToken> tokens, int at)
    {
        if (at + 2 >= tokens.Count || !tokens[at + 1].IsNumber || !tokens[at + 2].IsUnit(Units.ArcMinute))
        {
            return null;
        }

        EntryToken first = tokens[at];
        string second = tokens[at + 1].Text;
        return new EntryReading.Ambiguous(
            $"{first.Text} before the minutes can be degrees of the same angle, or another value.",
            [
                Replace(line, first.Start, tokens[at + 2].End, $"{first.Text} deg {second} min"),
                Replace(line, first.Start, tokens[at + 2].End, $"{first.Text} deg; {second} arcmin"),
                Replace(line, first.Start, tokens[at + 2].End, $"{first.Text} arcmin; {second} arcmin"),
            ]
        );
    }

    private static bool IsMixed(string whole, string fraction) =>
        !whole.Contains('.')
        && EntryNumber.Read(whole).Number is { IsFraction: false }
        && fraction.Split('/') is [{ Length: > 0 } above, { Length: > 0 } below]
        && above.All(char.IsAsciiDigit)
        && below.All(char.IsAsciiDigit);

    private static string Replace(string line, int start, int end, string text) =>
        string.Concat(line.AsSpan(0, start), text, line.AsSpan(end));
}
