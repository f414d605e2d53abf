using ProcRunner.Quantities;

namespace ProcRunner.Core.Tests.ShopMath.Work;

/// <summary>Conversions that manuals print wrong.</summary>
public class PrintedConversionTests
{
    [Theory]
    // TM 9-6115-604-34 prints 21.378 and 21.415 mm for these.
    [InlineData("0.8456 in", "21.478 mm", "21.378 mm")]
    [InlineData("0.8435 in", "21.425 mm", "21.415 mm")]
    // TM 5-6115-593-34 prints 0.159 mm for 1/16 in, TM 9-2815-255-24 0.015 mm for 0.006 in.
    [InlineData("0.0625 in", "1.5875 mm", "0.1590 mm")]
    [InlineData("0.006 in", "0.1524 mm", "0.0150 mm")]
    // TM 9-2815-225-34&P prints 3.226 and 3.251 cm, which is right, and wrong if read as mm.
    [InlineData("1.270 in", "32.26 mm", "3.23 mm")]
    [InlineData("1.280 in", "32.51 mm", "3.25 mm")]
    public void A_misprint_is_not_what_the_inch_value_is(string inch, string right, string misprint)
    {
        Assert.Equal(right, In(inch, right));
        Assert.NotEqual(misprint, In(inch, misprint));
    }

    // TM 9-6115-604-34, Table 1-4, prints 34.755 in for the larger end of a new head's thickness; 4.755 is meant, of a head that
    // starts at 4.745 and is worn out at 4.715.
    [Fact]
    public void A_misprint_leaves_a_budget_nobody_would_believe()
    {
        WorkBench.Gives("deck-cut-allowed", "thickness=4.755 in; minimum=4.715 in", "cut allowed=0.040 in");
        WorkBench.Gives("deck-cut-allowed", "thickness=34.755 in; minimum=4.715 in", "cut allowed=30.040 in");
        WorkBench.Gives("deck-wedge", "thickness=4.745 4.755 in", "wedge=0.010 in");
    }

    // The least thickness of an industrial diesel head, printed 98.89 mm (3.893 in); TM 5-1940-322-24: a spring's free length of
    // 2.362 in (60.00 mm), its lean of at most 0.039 in (1.00 mm).
    [Theory]
    [InlineData("98.89 mm", "3.893 in")]
    [InlineData("0.10 mm", "0.004 in")]
    [InlineData("0.05 mm", "0.002 in")]
    [InlineData("152 mm", "6 in")]
    // TM 5-4310-393-14: 0.0196 in (0.5 mm) may come off.
    [InlineData("0.0196 in", "0.5 mm")]
    // https://www.aa1car.com/library/ar396.htm: 0.7 to 1.2 um beside 27 to 47 uin.
    [InlineData("27 uin", "0.7 um")]
    [InlineData("47 uin", "1.2 um")]
    [InlineData("2.362 in", "59.99 mm")] // the page rounds to 60.00
    [InlineData("0.039 in", "0.99 mm")] // and to 1.00
    public void A_printed_pair_is_one_length(string printed, string other)
    {
        Assert.True(Quantity.TryParse(other, out Quantity wanted));
        Assert.Equal(wanted.ToString(), In(printed, other));
    }

    // Ra in microinches and micrometres, exactly 0.0254 apart.
    [Theory]
    [InlineData("20 uin", "0.508 um")]
    [InlineData("30 uin", "0.762 um")]
    [InlineData("47 uin", "1.1938 um")]
    [InlineData("60 uin", "1.524 um")]
    [InlineData("75 uin", "1.905 um")]
    [InlineData("100 uin", "2.54 um")]
    [InlineData("125 uin", "3.175 um")]
    [InlineData("130 uin", "3.302 um")]
    public void A_roughness_is_the_same_exactly(string inch, string metric) =>
        Assert.Equal(Known.Of(inch), Known.Of(metric));

    private static string In(string from, string like)
    {
        Assert.True(Quantity.TryParse(like, out Quantity wanted));
        Assert.True(
            Known.Of(from).TryToQuantity(wanted.Unit, wanted.Value.Scale, Rounding.Nearest, out Quantity found)
        );
        return found.ToString();
    }
}
