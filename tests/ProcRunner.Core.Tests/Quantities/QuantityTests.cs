using ProcRunner.Quantities;

namespace ProcRunner.Tests.Quantities;

public sealed class QuantityTests
{
    [Theory]
    [InlineData("0.058 in", "1.4732 mm")] // 25.4 mm per inch, exact: NIST SP 811 (2008), appendix B.8
    [InlineData("0.002 in", "0.0508 mm")]
    [InlineData("1 in", "1000 thou")]
    [InlineData("1 in3", "16.387064 cm3")] // NIST SP 811 (2008), appendix B.8: exact
    [InlineData("1 lbf", "4.4482216152605 N")] // from lb = 0.45359237 kg and 9.80665 m/s2, exact
    [InlineData("1 lbf\u00B7ft", "1.3558179483314004 N\u00B7m")]
    [InlineData("212 degF", "100 degC")]
    [InlineData("-40 degF", "-40 degC")]
    [InlineData("-109.3 degF", "-78.5 degC")]
    [InlineData("18 degF-diff", "10 K")]
    [InlineData("60 arcmin", "1 deg")]
    [InlineData("1 bar", "100 kPa")]
    [InlineData("1 GPa", "1000 N/mm2")]
    [InlineData("5 %", "0.05")]
    public void Same_amount_in_two_units(string left, string right)
    {
        Assert.True(Read(left).SameAs(Read(right)));
        Assert.Equal(0, Read(left).CompareTo(Read(right)));
    }

    [Fact]
    public void Places_are_kept()
    {
        Assert.Equal("0.0520 in", Read("0.0520in").ToString());
        Assert.Equal("-0.0520 in", Read("-.0520 in").ToString());
    }

    [Fact]
    public void A_limit_in_the_other_unit_is_not_missed()
    {
        // 0.020 in is 0.508 mm
        Assert.True(Read("0.020 in").CompareTo(Read("0.5 mm")) > 0);
        Assert.Throws<ArgumentException>(() => Read("1 in").CompareTo(Read("1 N")));
        Assert.False(Read("1 in").TryConvert(Units.Newton, 3, Rounding.Nearest, out _));
        Assert.True(Read("0.058 in").TryConvert(Units.Millimetre, 3, Rounding.Up, out Quantity mm));
        Assert.Equal("1.474 mm", mm.ToString());
    }

    private static Quantity Read(string text) =>
        Quantity.TryParse(text, out Quantity quantity) ? quantity : throw new ArgumentException(text, nameof(text));
}
