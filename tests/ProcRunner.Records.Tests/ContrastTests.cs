using ProcRunner.Records.Drawings;

namespace ProcRunner.Records.Tests;

// Web Content Accessibility Guidelines 2.1, success criterion 1.4.3: text 4.5 to 1; 1.4.11: marks 3 to 1; definitions of
// "contrast ratio" and "relative luminance". From memory; the two ends of the scale are checked below.
public class ContrastTests
{
    [Theory]
    [InlineData(nameof(Tone.Ink), nameof(Tone.Paper), 4.5)]
    [InlineData(nameof(Tone.Ink), nameof(Tone.Ground), 4.5)]
    [InlineData(nameof(Tone.Ink), nameof(Tone.AttentionGround), 4.5)]
    [InlineData(nameof(Tone.Quiet), nameof(Tone.Paper), 4.5)]
    [InlineData(nameof(Tone.Quiet), nameof(Tone.Ground), 4.5)]
    [InlineData(nameof(Tone.Quiet), nameof(Tone.AttentionGround), 4.5)]
    [InlineData(nameof(Tone.Attention), nameof(Tone.Paper), 4.5)]
    [InlineData(nameof(Tone.Attention), nameof(Tone.Ground), 4.5)]
    [InlineData(nameof(Tone.Attention), nameof(Tone.AttentionGround), 4.5)]
    [InlineData(nameof(Tone.Value), nameof(Tone.Paper), 4.5)]
    [InlineData(nameof(Tone.Value), nameof(Tone.Span), 3)]
    [InlineData(nameof(Tone.Attention), nameof(Tone.Span), 3)]
    [InlineData(nameof(Tone.Found), nameof(Tone.Paper), 3)]
    [InlineData(nameof(Tone.Found), nameof(Tone.Span), 3)]
    public void What_is_to_be_read_stands_out_from_its_ground(string over, string ground, double least) =>
        Assert.True(
            Ratio(Parse(over), Parse(ground)) >= least,
            $"{over} on {ground}: {Ratio(Parse(over), Parse(ground))}"
        );

    // The scale runs from 1, a colour on itself, to 21, black on white (same source).
    [Fact]
    public void The_scale_has_its_two_ends()
    {
        Assert.Equal(1, Ratio(Tone.Paper, Tone.Paper), 6);
        Assert.Equal(21, (1.0 + 0.05) / (Luminance((0, 0, 0)) + 0.05), 6);
        Assert.Equal(1, Luminance((255, 255, 255)), 6);
    }

    private static Tone Parse(string name) => Enum.Parse<Tone>(name);

    private static double Ratio(Tone a, Tone b)
    {
        double first = Luminance(Palette.Of(a)!.Value);
        double second = Luminance(Palette.Of(b)!.Value);
        return (Math.Max(first, second) + 0.05) / (Math.Min(first, second) + 0.05);
    }

    private static double Luminance((byte Red, byte Green, byte Blue) colour) =>
        (0.2126 * Linear(colour.Red)) + (0.7152 * Linear(colour.Green)) + (0.0722 * Linear(colour.Blue));

    private static double Linear(byte channel)
    {
        double value = channel / 255.0;
        return value <= 0.03928 ? value / 12.92 : Math.Pow((value + 0.055) / 1.055, 2.4);
    }
}
