using System.Globalization;
using System.Net;
using System.Text;
using ProcRunner.Quantities;
using static ProcRunner.Practice.Rehearsals.Figures;

namespace ProcRunner.Practice.Rehearsals;

/// <summary>A rehearsal as one page: no script, nothing fetched, drawings inside, every text from a file made harmless.</summary>
public static class RehearsalPage
{
    private const int Width = 640;
    private const int Height = 150;

    private const string Style = """
        body{font:16px/1.5 sans-serif;color:#111;background:#fff;max-width:62em;margin:0 auto;padding:0 1em 3em}
        h1{font-size:clamp(1.3em,5vw,2em);line-height:1.25}
        .practice{background:#000;color:#fff;padding:.4em 1em;font-weight:bold;margin:0 -1em;position:sticky;top:0;z-index:1}
        table{border-collapse:collapse;margin:.5em 0 2em;display:block;overflow-x:auto}
        th,td{padding:.2em .8em .2em 0;border-bottom:1px solid #bbb;text-align:right;font-variant-numeric:tabular-nums}
        th:first-child,td:first-child,tbody th{text-align:left;font-weight:normal}
        thead th,thead th:first-child{border-bottom:2px solid #111;font-weight:bold}
        td,thead th{white-space:nowrap}
        .says{max-width:45em;color:#333}
        svg{display:block;max-width:100%;height:auto;margin:.5em 0 2em}
        @page{margin:18mm 15mm;@top-left{content:"PRACTICE: practice heads, worth nothing to a customer";font:bold 11px sans-serif}}
        @media print{table{display:table;break-inside:avoid}h2{break-after:avoid}.practice{position:static}}
        """;

    /// <summary>The page.</summary>
    public static string Of(RehearsalResult result)
    {
        string title = Safe(RehearsalReport.TitleOf(result));
        StringBuilder page = new();
        page.Append("<!doctype html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n")
            .Append(
                "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'\">\n"
            )
            .Append("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n")
            .Append(
                CultureInfo.InvariantCulture,
                $"<title>Rehearsal: {title}</title>\n<style>\n{Style}\n</style>\n</head>\n<body>\n"
            )
            .Append("<p class=\"practice\">PRACTICE: practice heads, worth nothing to a customer</p>\n<main>\n")
            .Append(
                CultureInfo.InvariantCulture,
                $"<h1>Rehearsal: {title}</h1>\n<p>{Safe(RehearsalReport.HeadsOf(result))}</p>\n"
            );
        foreach (ReportPart part in RehearsalReport.Of(result))
        {
            page.Append(CultureInfo.InvariantCulture, $"<section>\n<h2>{Safe(part.Title)}</h2>\n");
            if (part.Says.Length > 0)
            {
                page.Append(CultureInfo.InvariantCulture, $"<p class=\"says\">{Safe(part.Says)}</p>\n");
            }

            Write(page, part);
            page.Append("</section>\n");
        }

        return page.Append("</main>\n</body>\n</html>\n").ToString();
    }

    private static void Write(StringBuilder page, ReportPart part)
    {
        if (part is ReportPart.Plot plot)
        {
            Draw(page, plot);
        }
        else if (part is ReportPart.Table { Rows.Count: > 0 } table)
        {
            Write(page, table);
        }
    }

    private static void Write(StringBuilder page, ReportPart.Table table)
    {
        page.Append("<table>\n<thead><tr>");
        foreach (string column in table.Columns)
        {
            page.Append(CultureInfo.InvariantCulture, $"<th scope=\"col\">{Safe(column)}</th>");
        }

        page.Append("</tr></thead>\n<tbody>\n");
        foreach (IReadOnlyList<string> row in table.Rows)
        {
            page.Append(CultureInfo.InvariantCulture, $"<tr><th scope=\"row\">{Safe(row[0])}</th>");
            foreach (string cell in row.Skip(1))
            {
                page.Append(CultureInfo.InvariantCulture, $"<td>{Safe(cell)}</td>");
            }

            page.Append("</tr>\n");
        }

        page.Append("</tbody>\n</table>\n");
    }

    // Told by shape as well as by shade: what is beyond a limit is hatched by its outline alone.
    private static void Draw(StringBuilder page, ReportPart.Plot plot)
    {
        (Distribution spread, Unit unit) = (plot.Spread, plot.Unit);
        long tallest = Math.Max(1, spread.Histogram.Max());
        string told =
            $"{N(spread.Count)} values: mean {In(spread.Mean, unit)}, deviation {SizeIn(spread.Deviation, unit)}, least {In(spread.Least, unit)}, most {In(spread.Most, unit)} {unit.Symbol}; {N(spread.Out)} out of limits";
        page.Append(
            CultureInfo.InvariantCulture,
            $"<svg viewBox=\"0 0 {Width} {Height + 30}\" width=\"{Width}\" height=\"{Height + 30}\" role=\"img\" aria-label=\"{Safe(told)}\">\n<title>{Safe(told)}</title>\n"
        );
        double bar = (double)Width / Distribution.Bars;
        for (int i = 0; i < Distribution.Bars; i++)
        {
            double height = spread.Histogram[i] == 0 ? 0 : Math.Max(1, (double)Height * spread.Histogram[i] / tallest);
            string look = spread.IsOut(i) ? "fill=\"#fff\" stroke=\"#111\"" : "fill=\"#445\"";
            page.Append(
                CultureInfo.InvariantCulture,
                $"<rect x=\"{(i * bar) + 1:F1}\" y=\"{Height - height:F1}\" width=\"{bar - 2:F1}\" height=\"{height:F1}\" {look}/>\n"
            );
        }

        Mark(page, spread, spread.Low, "low", unit);
        Mark(page, spread, spread.High, "high", unit);
        page.Append(CultureInfo.InvariantCulture, $"</svg>\n<p class=\"says\">{Safe(told)}</p>\n");
    }

    private static void Mark(StringBuilder page, Distribution spread, double? limit, string name, Unit unit)
    {
        if (limit is { } at)
        {
            double x = (at - spread.From) / (spread.To - spread.From) * Width;
            page.Append(
                CultureInfo.InvariantCulture,
                $"<line x1=\"{x:F1}\" x2=\"{x:F1}\" y1=\"0\" y2=\"{Height}\" stroke=\"#111\" stroke-dasharray=\"4 3\"/><text x=\"{x:F1}\" y=\"{Height + 18}\" font-size=\"14\" text-anchor=\"middle\">{name} {In(at, unit)} {Safe(unit.Symbol)}</text>\n"
            );
        }
    }

    private static string Safe(string text) => WebUtility.HtmlEncode(Text.SafeText.Show(text));
}
