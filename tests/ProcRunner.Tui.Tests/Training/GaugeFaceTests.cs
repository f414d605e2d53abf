using ProcRunner.Lessons;
using ProcRunner.Quantities;
using ProcRunner.Shop;
using ProcRunner.Tui.Drawing;
using ProcRunner.Tui.Training;

namespace ProcRunner.Tui.Tests.Training;

/// <summary>
/// Faces of gauges, drawn for every value that they can show and read back by a reader that knows the gauge's geometry and
/// nothing of the drawing's making.
/// </summary>
public class GaugeFaceTests
{
    private static readonly GaugeCharacter Thimble = Of("micrometer", Inch(0.0001m), Inch(0.025m));
    private static readonly GaugeCharacter Depth = Of("depth", Inch(0.0001m), Inch(0.100m));
    private static readonly GaugeCharacter Indicator = Of("indicator", Inch(0.0001m), Inch(0.010m));
    private static readonly GaugeCharacter Bore = Of("bore", Inch(0.0001m), Inch(0.010m), FaceKind.Ring);
    private static readonly GaugeCharacter Vacuum = Of("vacuum", new(0.5m, Units.InchOfMercury), null, FaceKind.Scale);
    private static readonly GaugeCharacter Springs = Of(
        "spring tester",
        new(1, Units.PoundForce),
        null,
        FaceKind.Scale
    );
    private static readonly GaugeCharacter Feeler = Of("insert gap", Inch(0.0015m), null, FaceKind.Leaves);

    // 0.300 on the sleeve, one line of 0.025; on the thimble the long line has passed one line above 15; line 7 of the sleeve's
    // ten stands on a line of the thimble: 0.300 + 0.025 + 0.016 + 0.0007 = 0.3417.
    [Fact]
    public void A_micrometer_at_0_3417() =>
        Assert.Equal(
            [
                "micrometer, 0 to 1 in",
                " 2       3   |--",
                " | ' ' ' | ' |--",
                " ============|",
                "             |--",
                "             |---- 15",
                "             |--",
                "             |--",
                "             |--",
                "vernier 0 1 2 3 4 5 6 7 8 9",
                " sleeve | | | | | | | | | |",
                "thimble  | | | | | | ||| |",
            ],
            GaugeFace.Of(Thimble, Inch(0.3417m))
        );

    [Fact]
    public void A_line_of_the_thimble_that_meets_the_long_line_is_drawn_at_its_end() =>
        Assert.Equal(" ============|---- 15", GaugeFace.Of(Thimble, Inch(0.3400m))[3]);

    // No turn, 0.050 at the long mark, two marks of 0.0001 past it: 0.0502.
    [Fact]
    public void A_dial_at_0_0502() =>
        Assert.Equal(
            [
                "depth, 0.100 in a turn",
                "turns 0   1   2   3   4",
                "        ^",
                "         .050      .051",
                " |....+....|....+....|....",
                "             ^",
                "a mark is 0.0001 in",
            ],
            GaugeFace.Of(Depth, Inch(0.0502m))
        );

    [Fact]
    public void Every_value_of_a_micrometer_is_read_back()
    {
        for (int i = 0; i < 10_000; i++)
        {
            decimal value = 3 + (i * 0.0001m);
            Assert.Equal(value, FaceReader.InchMicrometer(GaugeFace.Of(Thimble, Inch(value))));
        }
    }

    [Theory]
    [InlineData("0.01")]
    [InlineData("0.001")]
    public void Every_value_of_a_metric_micrometer_is_read_back(string resolution)
    {
        decimal step = decimal.Parse(resolution, System.Globalization.CultureInfo.InvariantCulture);
        GaugeCharacter gauge = Of("micrometer", Mm(step), Mm(0.5m));
        for (decimal value = 25; value < 50; value += step)
        {
            Assert.Equal(value, FaceReader.MetricMicrometer(GaugeFace.Of(gauge, Mm(value)), step < 0.01m));
        }
    }

    [Fact]
    public void Every_value_of_a_dial_is_read_back_on_both_sides_of_zero()
    {
        for (int i = 0; i < 4_000; i++)
        {
            decimal value = i * 0.0001m;
            Assert.Equal(value, FaceReader.Dial(GaugeFace.Of(Depth, Inch(value)), 0.1m, 0.0001m));
            Assert.Equal(value, FaceReader.Dial(GaugeFace.Of(Indicator, Inch(value)), 0.01m, 0.0001m));
            Assert.Equal(-value, FaceReader.Dial(GaugeFace.Of(Depth, Inch(-value)), 0.1m, 0.0001m));
        }
    }

    [Fact]
    public void Every_value_of_a_bore_gauge_is_read_back()
    {
        for (int i = 0; i < 20_000; i++)
        {
            decimal value = i * 0.0001m;
            Assert.Equal(value, FaceReader.Ring(GaugeFace.Of(Bore, Inch(value)), 0.0001m));
        }
    }

    [Fact]
    public void Every_value_of_a_scale_and_of_leaves_is_read_back()
    {
        for (int i = 0; i <= 60; i++)
        {
            Quantity vacuum = new(i * 0.5m, Units.InchOfMercury);
            Assert.Equal(vacuum.Value, FaceReader.Hand(GaugeFace.Of(Vacuum, vacuum), 0.5m, isBack: false));
            decimal gap = i * 0.0015m;
            Assert.Equal(gap, FaceReader.Leaves(GaugeFace.Of(Feeler, Inch(gap))));
        }

        for (int load = 0; load <= 400; load++)
        {
            IReadOnlyList<string> face = GaugeFace.Of(Springs, new Quantity(load, Units.PoundForce));
            Assert.Equal(load, FaceReader.Hand(face, 1, isBack: false));
        }
    }

    [Fact]
    public void Only_an_instrument_with_figures_shows_them()
    {
        Assert.Contains(
            "| 110 µin |",
            GaugeFace.Of(Of("roughness", new(1, Units.Microinch), null), new Quantity(110, Units.Microinch))[2],
            StringComparison.Ordinal
        );
        Assert.All(
            GaugeFace
                .Of(Depth, Inch(0.0512m))
                .Concat(GaugeFace.Of(Thimble, Inch(0.3417m)))
                .Concat(GaugeFace.Of(Bore, Inch(0.3433m))),
            line => Assert.DoesNotMatch("0512|3417|3433", line)
        );
    }

    [Fact]
    public void No_face_is_wider_or_taller_than_there_is_room_for()
    {
        (GaugeCharacter Gauge, Quantity Shown)[] most =
        [
            (Thimble, Inch(5.9999m)),
            (Of("micrometer", Mm(0.001m), Mm(0.5m)), Mm(124.999m)),
            (Depth, Inch(9.9999m)),
            (Depth, Inch(-9.9999m)),
            (Bore, Inch(4.3433m)),
            (Vacuum, new Quantity(29.5m, Units.InchOfMercury)),
            (Springs, new Quantity(412, Units.PoundForce)),
            (Feeler, Inch(0.0255m)),
        ];
        foreach ((GaugeCharacter gauge, Quantity shown) in most)
        {
            IReadOnlyList<string> face = GaugeFace.Of(gauge, shown);
            Assert.All(face, line => Assert.True(line.Length <= GaugeFace.Width, line));
            Assert.True(face.Count <= GaugeFace.Rows, gauge.Gauge.Kind);
            Assert.All(face, line => Assert.All(line, c => Assert.InRange(c, ' ', '~')));
        }
    }

    // A gauge that says how it shows, in a way that can't be drawn, shows figures rather than a wrong face.
    [Fact]
    public void A_step_that_no_vernier_shows_is_drawn_in_figures()
    {
        GaugeCharacter odd = Of("micrometer", Inch(0.00005m), Inch(0.025m), FaceKind.Micrometer);
        Assert.Equal(FaceKind.Digits, GaugeFace.KindOf(odd, Inch(0.3417m)));
        Assert.Equal(FaceKind.Digits, GaugeFace.KindOf(Of("depth", Inch(0.001m), Inch(0.025m), FaceKind.Dial), null));
    }

    [Theory]
    [InlineData(FaceKind.Ring, "ring")]
    [InlineData(FaceKind.Dial, "small hand")]
    [InlineData(FaceKind.Micrometer, "vernier")]
    public void The_coach_says_how_the_face_that_is_drawn_is_read(FaceKind face, string word)
    {
        GaugeCharacter gauge = face == FaceKind.Micrometer ? Thimble : Of("x", Inch(0.0001m), Inch(0.010m), face);
        Assert.Contains(word, GaugeLesson.Of(gauge), StringComparison.Ordinal);
    }

    private static Quantity Inch(decimal value) => new(value, Units.Inch);

    private static Quantity Mm(decimal value) => new(value, Units.Millimetre);

    private static GaugeCharacter Of(string kind, Quantity step, Quantity? turn, FaceKind? face = null) =>
        new(new Gauge("X", kind, kind, step, step, turn, null), 0, 0, 0, 0, 0, 0) { Face = face };
}
