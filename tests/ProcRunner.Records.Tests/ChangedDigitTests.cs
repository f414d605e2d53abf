using System.Text.RegularExpressions;
using System.Xml;
using System.Xml.Linq;
using UglyToad.PdfPig;

namespace ProcRunner.Records.Tests;

/// <summary>
/// Each value of the record is traced to its entry in the trail, in every form that people read; and one digit changed in one of
/// them, as a slip of the program or of somebody's pen, is named and nothing else.
/// </summary>
public partial class ChangedDigitTests
{
    private const int EveryNth = 11;

    [Theory]
    [InlineData("demo")]
    [InlineData("conceded")]
    public void A_digit_changed_on_the_page_is_named(string job)
    {
        Worked worked = Of(job);
        ValueTracer tracer = new(worked.Trail);
        XDocument page = Page(worked);
        Assert.Empty(tracer.Wrong(page));

        int changed = 0;
        foreach ((string Name, string At) value in tracer.Names.Where((_, i) => i % EveryNth == 0))
        {
            foreach (XText text in ValueTracer.Cells(page, value).SelectMany(c => c.Nodes().OfType<XText>()))
            {
                foreach (Match number in Number().Matches(text.Value.Split(" (rule")[0].Split(" (")[0]))
                {
                    string was = text.Value;
                    text.Value = Changed(was, number);
                    Assert.Equal([$"{value.Name} at {value.At}"], tracer.Wrong(page));
                    text.Value = was;
                    changed++;
                }
            }
        }

        Assert.Empty(tracer.Wrong(page));
        Assert.True(changed > 40, $"{changed} digits changed");
    }

    // What is told of results out of spec, of cuts and of what stood before names its entry, and nothing else may stand there.
    [Theory]
    [InlineData("demo")]
    [InlineData("conceded")]
    public void A_digit_changed_in_the_course_of_the_work_is_named(string job)
    {
        Worked worked = Of(job);
        StoryTracer tracer = new(worked.Trail);
        XDocument page = Page(worked);
        Assert.Empty(tracer.Wrong(page));

        int changed = 0;
        (XText Text, string Told, long From, long To)[] told =
        [
            .. StoryTracer.Told(page).Where(t => StoryTracer.Decimals(t.Told).Any()).Where((_, i) => i % 3 == 0),
        ];
        foreach ((XText text, string part, long from, long to) in told)
        {
            string was = text.Value;
            string number = StoryTracer.Decimals(part).Last();
            int at = part.LastIndexOf(number, StringComparison.Ordinal) + number.Length - 1;

            // To a number that stands beside it in the same entry by chance, as another place's reading does, it isn't changed.
            char digit = "0123456789".First(d => d != part[at] && !tracer.Stands(number[..^1] + d, from, to));
            text.Value = string.Concat(was.AsSpan(0, at), [digit], was.AsSpan(at + 1));
            Assert.Equal([text.Value], tracer.Wrong(page));
            text.Value = was;
            changed++;
        }

        Assert.True(changed > 40, $"{changed} digits changed");
    }

    [Theory]
    [InlineData("demo")]
    [InlineData("conceded")]
    public void A_digit_changed_in_the_table_of_values_is_named(string job)
    {
        Worked worked = Of(job);
        ValueTracer tracer = new(worked.Trail);
        List<List<string>> lines = CsvTests.Parse(worked.Text(".csv"));
        Assert.Empty(tracer.Wrong(lines));

        int changed = 0;
        foreach (List<string> line in lines.Where(l => l[0] == "value").Where((_, i) => i % EveryNth == 0))
        {
            // value, low, aim, high, as found, the places' readings
            foreach (int field in (int[])[3, 5, 6, 7, 10, 12])
            {
                string was = line[field];
                int from = field == 12 ? Math.Max(0, was.IndexOf(": ", StringComparison.Ordinal)) : 0;
                Match number = Number().Match(was, field == 12 && from == 0 ? was.Length : from);
                if (number.Success)
                {
                    line[field] = Changed(was, number);
                    Assert.Equal([$"{line[1]} at {line[2]}"], tracer.Wrong(lines));
                    line[field] = was;
                    changed++;
                }
            }
        }

        Assert.True(changed > 40, $"{changed} digits changed");
    }

    [Theory]
    [InlineData("demo")]
    [InlineData("conceded")]
    public void A_digit_changed_on_paper_is_named(string job)
    {
        Worked worked = Of(job);
        ValueTracer tracer = new(worked.Trail);
        using PdfDocument pdf = PdfDocument.Open(worked.Written(".pdf"));
        string paper = string.Concat(
            pdf.GetPages().SelectMany(p => p.Letters).Select(l => l.Value).Where(l => !string.IsNullOrWhiteSpace(l))
        );
        Assert.Empty(tracer.Wrong(paper));

        int changed = 0;
        foreach ((string Name, string At) value in tracer.Names.Where((_, i) => i % (5 * EveryNth) == 0))
        {
            (int from, int length) = tracer.RowOn(paper, value);
            foreach (Match number in Number().Matches(paper[from..(from + length)]).Take(4))
            {
                string other = paper[..from] + Changed(paper[from..(from + length)], number) + paper[(from + length)..];
                Assert.Equal([$"{value.Name} at {value.At}"], tracer.Wrong(other));
                changed++;
            }
        }

        Assert.True(changed > 10, $"{changed} digits changed");
    }

    // Drawings, stages and gauges: each number of them that people read or have read to them, changed by its last digit.
    [Theory]
    [InlineData("demo")]
    [InlineData("conceded")]
    public void A_digit_changed_in_a_drawing_beside_a_stage_or_a_gauge_is_named(string job)
    {
        Worked worked = Of(job);
        PictureTracer tracer = new(worked.Trail, worked.Book);
        XDocument page = Page(worked);
        Assert.Empty(tracer.Wrong(page));

        XText[] texts =
        [
            .. page.Descendants()
                .Where(e => e.Name.LocalName == "text" && e.Ancestors().Any(a => a.Name.LocalName == "figure"))
                .Where(e => !Names().IsMatch(e.Value))
                .SelectMany(e => e.Nodes().OfType<XText>()),
            .. Rows(page, "Who worked in each stage", "Gauges that were read"),
        ];
        IEnumerable<(XText Text, Match Number)> told = texts.SelectMany(t =>
            Number().Matches(t.Value).Select(n => (t, n))
        );
        int changed = 0;
        foreach ((XText text, Match number) in told.ToArray().Where((_, i) => i % 5 == 0))
        {
            string was = text.Value;
            text.Value = Changed(was, number);
            Assert.Single(tracer.Wrong(page));
            text.Value = was;
            changed++;
        }

        Assert.True(changed > 60, $"{changed} digits changed");
    }

    // What is read to those who don't see a drawing. The plan's words are the same values once more, with how they stand.
    [Theory]
    [InlineData("demo")]
    [InlineData("conceded")]
    public void A_digit_changed_in_the_words_of_a_drawing_is_named(string job)
    {
        Worked worked = Of(job);
        PictureTracer tracer = new(worked.Trail, worked.Book);
        XDocument page = Page(worked);
        int changed = 0;
        foreach (
            XText text in page.Descendants()
                .Where(e => e.Name.LocalName == "desc" && !e.Value.StartsWith("Plan", StringComparison.Ordinal))
                .SelectMany(e => e.Nodes().OfType<XText>())
        )
        {
            foreach (
                Match number in Number()
                    .Matches(text.Value)
                    .Where(n => n.Value.Contains('.'))
                    .Where((_, i) => i % 3 == 0)
            )
            {
                string was = text.Value;
                text.Value = Changed(was, number);
                Assert.EndsWith(" in words", Assert.Single(tracer.Wrong(page)), StringComparison.Ordinal);
                text.Value = was;
                changed++;
            }
        }

        Assert.True(changed > 30, $"{changed} digits changed");
    }

    [Theory]
    [InlineData("demo")]
    [InlineData("conceded")]
    public void A_digit_changed_in_a_drawing_on_paper_is_named(string job)
    {
        Worked worked = Of(job);
        PictureTracer tracer = new(worked.Trail, worked.Book);
        using PdfDocument pdf = PdfDocument.Open(worked.Written(".pdf"));
        string paper = string.Concat(
            pdf.GetPages().SelectMany(p => p.Letters).Select(l => l.Value).Where(l => !string.IsNullOrWhiteSpace(l))
        );
        Assert.Empty(tracer.Wrong(paper));

        int changed = 0;
        foreach ((string name, string piece) in tracer.Pieces)
        {
            int from = paper.IndexOf(piece, StringComparison.Ordinal);
            Match number = Number().Matches(piece).Last();
            string other = paper[..from] + Changed(piece, number) + paper[(from + piece.Length)..];
            Assert.Equal([name], tracer.Wrong(other));
            changed++;
        }

        Assert.True(changed > 50, $"{changed} digits changed");
    }

    [Theory]
    [InlineData("demo")]
    [InlineData("conceded")]
    public void A_digit_changed_beside_a_gauge_in_the_table_is_named(string job)
    {
        Worked worked = Of(job);
        PictureTracer tracer = new(worked.Trail, worked.Book);
        List<List<string>> lines = CsvTests.Parse(worked.Text(".csv"));
        Assert.Empty(tracer.Wrong(lines));

        foreach (List<string> line in lines.Where(l => l[0] == "gauge"))
        {
            string was = line[12];
            foreach (Match number in Number().Matches(was))
            {
                line[12] = Changed(was, number);
                Assert.Equal([$"gauge {line[1]}"], tracer.Wrong(lines));
            }

            line[12] = was;
        }
    }

    private static IEnumerable<XText> Rows(XDocument page, params string[] captions) =>
        page.Descendants("table")
            .Where(t => captions.Any(c => t.Element("caption")!.Value.StartsWith(c, StringComparison.Ordinal)))
            .SelectMany(t => t.Element("tbody")!.Descendants().SelectMany(e => e.Nodes().OfType<XText>()));

    private static Worked Of(string job) => Worked.All.Single(j => j.Name == job).Job;

    private static XDocument Page(Worked worked)
    {
        using StringReader text = new(worked.Text(".html"));
        using XmlReader reader = XmlReader.Create(text, new XmlReaderSettings { DtdProcessing = DtdProcessing.Ignore });
        return XDocument.Load(reader);
    }

    // The last digit, one more.
    private static string Changed(string text, Match number)
    {
        int at = number.Index + number.Length - 1;
        char digit = text[at] == '9' ? '0' : (char)(text[at] + 1);
        return string.Concat(text.AsSpan(0, at), [digit], text.AsSpan(at + 1));
    }

    // A valve's name or a cylinder's: they say where, not how much.
    [GeneratedRegex("^([0-9]+[A-Z]+|cylinder [0-9]+)$", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Names();

    [GeneratedRegex("[0-9]+([.][0-9]+)?", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Number();
}
