using ProcRunner.Records.Drawings;
using ProcRunner.Records.Print;

namespace ProcRunner.Records.Tests;

public class DrawingTests
{
    private static readonly Drawing[] Drawings =
    [
        .. Papers.PaperMaker.Of(Worked.Conceded.Record).Blocks.OfType<Papers.Block.Picture>().Select(p => p.Drawing),
    ];

    [Fact]
    public void The_record_has_a_drawing_of_everything_that_people_look_at() =>
        Assert.Equal(
            [
                "Plan of the head with final values",
                "Recession by position against its window",
                "Seat runout by position against its limit",
                "Spring load with the valve closed",
                "Spring load with the valve open",
                "Deck thickness before and after",
                "Deck flatness before and after, bends much enlarged",
            ],
            Drawings.Select(d => d.Title)
        );

    [Fact]
    public void What_could_not_be_drawn_is_said()
    {
        BuildRecord record = Worked.Demo.Record;
        BuildRecord without = record with { Values = [.. record.Values.Where(v => v.Name != "seat runout")] };

        Assert.DoesNotContain("Not drawn", Worked.Demo.Text(".html"), StringComparison.Ordinal);
        Assert.Contains(
            Papers.PaperMaker.Of(without).Blocks.OfType<Papers.Block.Paragraph>(),
            p => p.Text == "Not drawn: seat runout (not measured)."
        );
    }

    [Fact]
    public void Nothing_is_drawn_outside_its_drawing() => Assert.All(Drawings, ShapeBounds.AssertInside);

    [Fact]
    public void A_drawing_says_its_numbers_in_words_too()
    {
        Drawing recession = Drawings[1];

        Assert.Contains(
            "3E 0.0647 in, CONCEDED (low 0.0520 in, aim 0.0580 in, high 0.0640 in)",
            recession.Alternative,
            StringComparison.Ordinal
        );
        Assert.Contains("as found 0.0560 in", recession.Alternative, StringComparison.Ordinal);
    }

    // What is out of spec has a mark of another shape and a word, not only another colour.
    [Fact]
    public void Out_of_spec_is_told_by_shape_and_word()
    {
        Shape.Outline[] marks = [.. Drawings[1].Shapes.OfType<Shape.Outline>()];

        Assert.Equal(2, marks.Length); // 3E and the legend
        Assert.Contains(Drawings[1].Shapes.OfType<Shape.Label>(), l => l.Text == "CONCEDED 0.0647");
        Assert.Empty(Drawings[2].Shapes.OfType<Shape.Outline>());
    }

    // 3E of the conceded job lies just past its high limit, where the limit's own figure would stand.
    [Fact]
    public void No_mark_lies_on_the_figure_of_a_limit()
    {
        Shape.Label[] limits = [.. Drawings[1].Shapes.OfType<Shape.Label>().Where(l => l.Size == 6.5)];
        Shape.Outline mark = Drawings[1].Shapes.OfType<Shape.Outline>().First();
        double left = mark.Points.Min(p => p.X);
        double right = mark.Points.Max(p => p.X);
        Shape.Label[] beside = [.. limits.Where(l => Math.Abs(l.Y - mark.Points.Average(p => p.Y)) < 4)];

        Assert.Equal(["0.0520", "0.0640"], beside.Select(l => l.Text));
        Assert.All(
            beside,
            label =>
            {
                double width = label.Text.Length * label.Size * 0.5;
                double from = label.Anchor == Anchor.End ? label.X - width : label.X;
                Assert.False(from < right && from + width > left, $"{label.Text} under the mark");
            }
        );
    }

    // By hand: the window of 1I is 0.0490 to 0.0610 in, its aim 0.0550 in is the middle.
    [Fact]
    public void The_aim_of_an_even_window_is_drawn_in_its_middle()
    {
        Shape.Box window = Drawings[1].Shapes.OfType<Shape.Box>().First();
        Shape.Line aim = Drawings[1].Shapes.OfType<Shape.Line>().First(l => l.IsDashed);

        Assert.Equal(window.X + (window.Width / 2), aim.X1, 3);
    }

    // The font's own table of characters: Latin, Greek and the signs of the trade are there, Chinese and emoji aren't.
    [Fact]
    public void What_the_paper_font_has_not_is_written_out()
    {
        FontCoverage font = new(PaperFonts.Read(isBold: false));

        Assert.Equal(
            "Az09 \u00b5\u00b0\u00b1\u00d7\u2264\u00e9\u03b1\u0416",
            font.Fit("Az09 \u00b5\u00b0\u00b1\u00d7\u2264\u00e9\u03b1\u0416")
        );
        Assert.Equal("\\u4e2d\\U0001f600", font.Fit("\u4e2d\U0001F600"));
    }
}
