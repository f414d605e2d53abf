using System.Globalization;

namespace ProcRunner.Tui.Tests.Training;

/// <summary>
/// Reads the drawing of a gauge as somebody does who knows the real one: it finds lines, numbers and hands by where they are
/// drawn and knows nothing of how the drawing came about. How each is read is common practice, no source.
/// </summary>
internal static class FaceReader
{
    /// <summary>An outside micrometer in inches: sleeve in tenths and lines of 0.025, thimble of 25 lines, vernier of ten.</summary>
    public static decimal InchMicrometer(IReadOnlyList<string> face)
    {
        int index = IndexOfLongLine(face);
        int edge = face[index].IndexOf('|', StringComparison.Ordinal);
        string lines = face[index - 1][..edge];
        int tenth = lines.LastIndexOf('|');
        decimal frame = Number(face[0].Split(' ')[1]);
        decimal sleeve =
            (NumberAt(face[index - 2][..edge], tenth) * 0.1m) + (lines[tenth..].Count(c => c == '\'') * 0.025m);
        return frame + sleeve + (Thimble(face, index, edge, 25) * 0.001m) + (Vernier(face) * 0.0001m);
    }

    /// <summary>The same in millimetres: numbers every five, halves under the long line, thimble of 50 lines.</summary>
    public static decimal MetricMicrometer(IReadOnlyList<string> face, bool hasVernier)
    {
        int index = IndexOfLongLine(face);
        int edge = face[index].IndexOf('|', StringComparison.Ordinal);
        string over = face[index - 1][..edge];
        int five = over.LastIndexOf('|');
        int last = over.LastIndexOfAny(['|', '\'']);
        decimal whole = NumberAt(face[index - 2], five) + over[five..].Count(c => c == '\'');
        decimal half = face[index + 1][..edge].LastIndexOf('\'') > last ? 0.5m : 0;
        decimal frame = Number(face[0].Split(' ')[1]);
        return frame
            + whole
            + half
            + (Thimble(face, index, edge, 50) * 0.01m)
            + (hasVernier ? Vernier(face) * 0.001m : 0);
    }

    /// <summary>A dial with its counter of turns, each with a hand.</summary>
    public static decimal Dial(IReadOnlyList<string> face, decimal turn, decimal mark)
    {
        int small = face.ToList().FindIndex(line => line.StartsWith("turns", StringComparison.Ordinal));
        int hand = face[small + 1].IndexOf('^', StringComparison.Ordinal);
        Mark[] numbers = [.. Numbers(face[small])];
        bool isBack = numbers[0].Value > numbers[^1].Value;
        decimal turns = isBack ? numbers.First(n => n.Column >= hand).Value : numbers.Last(n => n.Column <= hand).Value;
        decimal rest = Hand([.. face.Skip(small + 2)], mark, isBack);
        return isBack ? -((turns * turn) + rest) : (turns * turn) + rest;
    }

    /// <summary>A dial over the ring that it was set in.</summary>
    public static decimal Ring(IReadOnlyList<string> face, decimal mark)
    {
        string ring = face.Single(line => line.Contains("in the ring", StringComparison.Ordinal));
        return Number(ring.Split(' ')[^2]) + Hand(face, mark, isBack: false);
    }

    /// <summary>A hand over one scale: the numbered mark it has passed, and every mark from there.</summary>
    public static decimal Hand(IReadOnlyList<string> face, decimal mark, bool isBack)
    {
        int row = face.ToList().FindLastIndex(line => line.Trim() == "^");
        int hand = face[row].IndexOf('^', StringComparison.Ordinal);
        string marks = face[row - 1];
        int at = isBack ? marks.IndexOf('|', hand) : marks.LastIndexOf('|', hand);
        return Numbers(face[row - 2]).Single(n => n.Column <= at && at < n.Column + n.Length).Value
            + (Math.Abs(hand - at) * mark);
    }

    /// <summary>The thickest leaf that goes past the edge.</summary>
    public static decimal Leaves(IReadOnlyList<string> face)
    {
        int top = face.ToList().FindIndex(line => line.Contains("the edge", StringComparison.Ordinal));
        int edge = face[top].IndexOf('v', StringComparison.Ordinal);
        return face.Skip(top + 1)
            .Where(line => line.LastIndexOf('=') > edge)
            .Select(line => Number(line.Split(' ')[0]))
            .DefaultIfEmpty(0)
            .Max();
    }

    private static int IndexOfLongLine(IReadOnlyList<string> face) =>
        face.ToList()
            .FindIndex(line =>
                line.Contains("==", StringComparison.Ordinal) || line.StartsWith(" =", StringComparison.Ordinal)
            );

    // The line at the end of the long line or, where it ends between two, the one below; told by counting up from a number.
    private static int Thimble(IReadOnlyList<string> face, int index, int edge, int lines)
    {
        int passed = face[index][(edge + 1)..].Trim().Length > 0 ? index : index + 1;
        int numbered = passed;
        while (!face[numbered][(edge + 1)..].Any(char.IsDigit))
        {
            numbered++;
        }

        int number = int.Parse(face[numbered][(edge + 1)..].Trim('-', ' '), CultureInfo.InvariantCulture);
        return (number + numbered - passed) % lines;
    }

    // The one line of the sleeve with a line of the thimble right under it.
    private static decimal Vernier(IReadOnlyList<string> face)
    {
        string sleeve = face[^2];
        string thimble = face[^1];
        int meets = Enumerable
            .Range(0, Math.Min(sleeve.Length, thimble.Length))
            .Single(column => sleeve[column] == '|' && thimble[column] == '|');
        return NumberAt(face[^3], meets);
    }

    private static IEnumerable<Mark> Numbers(string line)
    {
        for (int i = 0; i < line.Length; i++)
        {
            int end = i;
            while (end < line.Length && (char.IsDigit(line[end]) || line[end] == '.'))
            {
                end++;
            }

            if (end > i)
            {
                yield return new Mark(i, end - i, Number(line[i..end]));
                i = end;
            }
        }
    }

    private static decimal NumberAt(string line, int column) =>
        Numbers(line).Single(n => n.Column <= column && column < n.Column + n.Length).Value;

    private static decimal Number(string text) => decimal.Parse(text, CultureInfo.InvariantCulture);

    private readonly record struct Mark(int Column, int Length, decimal Value);
}
