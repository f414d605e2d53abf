using System.Text.Json;
using System.Xml;
using System.Xml.Linq;
using ProcRunner.Records.Drawings;
using ProcRunner.Records.Papers;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Content;

namespace ProcRunner.Records.Tests;

/// <summary>A head of sixteen valves, and one of 192, the most that a head spec can have: the layout holds in every form.</summary>
public class ManyValvesTests
{
    [Theory]
    [InlineData("demo", 8, 2)]
    [InlineData("conceded", 8, 2)]
    [InlineData("conceded", 4, 4)]
    [InlineData("conceded", 24, 8)]
    public void Nothing_is_drawn_outside_its_drawing_and_no_drawing_is_longer_than_a_sheet(
        string job,
        int cylinders,
        int valves
    )
    {
        Drawing[] drawings = Drawings(job, cylinders, valves);

        Assert.All(
            drawings,
            drawing =>
            {
                Assert.InRange(drawing.Height, 1, 720);
                ShapeBounds.AssertInside(drawing);
            }
        );
        Assert.Equal(
            valves * cylinders,
            drawings.Where(d => d.Title.StartsWith("Plan ", StringComparison.Ordinal)).Sum(Valves)
        );
        Assert.Equal(
            valves * cylinders,
            drawings
                .Where(d => d.Title.StartsWith("Recession ", StringComparison.Ordinal))
                .Sum(d => d.Shapes.OfType<Shape.Label>().Count(l => l is { Size: 9, X: 0 }))
        );
    }

    // Texts beside each other don't run into each other: the plan's, where each valve has a column.
    [Theory]
    [InlineData("demo", 8, 2)]
    [InlineData("conceded", 8, 2)]
    [InlineData("conceded", 4, 4)]
    [InlineData("conceded", 24, 8)]
    public void No_text_of_the_plan_touches_another(string job, int cylinders, int valves) =>
        Assert.All(
            Drawings(job, cylinders, valves).Where(d => d.Title.StartsWith("Plan ", StringComparison.Ordinal)),
            drawing =>
            {
                foreach (
                    IGrouping<double, Shape.Label> line in drawing
                        .Shapes.OfType<Shape.Label>()
                        .GroupBy(l => Math.Round(l.Y, 1))
                )
                {
                    Shape.Label[] texts = [.. line.OrderBy(l => l.X)];
                    for (int i = 1; i < texts.Length; i++)
                    {
                        (_, _, double right, _) = ShapeBounds.Of(texts[i - 1], width: 0.56);
                        (double left, _, _, _) = ShapeBounds.Of(texts[i], width: 0.56);
                        Assert.True(right <= left, $"'{texts[i - 1].Text}' touches '{texts[i].Text}'");
                    }
                }
            }
        );

    [Theory]
    [InlineData(8, 2)]
    [InlineData(4, 4)]
    [InlineData(24, 8)]
    public void The_paper_has_every_value_and_nothing_beyond_its_edges(int cylinders, int valves)
    {
        BuildRecord record = ManyValves.Of(Worked.Demo.Record, cylinders, valves);
        using PdfDocument paper = PdfDocument.Open(Written(record, ".pdf"));
        Page[] pages = [.. paper.GetPages()];

        Assert.All(
            pages,
            page =>
                Assert.All(
                    page.Letters.Where(l => !string.IsNullOrWhiteSpace(l.Value)),
                    l =>
                    {
                        Assert.InRange(l.BoundingBox.Left, 0, page.Width);
                        Assert.InRange(l.BoundingBox.Right, 0, page.Width);
                        Assert.InRange(l.BoundingBox.Bottom, 0, page.Height);
                        Assert.InRange(l.BoundingBox.Top, 0, page.Height);
                        Assert.InRange(l.PointSize, 4.5, 100);
                    }
                )
        );
        string text = string.Concat(pages.SelectMany(p => p.Letters).Select(l => l.Value).Where(v => v != " "));
        Assert.All(record.Plan.Positions, p => Assert.Contains($"Valuesat{p.Name}", text, StringComparison.Ordinal));
        // What a head of so many valves has to say doesn't fit one page, and goes on.
        if (record.Plan.Positions.Count > 16)
        {
            return;
        }

        Assert.StartsWith("Contents", string.Concat(pages[1].Letters.Select(l => l.Value)), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(8, 2)]
    [InlineData(24, 8)]
    public void Page_table_and_data_have_every_value(int cylinders, int valves)
    {
        BuildRecord record = ManyValves.Of(Worked.Demo.Record, cylinders, valves);

        using MemoryStream page = new(Written(record, ".html"));
        using XmlReader reader = XmlReader.Create(page, new XmlReaderSettings { DtdProcessing = DtdProcessing.Ignore });
        XElement[] tables =
        [
            .. XDocument
                .Load(reader)
                .Descendants("table")
                .Where(t => t.Element("caption")!.Value.StartsWith("Values ", StringComparison.Ordinal)),
        ];
        Assert.Equal(record.Values.Count, tables.Sum(t => t.Element("tbody")!.Elements("tr").Count()));

        string csv = System.Text.Encoding.UTF8.GetString(Written(record, ".csv"));
        Assert.Equal(record.Values.Count, CsvTests.Parse(csv).Count(l => l[0] == "value"));

        using JsonDocument data = JsonDocument.Parse(Written(record, ".json"));
        Assert.Equal(record.Values.Count, data.RootElement.GetProperty("values").GetArrayLength());
    }

    private static Drawing[] Drawings(string job, int cylinders, int valves)
    {
        BuildRecord record = ManyValves.Of(Worked.All.Single(j => j.Name == job).Job.Record, cylinders, valves);
        return [.. PaperMaker.Of(record).Blocks.OfType<Block.Picture>().Select(p => p.Drawing)];
    }

    private static int Valves(Drawing plan) =>
        plan.Shapes.OfType<Shape.Label>().Count(l => l.IsStrong && l.Text.Length < 5 && char.IsAsciiDigit(l.Text[0]));

    private static byte[] Written(BuildRecord record, string ending)
    {
        using MemoryStream to = new();
        RecordFile.Write(record, "record" + ending, to, WritingProgress.None);
        return to.ToArray();
    }
}
