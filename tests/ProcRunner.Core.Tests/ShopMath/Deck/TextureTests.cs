using ProcRunner.Core.Tests.ShopMath.Work;
using ProcRunner.ShopMath;

namespace ProcRunner.Core.Tests.ShopMath.Deck;

/// <summary>Profiles whose parameters follow from their integrals: sine 2A/pi, A/sqrt 2; triangle A/2, A/sqrt 3; square A, A.</summary>
public class TextureTests
{
    private const int Steps = 100_000;

    [Fact]
    public void A_sine() => Holds(at => Math.Sin(2 * Math.PI * at), 0.6366197724, 0.7071067812);

    [Fact]
    public void A_triangle() => Holds(at => 1 - (4 * Math.Abs(at - 0.5)), 0.5, 0.5773502692);

    [Fact]
    public void A_square() => Holds(at => at < 0.5 ? 1 : -1, 1, 1);

    [Theory]
    [InlineData("texture-profile", "heights=1 um", "heights")]
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

    private static void Holds(Func<double, double> height, double ra, double rq)
    {
        // Midpoints of equal steps, amplitude 3 um.
        double[] heights = [.. Enumerable.Range(0, Steps).Select(at => 3 * height((at + 0.5) / Steps))];

        Assert.True(Texture.Of(heights).TryGet(out Texture? texture, out _));
        Assert.Equal(3 * ra, texture.RaMicrometres, 6);
        Assert.Equal(3 * rq, texture.RqMicrometres, 6);
        Assert.Equal(6, texture.RtMicrometres, 3);
    }
}
