using System.Text;

namespace ProcRunner.Quantities;

/// <summary>The ways to read a line with commas, as lines without any.</summary>
internal static class CommaForms
{
    /// <summary>Commas as decimal points, between thousands, as decimal points after grouped thousands, and between values.</summary>
    public static IReadOnlyList<string> Of(string line)
    {
        string?[] forms =
        [
            line.Replace(',', '.'),
            Rewrite(line, number => Ungroup(number, ',')),
            Rewrite(line, FromPointGroups),
            line.Replace(',', ';'),
        ];
        return [.. forms.OfType<string>()];
    }

    // Rewrites each run of digits, points and commas that holds a comma; null if one of them has no such form.
    private static string? Rewrite(string line, Func<string, string?> form)
    {
        StringBuilder result = new();
        int at = 0;
        while (at < line.Length)
        {
            int end = at;
            while (end < line.Length && (char.IsAsciiDigit(line[end]) || line[end] is '.' or ','))
            {
                end++;
            }

            if (end == at)
            {
                result.Append(line[at++]);
                continue;
            }

            string run = line[at..end];
            if ((run.Contains(',') ? form(run) : run) is not { } rewritten)
            {
                return null;
            }

            result.Append(rewritten);
            at = end;
        }

        return result.ToString();
    }

    // 1.234,5 as it is written where the comma is the decimal point.
    private static string? FromPointGroups(string number)
    {
        int comma = number.IndexOf(',');
        string places = number[(comma + 1)..];
        return
            places.Length > 0
            && places.All(char.IsAsciiDigit)
            && number[..comma].Contains('.')
            && Ungroup(number[..comma], '.') is { } whole
            ? $"{whole}.{places}"
            : null;
    }

    // 1,234.5 without the marks between its thousands; null unless they stand where such marks do.
    private static string? Ungroup(string number, char mark)
    {
        int point = mark == '.' ? -1 : number.IndexOf('.');
        string whole = point < 0 ? number : number[..point];
        string places = point < 0 ? "" : number[point..];
        string[] groups = whole.Split(mark);
        bool isGrouped =
            groups[0].Length is >= 1 and <= 3
            && groups[0][0] != '0'
            && groups.Skip(1).All(group => group.Length == 3)
            && groups.All(group => group.All(char.IsAsciiDigit))
            && !places.Contains(mark);
        return isGrouped ? string.Concat(groups) + places : null;
    }
}
