using ProcRunner.Core.Tests.ShopMath.Work;
using ProcRunner.ShopMath;

namespace ProcRunner.Core.Tests.ShopMath.Chamber;

public class ChamberTests
{
    // The usual slip: swept / ratio, 52.584969918 cm3, gives 10.5 and not 9.5.
    [Fact]
    public void A_chamber_for_a_ratio_is_not_swept_over_ratio()
    {
        WorkBench.Gives("compression-ratio", "bore=86 mm; stroke=86 mm; chamber=52.584969918 cm3", "ratio=10.500000");
        WorkBench.Gives("compression-ratio", "bore=86 mm; stroke=86 mm; chamber=58.771436967 cm3", "ratio=9.500000");
    }

    [Theory]
    [InlineData(5)]
    [InlineData(9.5)]
    [InlineData(22)]
    public void Inverses_invert(double ratio)
    {
        Assert.True(ChamberVolume.ForRatio(500, ratio).TryGet(out double chamber, out _));
        Assert.True(ChamberVolume.Ratio(500, chamber).TryGet(out double back, out _));
        Assert.Equal(ratio, back, 12);
    }

    [Theory]
    [InlineData("compression-ratio", "bore=0 mm; stroke=86 mm; chamber=50 cm3", "bore")]
    [InlineData("compression-ratio", "bore=86 mm; stroke=86 mm; chamber=50 cm3; change=-60 cm3", "chamber")]
    [InlineData("chamber-for-ratio", "bore=86 mm; stroke=86 mm; ratio=1", "ratio")]
    [InlineData("recession-volume", "head-diameter=40 mm; sink=0.5 mm; valves=1.5", "valves")]
    [InlineData("skim-volume", "deck-cut=0.1 mm; area=0 cm2", "area")]
    public void What_can_not_be_is_refused_by_name(string function, string given, string argument) =>
        Assert.Equal(argument, WorkBench.Fault(function, given).Argument);
}
