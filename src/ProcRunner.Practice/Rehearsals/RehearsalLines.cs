using System.Text;
using ProcRunner.Quantities;
using static ProcRunner.Practice.Rehearsals.Figures;

namespace ProcRunner.Practice.Rehearsals;

/// <summary>A rehearsal in lines of text, with plots of characters: no line is longer than 79 characters.</summary>
public static class RehearsalLines
{
    private const int LongestBar = 44;
    private const int Widest = 79;
    private const string Between = "  ";

    /// <summary>The lines.</summary>
    public static IEnumerable<string> Of(RehearsalResult result)
    {
        string[] head = [$"PRACTICE. {RehearsalReport.TitleOf(result)}", RehearsalReport.HeadsOf(result)];
        foreach (string line in head.SelectMany(text => Wrapped(text, "")))
        {
            yield return line;
        }

        foreach (ReportPart part in RehearsalReport.Of(result))
        {
            yield return "";
            yield return part.Title;
            foreach (string line in Wrapped(part.Says, "  "))
            {
                yield return line;
            }

            foreach (string line in part is ReportPart.Plot plot ? Bars(plot) : Rows((ReportPart.Table)part))
            {
                yield return line;
            }
        }
    }

    private static IEnumerable<string> Rows(ReportPart.Table table)
    {
        if (table.Rows.Count == 0)
        {
            yield break;
        }

        int[] widths = WidthsOf(table, name => name.Length);
        widths = LengthOf(widths) > Widest ? WidthsOf(table, LongestWord) : widths;
        widths[0] = Math.Min(widths[0], Math.Max(0, Widest - LengthOf(widths.AsSpan(1))));
        foreach (string line in Headed(table.Columns, widths).Concat(table.Rows).SelectMany(row => Row(row, widths)))
        {
            yield return line;
        }
    }

    private static int[] WidthsOf(ReportPart.Table table, Func<string, int> ofName) =>
        [.. table.Columns.Select((name, c) => Math.Max(ofName(name), table.Rows.Max(row => row[c].Length)))];

    private static int LengthOf(ReadOnlySpan<int> widths)
    {
        int length = Between.Length;
        foreach (int width in widths)
        {
            length += width + Between.Length;
        }

        return length;
    }

    // A column is as wide as its figures; names that are longer stand in several lines, the last beside the others.
    private static IEnumerable<IReadOnlyList<string>> Headed(IReadOnlyList<string> columns, int[] widths)
    {
        string[][] names =
        [
            [columns[0]],
            .. columns.Select((name, c) => Broken(name, "", widths[c]).ToArray()).Skip(1),
        ];
        int lines = names.Max(n => n.Length);
        for (int i = 0; i < lines; i++)
        {
            yield return [.. names.Select(n => i - lines + n.Length is var own and >= 0 ? n[own] : "")];
        }
    }

    // A name that leaves its figures no room stands in a line of its own above them.
    private static IEnumerable<string> Row(IReadOnlyList<string> row, int[] widths)
    {
        bool fits = row[0].Length <= widths[0];
        if (!fits)
        {
            yield return $"{Between}{row[0]}";
        }

        StringBuilder line = new(Between);
        line.Append((fits ? row[0] : "").PadRight(widths[0]));
        for (int c = 1; c < row.Count; c++)
        {
            line.Append(Between).Append(row[c].PadLeft(widths[c]));
        }

        yield return line.ToString().TrimEnd();
    }

    private static int LongestWord(string name) => name.Split(' ').Max(word => word.Length);

    private static IEnumerable<string> Bars(ReportPart.Plot plot)
    {
        (Distribution spread, Unit unit) = (plot.Spread, plot.Unit);
        long tallest = Math.Max(1, spread.Histogram.Max());
        yield return $"  {N(spread.Count)} values, low {Limit(spread.Low, unit)}, high {Limit(spread.High, unit)}; each line begins at its number";
        for (int i = 0; i < Distribution.Bars; i++)
        {
            bool isOut = spread.IsOut(i);
            long count = spread.Histogram[i];
            int length = count == 0 ? 0 : Math.Max(1, (int)(count * LongestBar / tallest));
            yield return $"  {In(spread.Start(i), unit), 10} {(isOut ? "out" : "   ")} {new string(isOut ? '!' : '#', length)} {(count > 0 ? N(count) : "")}".TrimEnd();
        }
    }

    private static string Limit(double? limit, Unit unit) =>
        limit is { } value ? $"{In(value, unit)} {unit.Symbol}".TrimEnd() : "none";

    private static IEnumerable<string> Wrapped(string text, string indent) => Broken(text, indent, Widest);

    private static IEnumerable<string> Broken(string text, string indent, int width)
    {
        StringBuilder line = new(indent);
        foreach (string word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (line.Length > indent.Length && line.Length + 1 + word.Length > width)
            {
                yield return line.ToString();
                line.Clear().Append(indent);
            }

            line.Append(line.Length > indent.Length ? " " : "").Append(word);
        }

        if (line.Length > indent.Length)
        {
            yield return line.ToString();
        }
    }
}
