using System.Globalization;
using ProcRunner.Tui.Drawing;
using ProcRunner.Tui.Host;

namespace ProcRunner.Tui.Tests.Host;

public sealed class HostColoursTests
{
    // ECMA-48 8.3.117: 30 to 37 and 40 to 47 are colours; 90 to 97 (from memory: the aixterm extension) their bright ones.
    [Theory]
    [MemberData(nameof(Inks))]
    public void Without_colours_only_bold_and_reverse_are_sent(int ink) =>
        Assert.All(Numbers(ColourDepth.None, (Ink)ink), number => Assert.Contains(number, new[] { 0, 1, 7 }));

    // IEC 60073:2002 table 2 (from memory): red danger, yellow abnormal, green normal, blue mandatory.
    [Theory]
    [InlineData(Ink.Bad, 91)]
    [InlineData(Ink.Mind, 93)]
    [InlineData(Ink.Good, 92)]
    [InlineData(Ink.Act, 44)]
    internal void Sixteen_colours_mean_what_they_mean_at_a_machine(Ink ink, int colour) =>
        Assert.Contains(colour, Numbers(ColourDepth.Sixteen, ink));

    [Theory]
    [InlineData(ColourDepth.None)]
    [InlineData(ColourDepth.Sixteen)]
    [InlineData(ColourDepth.TwoFiftySix)]
    internal void Practice_is_reversed(ColourDepth depth) => Assert.Contains(7, Numbers(depth, Ink.Practice));

    [Theory]
    [InlineData(ColourDepth.Sixteen)]
    [InlineData(ColourDepth.TwoFiftySix)]
    internal void Plain_quiet_and_strong_have_no_hue(ColourDepth depth)
    {
        // xterm's table: 16 black, 231 white, 232 to 255 grey.
        int[] hueless = [0, 1, 5, 37, 38, 40, 48, 97, 16, 231, .. Enumerable.Range(232, 24)];
        foreach (Ink ink in new[] { Ink.Plain, Ink.Quiet, Ink.Strong })
        {
            Assert.All(Numbers(depth, ink), number => Assert.Contains(number, hueless));
        }
    }

    public static TheoryData<int> Inks => [.. Enum.GetValues<Ink>().Select(ink => (int)ink)];

    private static int[] Numbers(ColourDepth depth, Ink ink)
    {
        string sequence = new HostColours(depth).SequenceFor(HostColours.Of(ink));
        Assert.StartsWith("\u001b[", sequence, StringComparison.Ordinal);
        Assert.EndsWith("m", sequence, StringComparison.Ordinal);
        return [.. sequence[2..^1].Split(';').Select(number => int.Parse(number, CultureInfo.InvariantCulture))];
    }
}
