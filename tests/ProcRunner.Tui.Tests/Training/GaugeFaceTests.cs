using ProcRunner.Quantities;
using ProcRunner.Shop;
using ProcRunner.Tui.Drawing;

namespace ProcRunner.Tui.Tests.Training;

/// <summary>
/// Faces of gauges, read back by the rule that every textbook of measuring gives (common practice, no source): sleeve tenths,
/// lines of 0.025, thimble, vernier; turns of a dial, long mark, marks to the hand.
/// </summary>
public class GaugeFaceTests
{
    private static readonly Gauge Thimble = Of("micrometer", 0.0001m, 0.025m);
    private static readonly Gauge Depth = Of("depth", 0.0001m, 0.100m);

    // 0.300 on the sleeve, one line of 0.025, 0.016 on the thimble, line 7 of the vernier: 0.3417.
    [Fact]
    public void A_micrometer_at_0_3417()
    {
        Assert.Equal(
            [
                "micrometer, 0 to 1 in",
                " 2       3   |- 18",
                " | ' ' ' | ' |- 17",
                " ============| <",
                "             |- 16",
                "             |- 15",
                " vernier: line 7 meets",
            ],
            GaugeFace.Of(Thimble, Inch(0.3417m))
        );
    }

    // No turn, 0.050 at the long mark, two marks of 0.0001 past it: 0.0502.
    [Fact]
    public void A_dial_at_0_0502()
    {
        IReadOnlyList<string> face = GaugeFace.Of(Depth, Inch(0.0502m));

        Assert.Equal("small hand: 0 past zero", face[1]);
        int hand = face[4].IndexOf('^', StringComparison.Ordinal);
        int mark = face[3].LastIndexOf('|', hand);
        Assert.Equal(2, hand - mark);
        Assert.Equal(".050", face[2].Substring(mark, 4));
    }

    [Fact]
    public void Every_reading_of_a_micrometer_and_a_dial_can_be_read_back()
    {
        for (int i = 0; i < 10_000; i += 7)
        {
            decimal value = i * 0.0001m;
            Assert.Equal(value, ReadThimble(GaugeFace.Of(Thimble, Inch(value))));
            Assert.Equal(value, ReadDial(GaugeFace.Of(Depth, Inch(value))));
            Assert.Equal(-value, ReadDial(GaugeFace.Of(Depth, Inch(-value))));
        }
    }

    [Fact]
    public void Only_an_instrument_with_digits_shows_digits()
    {
        Assert.Contains(
            "| 42 lbf |",
            GaugeFace.Of(Of("spring tester", 1, null), new Quantity(42, Units.PoundForce))[2],
            StringComparison.Ordinal
        );
        Assert.All(
            GaugeFace.Of(Depth, Inch(0.0512m)).Concat(GaugeFace.Of(Thimble, Inch(0.3417m))),
            line =>
                Assert.True(
                    !line.Contains("0512", StringComparison.Ordinal)
                        && !line.Contains("3417", StringComparison.Ordinal),
                    line
                )
        );
        Assert.All(GaugeFace.Of(Depth, Inch(9.9999m)), line => Assert.True(line.Length <= GaugeFace.Width, line));
    }

    private static decimal ReadThimble(IReadOnlyList<string> face)
    {
        string marks = face[2][..face[2].IndexOf("|-", StringComparison.Ordinal)];
        int tenth = marks.LastIndexOf('|');
        int number = int.Parse(face[1].Substring(tenth, 2).Trim(), System.Globalization.CultureInfo.InvariantCulture);
        int lines = marks[tenth..].Count(c => c == '\'');
        int thimble = int.Parse(face[4][^2..].Trim(), System.Globalization.CultureInfo.InvariantCulture);
        int vernier = face[6].First(char.IsDigit) - '0';
        return (number * 0.1m) + (lines * 0.025m) + (thimble * 0.001m) + (vernier * 0.0001m);
    }

    private static decimal ReadDial(IReadOnlyList<string> face)
    {
        int turns = face[1].First(char.IsDigit) - '0';
        int hand = face[4].IndexOf('^', StringComparison.Ordinal);
        int mark = face[3].LastIndexOf('|', hand);
        decimal number = decimal.Parse(face[2].AsSpan(mark, 4), System.Globalization.CultureInfo.InvariantCulture);
        decimal size = (turns * 0.1m) + number + ((hand - mark) * 0.0001m);
        return face[1].EndsWith("back of zero", StringComparison.Ordinal) ? -size : size;
    }

    private static Quantity Inch(decimal value) => new(value, Units.Inch);

    private static Gauge Of(string kind, decimal step, decimal? turn)
    {
        Quantity resolution = new(step, kind == "spring tester" ? Units.PoundForce : Units.Inch);
        return new Gauge("X", kind, kind, resolution, resolution, turn is { } t ? Inch(t) : null, null);
    }
}
