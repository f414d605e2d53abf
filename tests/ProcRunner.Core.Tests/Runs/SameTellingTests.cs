using ProcRunner.Runs;

namespace ProcRunner.Core.Tests.Runs;

// 1 lbf = 4.448 222 N (NIST SP 811 (2008) App. B.8): 48.197 lbf are 214.3910 N. 1 in = 25.4 mm.
public class SameTellingTests
{
    [Theory]
    [InlineData("109.9999989 lbf", "110.000 lbf")]
    [InlineData("110.000 lbf", "110.000 lbf")]
    [InlineData("48.19677419 lbf", "48.197 lbf")]
    [InlineData("48.197 lbf", "214.391 N")]
    [InlineData("0.0031 in", "0.07874 mm")]
    [InlineData("68 degF", "20.0 degC")]
    [InlineData("loadat(49.0, 1.700 in - 0.3 in) = 110.0", "loadat(49.0, 1.700 in - 0.31 in) = 110.0")]
    [InlineData("hotfit(1.5642, 0.0000 1/K) = 0.0031", "hotfit(1.5642, 0.0000114 1/K) = 0.0031")]
    public void One_amount_in_other_units_or_to_other_places_is_the_same(string then, string now)
    {
        Assert.True(SameTelling.Is(then, now));
        Assert.True(SameTelling.Is(now, then));
    }

    [Theory]
    [InlineData("110.000 lbf", "110.001 lbf")]
    [InlineData("110.000 lbf", "110.00062 lbf")]
    [InlineData("48.197 lbf", "214.395 N")]
    [InlineData("0.0031 in", "0.0032 mm")]
    [InlineData("0.3 in", "0.31 in")]
    [InlineData("77 in", "3.9308 in")]
    [InlineData("0.0697 in is over 0.0690 in", "0.0697 in is under 0.0690 in")]
    [InlineData("0.0697 in is over 0.0690 in", "0.0697 in is over 0.0691 in")]
    [InlineData("M1", "M2")]
    [InlineData("1.5 in", "1.5 lbf")]
    [InlineData("out", "in")]
    public void Anything_else_differs(string then, string now)
    {
        Assert.False(SameTelling.Is(then, now));
        Assert.False(SameTelling.Is(now, then));
    }
}
