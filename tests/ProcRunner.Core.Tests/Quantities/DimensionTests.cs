using FsCheck.Xunit;
using ProcRunner.Quantities;

namespace ProcRunner.Tests.Quantities;

public sealed class DimensionTests
{
    [Fact]
    public void Products_and_quotients_have_the_names_of_the_trade()
    {
        Assert.Equal(Dimension.OfPressure, Dimension.OfForce.Over(Dimension.OfArea));
        Assert.Equal(Dimension.OfSpringRate, Dimension.OfForce.Over(Dimension.OfLength));
        Assert.Equal(Dimension.OfTorque, Dimension.OfForce.Times(Dimension.OfLength));
        Assert.Equal(Dimension.OfVolume, Dimension.OfLength.Power(3));
        Assert.Equal(Dimension.OfSpeed, Dimension.OfFeed.Times(Dimension.OfTurningSpeed));
        Assert.Equal(Dimension.None, Dimension.OfExpansion.Times(Dimension.OfTemperatureDifference));
        Assert.Equal(Dimension.OfForce, Dimension.OfMass.Times(Dimension.OfLength).Over(Dimension.OfTime.Power(2)));
    }

    [Fact]
    public void A_turn_is_no_plain_number_and_a_temperature_no_difference()
    {
        Assert.NotEqual(Dimension.OfFrequency, Dimension.OfTurningSpeed);
        Assert.NotEqual(Dimension.OfTemperature, Dimension.OfTemperatureDifference);
        Assert.False(Dimension.OfTemperature.TryTimes(Dimension.None, out _));
        Assert.False(Dimension.OfLength.TryOver(Dimension.OfTemperature, out _));
        Assert.False(Dimension.OfTemperature.TryPower(2, out _));
        Assert.Throws<ArgumentException>(() => Dimension.OfLength.Times(Dimension.OfTemperature));
    }

    [Fact]
    public void An_exponent_out_of_range_is_said()
    {
        Assert.False(Dimension.OfLength.TryPower(128, out _));
        Assert.False(Dimension.OfLength.TryPower(int.MinValue, out _));
        Assert.False(Dimension.OfLength.Power(127).TryTimes(Dimension.OfLength, out _));
        Assert.True(Dimension.OfLength.TryPower(-128, out _));
    }

    [Theory]
    [InlineData(1, 0, "length")]
    [InlineData(0, 0, "pure number")]
    [InlineData(1, -1, "length per time")]
    [InlineData(4, -1, "length^4 time^-1")]
    public void Is_said_in_words(sbyte length, sbyte time, string expected) =>
        Assert.Equal(expected, new Dimension(length, 0, time, 0, 0, IsTemperaturePoint: false).ToString());

    [Property]
    public bool Over_undoes_times(sbyte a, sbyte b, sbyte c)
    {
        Dimension x = new(a, b, c, 0, 0, IsTemperaturePoint: false);
        Dimension y = new(c, a, b, 1, 1, IsTemperaturePoint: false);
        return !x.TryTimes(y, out Dimension product) || product.Over(y) == x;
    }
}
