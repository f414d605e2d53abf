using System.Globalization;
using System.Text;
using ProcRunner.Records.Papers;

namespace ProcRunner.Records.Web;

/// <summary>
/// Writes a paper as one self-contained page: no script, no address, nothing fetched. A policy in its head forbids the
/// browser all of that, should a text ever get through as markup.
/// </summary>
internal sealed class WebPage
{
    private const string Policy = "default-src 'none'; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'";
    private readonly Markup _to = new();
    private int _drawings;
    private int _headings;

    private WebPage() { }

    /// <summary>Writes it as UTF-8.</summary>
    /// <exception cref="OperationCanceledException">The writing is to stop.</exception>
    public static void Write(Paper paper, Stream to, WritingProgress progress)
    {
        WebPage page = new();
        page.Begin(paper);
        for (int i = 0; i < paper.Blocks.Count; i++)
        {
            page.Add(paper.Blocks[i]);
            progress.Report(i + 1, paper.Blocks.Count);
        }

        page._to.Raw("</main>\n<footer>").Text(paper.Foot).Raw("</footer>\n</body>\n</html>\n");
        to.Write(Encoding.UTF8.GetBytes(page._to.ToString()));
    }

    private void Begin(Paper paper)
    {
        _to.Raw("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\"/>\n");
        _to.Raw($"<meta http-equiv=\"Content-Security-Policy\" content=\"{Policy}\"/>\n");
        _to.Raw("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\"/>\n");
        _to.Element("title", $"{paper.Title}: {paper.Subject}").Raw("\n<style>\n").Raw(PageStyle.Text);
        _to.Raw("\n</style>\n</head>\n<body>\n");
        if (paper.Across.Length > 0)
        {
            _to.Raw("<div class=\"across\" aria-hidden=\"true\">").Element("span", paper.Across).Raw("</div>\n");
        }

        _to.Raw("<header>").Element("h1", paper.Title).Element("p", paper.Subject).Raw("</header>\n<main>\n");
    }

    private void Add(Block block)
    {
        switch (block)
        {
            case Block.Heading heading:
                Heading(heading);
                break;
            case Block.Paragraph words:
                _to.Element("p", words.Text, words.IsQuiet ? "class=\"quiet\"" : "");
                break;
            case Block.Facts facts:
                Facts(facts);
                break;
            case Block.Bullets bullets:
                List(bullets.IsNumbered ? "ol" : "ul", bullets.Texts);
                break;
            case Block.Notice notice:
                Notice(notice);
                break;
            case Block.Table table:
                Table(table);
                break;
            case Block.Picture picture:
                _to.Raw("<figure tabindex=\"0\">").Element("figcaption", picture.Drawing.Title);
                SvgWriter.Write(_to, picture.Drawing, NextDrawing());
                _to.Raw("</figure>");
                break;
            case Block.Code code:
                _to.Raw("<div class=\"code\">");
                SvgWriter.Write(_to, code.Drawing, NextDrawing());
                _to.Raw("<p>").Element("b", code.Text).Text(code.Words).Raw("</p></div>");
                break;
            case Block.NewPage:
                _to.Raw("<div class=\"paper\"></div>");
                break;
            case Block.Contents contents:
                Contents(contents);
                break;
            case Block.Appendix:
                _to.Raw("<div class=\"appendix\"></div>");
                break;
            default:
                throw new System.Diagnostics.UnreachableException();
        }

        _to.Raw("\n");
    }

    private void Heading(Block.Heading heading)
    {
        if (heading.Level == 2)
        {
            _to.Element("h2", heading.Text, $"id=\"{Place(_headings++)}\"");
        }
        else
        {
            _to.Element("h3", heading.Text);
        }
    }

    // Links within the page, and nowhere else.
    private void Contents(Block.Contents contents)
    {
        _to.Raw("<nav aria-label=\"Contents\">").Element("b", "Contents").Raw("<ul>");
        for (int i = 0; i < contents.Parts.Count; i++)
        {
            _to.Raw("<li>").Element("a", contents.Parts[i], $"href=\"#{Place(_headings + i)}\"").Raw("</li>");
        }

        _to.Raw("</ul></nav>");
    }

    private static string Place(int heading) => string.Create(CultureInfo.InvariantCulture, $"part{heading}");

    private void Facts(Block.Facts facts)
    {
        _to.Raw("<dl>");
        foreach ((string label, string text) in facts.Items)
        {
            _to.Element("dt", label).Element("dd", text);
        }

        _to.Raw("</dl>");
    }

    private void List(string tag, IReadOnlyList<string> texts)
    {
        _to.Raw($"<{tag}>");
        foreach (string text in texts)
        {
            _to.Element("li", text);
        }

        _to.Raw($"</{tag}>");
    }

    private void Notice(Block.Notice notice)
    {
        _to.Raw(notice.NeedsAttention ? "<div class=\"notice attention\">" : "<div class=\"notice\">");
        _to.Element("strong", notice.Title);
        if (notice.Texts.Count == 1)
        {
            _to.Text(notice.Texts[0]);
        }
        else
        {
            List("ul", notice.Texts);
        }

        _to.Raw("</div>");
    }

    // The roles say what the tags say: on a phone the rows are set as blocks, which makes browsers forget the table.
    private void Table(Block.Table table)
    {
        _to.Raw("<table role=\"table\">").Element("caption", table.Caption).Raw("<colgroup>");
        double shares = table.Columns.Sum(c => c.Share);
        foreach ((_, int share) in table.Columns)
        {
            _to.Raw(string.Create(CultureInfo.InvariantCulture, $"<col style=\"width:{100 * share / shares:0.#}%\"/>"));
        }

        _to.Raw("</colgroup>").Raw("<thead role=\"rowgroup\"><tr role=\"row\">");
        foreach ((string name, _) in table.Columns)
        {
            _to.Element(
                name.Length > 0 ? "th" : "td",
                name,
                name.Length > 0 ? "scope=\"col\" role=\"columnheader\"" : "role=\"cell\""
            );
        }

        _to.Raw("</tr></thead>\n<tbody role=\"rowgroup\">\n");
        foreach (Row row in table.Rows)
        {
            _to.Raw(row.NeedsAttention ? "<tr role=\"row\" class=\"attention\">" : "<tr role=\"row\">");
            _to.Element("th", row.Cells[0], "scope=\"row\" role=\"rowheader\"");
            for (int i = 1; i < row.Cells.Count; i++)
            {
                _to.Raw("<td role=\"cell\" data-label=\"").Text(table.Columns[i].Name).Raw("\">");
                _to.Text(row.Cells[i]).Raw("</td>");
            }

            _to.Raw("</tr>\n");
        }

        _to.Raw("</tbody></table>");
    }

    private string NextDrawing() => string.Create(CultureInfo.InvariantCulture, $"d{++_drawings}");
}
