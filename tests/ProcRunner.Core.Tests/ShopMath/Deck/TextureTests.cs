using ProcRunner.Core.Tests.ShopMath.Work;
using ProcRunner.ShopMath;

namespace ProcRunner.Core.Tests.ShopMath.Deck;

/// <summary>Profiles whose parameters follow from their integrals: sine 2A/pi, A/sqrt 2; triangle A/2, A/sqrt 3; square A, A.</summary>
public class TextureTests
{
    private const int Steps = 1_000_000;

    [Fact]
    public void A_sine() => Holds(at => Math.Sin(2 * Math.PI * at), 0.6366197724, 0.7071067812);

    [Fact]
    public void A_triangle() => Holds(at => 1 - (4 * Math.Abs(at - 0.5)), 0.5, 0.5773502692);

    [Fact]
    public void A_square() => Holds(at => at < 0.5 ? 1 : -1, 1, 1);

    [Theory]
    [InlineData("texture-profile", "heights=1 um", "heights")]
    [InlineData("texture-profile", "heights=1 2 3 um; spacing=0.1 mm", "cut-off")]
    [InlineData("texture-profile", "heights=1 2 3 um; cut-off=0.8 mm", "spacing")]
    [InlineData("texture-profile", "heights=1 2 3 um; spacing=0.1 mm; cut-off=0.8 mm", "heights")]
    [InlineData("texture-profile", "heights=1 2 3 um; spacing=0.5 mm; cut-off=0.8 mm", "spacing")]
    [InlineData("texture-profile", "heights=1 2 3 um; spacing=0 mm; cut-off=0.8 mm", "spacing")]
    [InlineData("texture-profile", "heights=1 2 3 um; spacing=0.1 mm; cut-off=0 mm", "cut-off")]
    [InlineData("texture-cut-off", "ra=11 um", "ra")]
    [InlineData("texture-cut-off", "ra=0.02 um", "ra")]
    [InlineData("texture-unit", "value=1 um; parameter=roughness", "parameter")]
    [InlineData("texture-band", "value=1 um; parameter=Rz; low=0.7 um; high=1.2 um; band-parameter=Ra", "parameter")]
    [InlineData("texture-band", "value=1 um; parameter=Ra; low=2 um; high=1.2 um; band-parameter=Ra", "low")]
    [InlineData("deck-cut-allowed", "thickness=127 mm", "minimum")]
    [InlineData("deck-cut-allowed", "cut=0.1 mm", "thickness")]
    [InlineData("deck-cut-allowed", "budget=0.5 mm; block-lost=-0.1 mm", "block-lost")]
    [InlineData("deck-wedge", "thickness=127 mm", "thickness")]
    public void What_can_not_be_is_refused_by_name(string function, string given, string argument) =>
        Assert.Equal(argument, WorkBench.Fault(function, given).Argument);

    // Upper ends belong to their band: ISO 4288 and ISO 21920-3 (from memory): over 0.02 to 0.1 um 0.25 mm, to 2 um 0.8 mm, to 10 um
    // 2.5 mm; evaluated over five.
    [Theory]
    [InlineData("0.021 um", "0.25 mm", "1.25 mm")]
    [InlineData("0.1 um", "0.25 mm", "1.25 mm")]
    [InlineData("0.101 um", "0.8 mm", "4 mm")]
    [InlineData("2 um", "0.8 mm", "4 mm")]
    [InlineData("2.001 um", "2.5 mm", "12.5 mm")]
    [InlineData("10 um", "2.5 mm", "12.5 mm")]
    public void The_cut_off_follows_the_roughness(string ra, string cutOff, string length) =>
        WorkBench.Gives("texture-cut-off", $"ra={ra}", $"cut-off={cutOff}; evaluation length={length}");

    // ISO 16610-21: a wave as long as the cut-off is halved; of a wavelength w, 2^-(cut-off/w)^2 goes into the mean line.
    [Theory]
    [InlineData(0.8, 0.5)]
    [InlineData(0.4, 0.9375)]
    [InlineData(1.6, 0.1591035847)]
    [InlineData(0.2, 0.9999847412)]
    [InlineData(8, 0.0069075045)]
    public void The_filter_leaves_of_a_wave_what_its_length_says(double wavelengthMillimetres, double left)
    {
        const double Spacing = 0.001;
        const double CutOff = 0.8;
        double[] wave =
        [
            .. Enumerable
                .Range(0, 20_000)
                .Select(i => 3 * Math.Cos(2 * Math.PI * (i - 10_000) * Spacing / wavelengthMillimetres)),
        ];
        Assert.True(GaussianFilter.Roughness(wave, Spacing, CutOff).TryGet(out IReadOnlyList<double>? rough, out _));
        Assert.Equal(20_000 - 800, rough.Count);

        // The middle of the wave is a crest, far from the ends.
        Assert.Equal(3 * left, rough[10_000 - 400], 4);
    }

    [Fact]
    public void The_filter_takes_a_straight_slope_away_whole()
    {
        double[] slope = [.. Enumerable.Range(0, 200).Select(i => 5 + (0.3 * i))];
        Assert.True(GaussianFilter.Roughness(slope, 0.05, 0.8).TryGet(out IReadOnlyList<double>? rough, out _));
        Assert.All(rough.Skip(8).Take(rough.Count - 16), one => Assert.Equal(0, one, 9));
    }

    // Five sampling lengths of equal waves: each has the whole height, and so has their mean.
    [Fact]
    public void Rz_of_equal_waves_is_their_height_and_of_one_high_peak_a_fifth()
    {
        double[] waves = [.. Enumerable.Range(0, 1000).Select(i => Math.Sin(2 * Math.PI * (i + 0.5) / 100))];
        Assert.True(Texture.Of(waves).TryGet(out Texture? even, out _));
        Assert.Equal(2, even.RzMicrometres!.Value, 0.0011);
        double[] peak = new double[1000];
        peak[500] = 10;
        Assert.True(Texture.Of(peak).TryGet(out Texture? high, out _));
        Assert.Equal(2, high.RzMicrometres!.Value, 12);
        Assert.Equal(10, high.RtMicrometres, 12);
    }

    private static void Holds(Func<double, double> height, double ra, double rq)
    {
        // Equal steps that meet peaks, valleys and corners; to all ten digits.
        double[] heights = [.. Enumerable.Range(0, Steps).Select(at => height((double)at / Steps))];

        Assert.True(Texture.Of(heights).TryGet(out Texture? texture, out _));
        Assert.Equal(ra, texture.RaMicrometres, 10);
        Assert.Equal(rq, texture.RqMicrometres, 10);
        Assert.Equal(2, texture.RtMicrometres, 10);
        Assert.True(Texture.Of([.. heights.Select(one => 3 * one)]).TryGet(out Texture? taller, out _));
        Assert.Equal(3 * ra, taller.RaMicrometres, 9);
        Assert.Equal(3 * rq, taller.RqMicrometres, 9);
        Assert.Equal(6, taller.RtMicrometres, 9);
    }
}
