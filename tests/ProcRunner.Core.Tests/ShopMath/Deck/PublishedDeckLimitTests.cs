using ProcRunner.Core.Tests.ShopMath.Work;

namespace ProcRunner.Core.Tests.ShopMath.Deck;

/// <summary>Limits of decks that were printed, given to the calculations that hold a reading against them.</summary>
public class PublishedDeckLimitTests
{
    private const string Rough = "too rough";
    private const string Smooth = "too smooth";
    private const string Good = "in the band";

    [Theory]
    // Multi-layer steel gaskets, https://www.aa1car.com/library/ar396.htm: 0.7 to 1.2 um Ra, printed 27 to 47 uin beside it.
    [InlineData("0.7 um", "1.2 um", "27.6 uin", Good)]
    [InlineData("0.7 um", "1.2 um", "27.5 uin", Smooth)]
    [InlineData("0.7 um", "1.2 um", "47.2 uin", Good)]
    [InlineData("0.7 um", "1.2 um", "47.3 uin", Rough)]
    // Composition gaskets: not smoother than 30 uin Ra, https://tamirkaran-iran.ir/cylinder-head-resurfacing-getting-the-correct-surface-finish/;
    // 60 to 100 for iron, 50 to 60 for aluminium (from memory).
    [InlineData("30 uin", "100 uin", "29 uin", Smooth)]
    [InlineData("30 uin", "100 uin", "30 uin", Good)]
    [InlineData("60 uin", "100 uin", "1.524 um", Good)]
    [InlineData("60 uin", "100 uin", "2.54 um", Good)]
    [InlineData("60 uin", "100 uin", "2.541 um", Rough)]
    [InlineData("50 uin", "60 uin", "61 uin", Rough)]
    // TM 9-2815-255-24, ground face of a head: 75 to 130 uin (AA, which is Ra).
    [InlineData("75 uin", "130 uin", "74 uin", Smooth)]
    [InlineData("75 uin", "130 uin", "1.905 um", Good)]
    [InlineData("75 uin", "130 uin", "3.302 um", Good)]
    [InlineData("75 uin", "130 uin", "131 uin", Rough)]
    public void A_band_of_roughness(string low, string high, string value, string verdict) =>
        WorkBench.Gives(
            "texture-band",
            $"value={value}; parameter=Ra; low={low}; high={high}; band-parameter=Ra",
            $"verdict={verdict}"
        );

    [Theory]
    // https://kevinsautos.com/faq/what-is-the-acceptable-cylinder-head-warpage.html: 0.003 to 0.005 in over the whole face.
    // TM 9-4940-549-14&P: 0.003 in across and 0.005 in along.
    [InlineData("0.003 in", "0.002 in", "0.003 in", "in limits")]
    [InlineData("0.003 in", "0.003 in", "0.004 in", "not decided: the leaves are too coarse")]
    [InlineData("0.003 in", "0.004 in", "0.005 in", "out of limits")]
    [InlineData("0.005 in", "0.004 in", "0.005 in", "in limits")]
    [InlineData("0.005 in", "0.006 in", "0.007 in", "out of limits")]
    // https://www.catengine.info/workshop/3306/3306-cylinder-heads-critical-factors-for-reconditioning.html: 0.10 mm over all,
    // 0.05 mm in any 152 mm. TM 9-2815-255-24: waves of 0.0005 in at most.
    [InlineData("0.10 mm", "0.09 mm", "0.10 mm", "in limits")]
    [InlineData("0.05 mm", "0.06 mm", "0.07 mm", "out of limits")]
    [InlineData("0.0005 in", "0.0005 in", "0.0006 in", "not decided: the leaves are too coarse")]
    public void A_limit_of_warpage_felt_with_leaves(string limit, string goesIn, string staysOut, string verdict) =>
        WorkBench.Gives("feeler-gap", $"goes-in={goesIn}; stays-out={staysOut}; high={limit}", $"verdict={verdict}");

    [Theory]
    // Least thickness 98.89 mm of an industrial diesel head, same page as above; decks made up.
    [InlineData("thickness=98.95 mm; minimum=98.89 mm; cut=0.05 mm", "thickness left=98.90 mm; verdict=allowed")]
    [InlineData("thickness=98.95 mm; minimum=98.89 mm; cut=0.07 mm", "thickness left=98.88 mm; verdict=not allowed")]
    [InlineData("thickness=98.95 mm; minimum=98.89 mm; cut=0.06 mm", "thickness left=98.89 mm; verdict=allowed")]
    // TM 9-6115-604-34, Table 1-4, p. 1-15: new 4.745 to 4.755 in, wear limit 4.715 in.
    [InlineData("thickness=4.745 in; minimum=4.715 in", "cut allowed=0.030 in; binds=thickness")]
    [InlineData("thickness=4.755 in; minimum=4.715 in", "cut allowed=0.040 in; binds=thickness")]
    // TM 5-4310-393-14: 0.0196 in (0.5 mm) may come off a small compressor's head.
    [InlineData("own-limit=0.0196 in; cut=0.0196 in", "cut allowed=0.0196 in; binds=own limit; verdict=allowed")]
    [InlineData("own-limit=0.0196 in; cut=0.0197 in", "verdict=not allowed")]
    public void A_limit_of_what_may_come_off(string given, string gives) =>
        WorkBench.Gives("deck-cut-allowed", given, gives);
}
