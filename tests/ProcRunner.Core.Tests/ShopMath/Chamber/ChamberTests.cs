using ProcRunner.Core.Tests.ShopMath.Work;
using ProcRunner.ShopMath;

namespace ProcRunner.Core.Tests.ShopMath.Chamber;

public class ChamberTests
{
    // Rajput, I.C. Engines, ch. 3, a diesel cycle: bore 0.15 m, stroke 0.25 m, clearance 0.0004 m3; inputs as printed there, results
    // worked out apart from this program.
    [Fact]
    public void A_ratio_from_bore_stroke_and_clearance()
    {
        double swept = Known.Value(ChamberVolume.Swept(150, 250));

        Known.Printed("4417.864669", swept);
        Known.Printed("12.044661672776616", Known.Value(ChamberVolume.Ratio(swept, 400)));
    }

    // pi/4 D² of a head of 40 mm, sunk by 0.50 mm.
    [Fact]
    public void A_sunk_valve_makes_room()
    {
        double volume = Known.Value(ChamberVolume.OfSink(40, 0.50, 1));

        Known.Printed("0.628318531", volume);
        Known.Printed("628.318530718", 1000 * volume);
    }

    // 86 mm square, 9.5 to 1; two valves of 40 mm sunk 0.5 mm; 0.15 mm off a chamber of 52 cm2: by hand.
    [Fact]
    public void A_ratio_follows_sink_and_skim()
    {
        double swept = Known.Value(ChamberVolume.Swept(86, 86));
        double chamber = Known.Value(ChamberVolume.ForRatio(swept, 9.5));
        double sunk = Known.Value(ChamberVolume.OfSink(40, 0.5, 2));
        double skimmed = Known.Value(ChamberVolume.OfSkim(52, 0.15));

        Known.Printed("499.557214218", swept);
        Known.Printed("58.771436967", chamber);
        Known.Printed("1.256637061", sunk);
        Known.Printed("-0.78", skimmed);
        Known.Printed("9.322059675", Known.Value(ChamberVolume.Ratio(swept, chamber + sunk)));
        Known.Printed("9.614327224", Known.Value(ChamberVolume.Ratio(swept, chamber + skimmed)));
    }

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
