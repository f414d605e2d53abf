using ProcRunner.Records.Drawings;
using ProcRunner.Records.Papers;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Content;

namespace ProcRunner.Records.Tests;

// PdfPig, a general reader of PDF, is the referee of what stands on paper.
public class ReadBackTests
{
    // From the figures of the demo (procedures/demo/README.md, "Final, place by place"): deepest recession after the
    // skim, stem height, seat vacuum, installed height.
    private static readonly (string Position, string[] Finals)[] Finals =
    [
        ("1I", ["0.0550 in", "1.560 in", "23 inHg", "1.700 in"]),
        ("1E", ["0.0580 in", "1.560 in", "22 inHg", "1.697 in"]),
        ("2E", ["0.0581 in", "1.561 in", "24 inHg", "1.698 in"]),
        ("3E", ["0.0580 in", "1.561 in", "24 inHg", "1.697 in"]),
        ("4I", ["0.0552 in", "1.558 in", "23 inHg", "1.697 in"]),
    ];

    private static readonly string[] Names = ["recession", "stem height", "seat vacuum", "installed height"];

    [Fact]
    public void The_demos_figures_stand_in_its_record()
    {
        foreach ((string position, string[] finals) in Finals)
        {
            for (int i = 0; i < Names.Length; i++)
            {
                FinalValue value = Worked.Demo.Record.Find(Names[i], position)!;
                Assert.Equal(finals[i], value.Record.Value.ToString());
                Assert.Equal("in limits", value.Verdict);
            }
        }
    }

    [Theory]
    [InlineData("demo")]
    [InlineData("conceded")]
    public void Every_value_and_its_entry_are_read_back_from_the_paper(string job)
    {
        Worked worked = Worked.All.Single(j => j.Name == job).Job;
        string paper = Squeezed(PaperText(worked.Written(".pdf")));

        Assert.All(
            worked.Record.Values,
            value =>
            {
                string row = Squeezed(
                    value.Name
                        + (
                            value.Record.AsFound is { } found && value.Standing != ValueStanding.AsFound
                                ? found.ToDisplay()
                                : ""
                        )
                );
                Assert.Contains(row, paper, StringComparison.Ordinal);
                Assert.Contains(Squeezed(value.Record.Value.ToDisplay()), paper, StringComparison.Ordinal);
                Assert.Contains(
                    Squeezed($"{value.By.Person}, entry {value.By.Entry}"),
                    paper,
                    StringComparison.Ordinal
                );
            }
        );
    }

    // The page and the paper are set from the same pieces; here both are read again and compared piece by piece.
    [Theory]
    [InlineData("demo")]
    [InlineData("conceded")]
    [InlineData("practice")]
    public void What_stands_on_the_page_stands_on_the_paper(string job)
    {
        Worked worked = Worked.All.Single(j => j.Name == job).Job;
        string paper = Squeezed(PaperText(worked.Written(".pdf")));
        string page = Squeezed(System.Net.WebUtility.HtmlDecode(worked.Text(".html")));

        foreach (
            string text in PaperMaker.Of(worked.Record).Blocks.SelectMany(Texts).Where(t => t.Length > 0).Distinct()
        )
        {
            Assert.Contains(Squeezed(text), page, StringComparison.Ordinal);
            Assert.True(text.Length > 60 || paper.Contains(Squeezed(text), StringComparison.Ordinal), text);
        }
    }

    [Theory]
    [InlineData("demo")]
    [InlineData("practice")]
    public void A_paper_has_a_title_real_text_and_its_own_fonts(string job)
    {
        Worked worked = Worked.All.Single(j => j.Name == job).Job;
        using PdfDocument paper = PdfDocument.Open(worked.Written(".pdf"));

        Assert.StartsWith(
            "Build record DEMO: four-cylinder irrigation pump",
            paper.Information.Title,
            StringComparison.Ordinal
        );
        Assert.Equal("Demo shop (invented)", paper.Information.Author);
        Assert.All(paper.GetPages(), page => Assert.NotEmpty(page.Letters));
        string[] fonts = [.. paper.GetPages().SelectMany(p => p.Letters).Select(l => l.FontName!).Distinct()];
        Assert.All(fonts, font => Assert.Contains("Liberation", font, StringComparison.Ordinal));
        Assert.All(fonts, font => Assert.Matches("^[A-Z]{6}[+]", font));
    }

    // One page that a customer understands: nothing of it runs over, and the code is on it.
    [Theory]
    [InlineData("demo")]
    [InlineData("conceded")]
    public void The_front_fits_one_page(string job)
    {
        Worked worked = Worked.All.Single(j => j.Name == job).Job;
        using PdfDocument paper = PdfDocument.Open(worked.Written(".pdf"));
        string first = Squeezed(TextOf(paper.GetPage(1)));

        Assert.Contains(Squeezed($"{worked.Record.Proof.Code}Proof code."), first, StringComparison.Ordinal);
        Assert.Contains(Squeezed(worked.Record.Advice[^1].Text), first, StringComparison.Ordinal);
        Assert.StartsWith("Contents", TextOf(paper.GetPage(2)), StringComparison.Ordinal);
    }

    // A page's number in the contents is the page on which that part's heading stands.
    [Theory]
    [InlineData("demo")]
    [InlineData("conceded")]
    [InlineData("practice")]
    public void Each_part_begins_on_the_page_that_the_contents_name(string job)
    {
        const double Heading = 11;
        Worked worked = Worked.All.Single(j => j.Name == job).Job;
        using PdfDocument paper = PdfDocument.Open(worked.Written(".pdf"));
        Page[] pages = [.. paper.GetPages()];
        string contents = Squeezed(TextOf(pages[1]));
        string[] parts = PaperMaker.Of(worked.Record).Blocks.OfType<Block.Contents>().Single().Parts.ToArray();

        Assert.True(parts.Length > 5);
        Assert.All(
            parts,
            part =>
            {
                Page at = pages.Last(p =>
                    Squeezed(string.Concat(p.Letters.Where(l => l.PointSize > Heading).Select(l => l.Value)))
                        .Contains(Squeezed(part), StringComparison.Ordinal)
                );
                Assert.Matches(
                    $"{System.Text.RegularExpressions.Regex.Escape(Squeezed(part))}{at.Number}(?![0-9])",
                    contents
                );
            }
        );
    }

    // What a heading heads stands under it on the same sheet: nothing set as large as a heading is the last of a sheet.
    [Theory]
    [InlineData("demo")]
    [InlineData("conceded")]
    [InlineData("practice")]
    public void No_heading_stands_alone_at_the_foot_of_a_sheet(string job)
    {
        const double AboveTheFoot = 50;
        const double Heading = 10.2;
        Worked worked = Worked.All.Single(j => j.Name == job).Job;
        using PdfDocument paper = PdfDocument.Open(worked.Written(".pdf"));

        Assert.All(
            paper.GetPages().Skip(1),
            page =>
            {
                Letter[] letters =
                [
                    .. page.Letters.Where(l =>
                        l.StartBaseLine.Y > AboveTheFoot && l.TextOrientation == TextOrientation.Horizontal
                    ),
                ];
                double lowest = letters.Min(l => l.StartBaseLine.Y);
                Letter[] last = [.. letters.Where(l => l.StartBaseLine.Y < lowest + 1)];
                Assert.True(
                    last.Max(l => l.PointSize) < Heading,
                    $"page {page.Number}: {string.Concat(last.Select(l => l.Value))}"
                );
            }
        );
    }

    [Fact]
    public void The_front_page_holds_what_a_customer_asks_for()
    {
        using PdfDocument paper = PdfDocument.Open(Worked.Demo.Written(".pdf"));
        string first = Squeezed(TextOf(paper.GetPage(1)));

        foreach (
            string text in new[]
            {
                "Lower Field irrigation (invented)",
                "hard to start, low compression on 2",
                "valve guide at 2E",
                "All 265 final values that have limits are within them",
                "depth 0.0581",
                "valve-to-piston clearance",
                $"Proof code. The shop finds this record by it and checks that nothing was changed since: procrunner verify --code {Worked.Demo.Record.Proof.Code}",
            }
        )
        {
            Assert.Contains(Squeezed(text), first, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Practice_is_marked_across_every_page()
    {
        using PdfDocument paper = PdfDocument.Open(Worked.Practice.Written(".pdf"));

        Assert.True(paper.NumberOfPages > 2);
        Assert.All(
            paper.GetPages(),
            page =>
            {
                Letter[] large = [.. page.Letters.Where(l => l.PointSize > 60)];
                Assert.Equal("PRACTICE", string.Concat(large.Select(l => l.Value)));
            }
        );
        Assert.Contains("class=\"across\"", Worked.Practice.Text(".html"), StringComparison.Ordinal);
        Assert.Contains("position:fixed", Worked.Practice.Text(".html"), StringComparison.Ordinal);
        Assert.DoesNotContain("class=\"across\"", Worked.Demo.Text(".html"), StringComparison.Ordinal);
    }

    // A paper that was altered to look finished would have to lose this on its first page and at every foot.
    [Fact]
    public void Work_that_is_not_finished_says_so_at_every_foot()
    {
        using PdfDocument paper = PdfDocument.Open(Worked.Practice.Written(".pdf"));

        Assert.Null(Worked.Practice.Record.Proof.Code);
        Assert.All(
            paper.GetPages(),
            page => Assert.Contains("NOTRELEASED", Squeezed(TextOf(page)), StringComparison.Ordinal)
        );
    }

    [Theory]
    [InlineData("hostile")]
    [InlineData("everywhere")]
    public void Hostile_text_stays_text_on_paper(string job)
    {
        byte[] bytes = job == "hostile" ? Worked.WithHostileText.Written(".pdf") : Everywhere();
        string raw = System.Text.Encoding.Latin1.GetString(bytes);
        using PdfDocument paper = PdfDocument.Open(bytes);
        string text = Squeezed(PaperText(bytes));

        Assert.All(
            new[] { "/JavaScript", "/JS", "/OpenAction", "/AA", "/URI", "/Launch", "/EmbeddedFile" },
            action => Assert.DoesNotContain(action + " ", raw, StringComparison.Ordinal)
        );
        Assert.Contains("<script>alert(1)</script>", text, StringComparison.Ordinal);
        Assert.Contains("\\u202eruns", text, StringComparison.Ordinal);
        Assert.Contains("\\u4e2d\\u6587", text, StringComparison.Ordinal);
        Assert.All(
            paper.GetPages(),
            page =>
                Assert.All(
                    page.Letters.Where(l => !string.IsNullOrWhiteSpace(l.Value)),
                    l => Assert.InRange(l.BoundingBox.Right, 0, page.Width)
                )
        );
    }

    private static byte[] Everywhere()
    {
        using MemoryStream to = new();
        RecordFile.Write(Hostile.Everywhere(Worked.Demo.Record), "x.pdf", to, WritingProgress.None);
        return to.ToArray();
    }

    private static IEnumerable<string> Texts(Block block) =>
        block switch
        {
            Block.Heading b => [b.Text],
            Block.Paragraph b => [b.Text],
            Block.Facts b => b.Items.SelectMany(i => new[] { i.Label, i.Text }),
            Block.Bullets b => b.Texts,
            Block.Notice b => [b.Title, .. b.Texts],
            Block.Table b => [b.Caption, .. b.Columns.Select(c => c.Name), .. b.Rows.SelectMany(r => r.Cells)],
            Block.Picture b => b.Drawing.Shapes.OfType<Shape.Label>().Select(l => l.Text).Prepend(b.Drawing.Title),
            Block.Code b => [b.Text, b.Words],
            Block.Contents b => b.Parts,
            _ => [],
        };

    private static string PaperText(byte[] bytes)
    {
        using PdfDocument paper = PdfDocument.Open(bytes);
        return string.Concat(paper.GetPages().Select(TextOf));
    }

    // In the order of printing: a cell's lines stand together, the foot comes last.
    private static string TextOf(Page page) => string.Concat(page.Letters.Select(l => l.Value));

    // Spaces are where lines broke, so they don't count.
    private static string Squeezed(string text) => string.Concat(text.Where(c => !char.IsWhiteSpace(c)));
}
