using System.Text;
using ProcRunner.Quantities;
using static ProcRunner.Practice.Rehearsals.Figures;

namespace ProcRunner.Practice.Rehearsals;

/// <summary>A rehearsal in lines of text, with plots of characters; 100 columns at most, sentences 79.</summary>
public static class RehearsalLines
{
    private const int Widest = 44;
    private const int Sentence = 79;
    private const int WidestName = 50;

    /// <summary>The lines.</summary>
    public static IEnumerable<string> Of(RehearsalResult result)
    {
        yield return $"PRACTICE. {RehearsalReport.TitleOf(result)}";
        foreach (string line in Wrapped(RehearsalReport.HeadsOf(result), ""))
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

        IReadOnlyList<string>[] all = [table.Columns, .. table.Rows.Select(Shortened)];
        int[] widths = [.. table.Columns.Select((_, c) => all.Max(row => row[c].Length))];
        foreach (IReadOnlyList<string> row in all)
        {
            StringBuilder line = new("  ");
            for (int c = 0; c < row.Count; c++)
            {
                line.Append(c == 0 ? row[c].PadRight(widths[c]) : $"  {row[c].PadLeft(widths[c])}");
            }

            yield return line.ToString().TrimEnd();
        }
    }

    private static IReadOnlyList<string> Shortened(IReadOnlyList<string> row) =>
        row[0].Length <= WidestName ? row : [row[0][..(WidestName - 3)] + "...", .. row.Skip(1)];

    private static IEnumerable<string> Bars(ReportPart.Plot plot)
    {
        (Distribution spread, Unit unit) = (plot.Spread, plot.Unit);
        long tallest = Math.Max(1, spread.Histogram.Max());
        yield return $"  {N(spread.Count)} values in {unit.Symbol}, low {Limit(spread.Low, unit)}, high {Limit(spread.High, unit)}; each line begins at its number";
        for (int i = 0; i < Distribution.Bars; i++)
        {
            bool isOut = spread.IsOut(i);
            long count = spread.Histogram[i];
            int length = count == 0 ? 0 : Math.Max(1, (int)(count * Widest / tallest));
            yield return $"  {In(spread.Start(i), unit), 10} {(isOut ? "out" : "   ")} {new string(isOut ? '!' : '#', length)} {(count > 0 ? N(count) : "")}".TrimEnd();
        }
    }

    private static string Limit(double? limit, Unit unit) => limit is { } value ? In(value, unit) : "none";

    private static IEnumerable<string> Wrapped(string text, string indent)
    {
        StringBuilder line = new(indent);
        foreach (string word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (line.Length > indent.Length && line.Length + 1 + word.Length > Sentence)
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
