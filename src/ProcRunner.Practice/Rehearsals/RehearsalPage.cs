using System.Globalization;
using System.Net;
using System.Text;
using ProcRunner.Quantities;
using ProcRunner.Runs;

namespace ProcRunner.Practice.Rehearsals;

/// <summary>A rehearsal as one page: no script, nothing fetched, drawings inside.</summary>
public static class RehearsalPage
{
    private const int Width = 560;
    private const int Height = 150;

    /// <summary>The page.</summary>
    public static string Of(RehearsalResult result)
    {
        Plan plan = result.Binding.Plan;
        StringBuilder page = new();
        page.Append("<!doctype html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"><title>Rehearsal: ")
            .Append(Safe(plan.Procedure.Title))
            .Append(
                "</title>\n<style>body{font:16px sans-serif;max-width:60em;margin:2em auto;padding:0 1em}pre{font:13px monospace;overflow-x:auto}"
            )
            .Append(
                ".practice{background:#000;color:#fff;padding:.3em 1em;font-weight:bold}svg{display:block;margin:.5em 0 2em}</style></head><body>\n"
            )
            .Append("<p class=\"practice\">PRACTICE: practice heads, worth nothing to a customer</p>\n<h1>Rehearsal: ")
            .Append(Safe(plan.Procedure.Title))
            .Append(" on ")
            .Append(Safe(plan.Head.Title))
            .Append("</h1>\n");
        foreach (
            ((int Characteristic, string Kind) key, Distribution spread) in RehearsalLines.Plotted(result.Tally, plan)
        )
        {
            Unit unit = RehearsalLines.UnitOf(plan, key.Characteristic);
            page.Append("<h2>")
                .Append(Safe(RehearsalLines.NameOf(plan, key)))
                .Append(" at the release, in truth</h2>\n");
            Draw(page, spread, unit);
        }

        page.Append("<h2>In figures</h2>\n<pre>")
            .Append(Safe(string.Join('\n', RehearsalLines.Of(result))))
            .Append("</pre>\n</body></html>\n");
        return page.ToString();
    }

    private static void Draw(StringBuilder page, Distribution spread, Unit unit)
    {
        long tallest = Math.Max(1, spread.Histogram.Max());
        string title =
            $"{N(spread.Count)} values, mean {RehearsalLines.In(spread.Mean, unit)}, deviation {RehearsalLines.SizeIn(spread.Deviation, unit)} {unit}";
        page.Append(
            CultureInfo.InvariantCulture,
            $"<svg width=\"{Width}\" height=\"{Height + 30}\" role=\"img\"><title>{Safe(title)}</title>\n"
        );
        double bar = (double)Width / Distribution.Bars;
        for (int i = 0; i < Distribution.Bars; i++)
        {
            double height = (double)Height * spread.Histogram[i] / tallest;
            page.Append(
                CultureInfo.InvariantCulture,
                $"<rect x=\"{(i * bar) + 1:F1}\" y=\"{Height - height:F1}\" width=\"{bar - 2:F1}\" height=\"{height:F1}\" fill=\"#556\"/>\n"
            );
        }

        Mark(page, spread, spread.Low, "low", unit);
        Mark(page, spread, spread.High, "high", unit);
        page.Append("</svg>\n");
    }

    private static void Mark(StringBuilder page, Distribution spread, double? limit, string name, Unit unit)
    {
        if (limit is { } at)
        {
            double x = (at - spread.From) / (spread.To - spread.From) * Width;
            page.Append(
                CultureInfo.InvariantCulture,
                $"<line x1=\"{x:F1}\" x2=\"{x:F1}\" y1=\"0\" y2=\"{Height}\" stroke=\"#000\" stroke-dasharray=\"4 3\"/><text x=\"{x:F1}\" y=\"{Height + 16}\" font-size=\"13\" text-anchor=\"middle\">{name} {RehearsalLines.In(at, unit)}</text>\n"
            );
        }
    }

    private static string N(long count) => count.ToString("#,0", CultureInfo.InvariantCulture);

    private static string Safe(string text) => WebUtility.HtmlEncode(text);
}
