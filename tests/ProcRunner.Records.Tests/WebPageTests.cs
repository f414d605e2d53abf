using System.Xml;
using System.Xml.Linq;

namespace ProcRunner.Records.Tests;

public class WebPageTests
{
    private static readonly HashSet<string> Elements =
    [
        "html",
        "head",
        "meta",
        "title",
        "style",
        "body",
        "header",
        "main",
        "footer",
        "h1",
        "h2",
        "h3",
        "p",
        "b",
        "div",
        "span",
        "strong",
        "nav",
        "a",
        "ul",
        "ol",
        "li",
        "dl",
        "dt",
        "dd",
        "table",
        "colgroup",
        "col",
        "caption",
        "thead",
        "tbody",
        "tr",
        "th",
        "td",
        "figure",
        "figcaption",
        "svg",
        "desc",
        "line",
        "rect",
        "circle",
        "polygon",
        "text",
    ];

    private static readonly HashSet<string> Attributes =
    [
        "lang",
        "charset",
        "http-equiv",
        "content",
        "name",
        "class",
        "id",
        "href",
        "aria-label",
        "role",
        "scope",
        "tabindex",
        "style",
        "data-label",
        "aria-hidden",
        "aria-labelledby",
        "viewBox",
        "x",
        "y",
        "x1",
        "y1",
        "x2",
        "y2",
        "cx",
        "cy",
        "r",
        "width",
        "height",
        "points",
        "fill",
        "stroke",
        "stroke-width",
        "stroke-dasharray",
        "font-size",
        "font-weight",
        "text-anchor",
    ];

    public static TheoryData<string> Jobs => [.. Worked.All.Select(j => j.Name), "everywhere"];

    [Theory]
    [MemberData(nameof(Jobs))]
    public void Nothing_in_a_page_but_the_programs_own_tags_and_attributes(string job)
    {
        XDocument page = Page(Html(job));

        Assert.Empty(page.Descendants().Select(e => e.Name.LocalName).Except(Elements));
        Assert.Empty(page.Descendants().Attributes().Select(a => a.Name.LocalName).Except(Attributes));
        Assert.Empty(page.DescendantNodes().OfType<XComment>());
        Assert.All(
            page.Descendants().Attributes("style"),
            style => Assert.Matches("^(--w:[0-9.]+px|width:[0-9.]+%)$", style.Value)
        );
    }

    // HTML Living Standard, 13.1.2.6: a style element's text ends at the first "</style"; nothing of ours is in it.
    [Theory]
    [MemberData(nameof(Jobs))]
    public void A_page_holds_no_script_and_fetches_nothing(string job)
    {
        string html = Html(job);

        Assert.DoesNotContain("<script", html, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("<img", html, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("<link", html, StringComparison.OrdinalIgnoreCase);
        Assert.All(
            Page(html).Descendants().Attributes("href"),
            link => Assert.Single(Page(html).Descendants("h2"), h => "#" + h.Attribute("id")!.Value == link.Value)
        );
        Assert.DoesNotContain("src=\"", html, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("url(", html, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("@import", html, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("default-src 'none'", html, StringComparison.Ordinal);
        Assert.Equal(2, html.Split("</style", StringSplitOptions.None).Length);
    }

    [Theory]
    [MemberData(nameof(Jobs))]
    public void No_control_and_no_direction_mark_reaches_a_page(string job) =>
        Assert.DoesNotContain(
            Html(job),
            c => (c < ' ' && c != '\n') || c is '\u007f' or '\u200b' or '\u202e' or '\u2066' or '\ufeff'
        );

    [Fact]
    public void Hostile_text_is_shown_as_text()
    {
        string text = Page(Html("everywhere")).Root!.Value;

        Assert.Contains("<script>alert(1)</script>", text, StringComparison.Ordinal);
        Assert.Contains("\"><img src=x onerror=alert(1)>", text, StringComparison.Ordinal);
        Assert.Contains("\\u202eruns backwards", text, StringComparison.Ordinal);
        Assert.Contains("\\u001b[2J", text, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Jobs))]
    public void A_page_can_be_read_by_ear(string job)
    {
        XDocument page = Page(Html(job));
        int[] levels =
        [
            .. page.Descendants()
                .Select(e => e.Name.LocalName)
                .Where(n => n is "h1" or "h2" or "h3")
                .Select(n => n[1] - '0'),
        ];

        Assert.Equal(1, levels[0]);
        Assert.Single(levels, 1);
        Assert.All(
            levels.Zip(levels.Skip(1)),
            pair => Assert.True(pair.Second <= pair.First + 1, $"h{pair.First} to h{pair.Second}")
        );
        Assert.Equal("en", page.Root!.Attribute("lang")!.Value);
        Assert.All(
            page.Descendants("table"),
            table =>
            {
                Assert.NotEmpty(table.Element("caption")!.Value);
                Assert.All(
                    table.Descendants("th"),
                    th => Assert.Contains(th.Attribute("scope")!.Value, new[] { "col", "row" })
                );
                int columns = table.Element("thead")!.Descendants("tr").Single().Elements().Count();
                Assert.All(
                    table.Element("tbody")!.Elements("tr"),
                    row =>
                    {
                        Assert.Equal(columns, row.Elements().Count());
                        Assert.Equal("th", row.Elements().First().Name.LocalName);
                    }
                );
            }
        );
        Assert.All(
            page.Descendants("svg"),
            svg =>
            {
                string[] ids = svg.Attribute("aria-labelledby")!.Value.Split(' ');
                Assert.Equal("img", svg.Attribute("role")!.Value);
                Assert.All(
                    ids,
                    id => Assert.NotEmpty(svg.Elements().Single(e => (string?)e.Attribute("id") == id).Value)
                );
            }
        );
        string[] all = [.. page.Descendants().Attributes("id").Select(a => a.Value)];
        Assert.Equal(all.Length, all.Distinct().Count());
    }

    [Fact]
    public void The_page_of_a_trail_is_always_the_same() =>
        Assert.Equal(Worked.Demo.Text(".html"), Worked.Demo.Text(".html"));

    private static string Html(string job)
    {
        if (job != "everywhere")
        {
            return Worked.All.Single(j => j.Name == job).Job.Text(".html");
        }

        using MemoryStream to = new();
        RecordFile.Write(Hostile.Everywhere(Worked.Demo.Record), "x.html", to, WritingProgress.None);
        return System.Text.Encoding.UTF8.GetString(to.ToArray());
    }

    // The page is XML as well, so that a strict parser tells whether any text broke out.
    private static XDocument Page(string html)
    {
        using StringReader text = new(html);
        using XmlReader reader = XmlReader.Create(text, new XmlReaderSettings { DtdProcessing = DtdProcessing.Ignore });
        return XDocument.Load(reader);
    }
}
