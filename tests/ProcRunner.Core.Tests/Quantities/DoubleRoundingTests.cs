using ProcRunner.Quantities;

namespace ProcRunner.Tests.Quantities;

public sealed class DoubleRoundingTests
{
    [Fact]
    public void Rounds_the_bits_not_their_short_text()
    {
        // 0.1 as a double lies above 0.1 and 0.3 below 0.3 (IEEE 754 binary64), so away from the pass differs.
        Assert.True(DoubleRounding.TryToDecimal(0.1, 4, Rounding.Up, out decimal up));
        Assert.Equal(0.1001m, up);
        Assert.True(DoubleRounding.TryToDecimal(0.3, 4, Rounding.Down, out decimal down));
        Assert.Equal(0.2999m, down);
        Assert.True(DoubleRounding.TryToDecimal(Math.Sqrt(2), 6, Rounding.Nearest, out decimal root));
        Assert.Equal(1.414214m, root);
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(1e40)]
    public void Says_what_has_no_decimal(double value) =>
        Assert.False(DoubleRounding.TryToDecimal(value, 4, Rounding.Up, out _));
}
