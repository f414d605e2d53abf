using System.Numerics;
using FsCheck;
using FsCheck.Xunit;
using ProcRunner.Quantities;
using ProcRunner.ShopMath;

namespace ProcRunner.Core.Tests.ShopMath.Work;

public class TwelveDigitsTests
{
    /// <summary>Against big integers: the double's own value to the step of its twelfth digit, half away from zero.</summary>
    [Property(MaxTest = 3000)]
    public void A_double_is_rounded_as_big_integers_round_it(NormalFloat seed, int exponent)
    {
        double value = Math.ScaleB(seed.Item, exponent % 60);
        if (value == 0 || !double.IsFinite(value))
        {
            return;
        }

        Assert.True(TwelveDigits.TryRound(value, out Rational rounded));
        Rational exact = Rational.FromDouble(value);
        int magnitude = (int)Math.Floor(Math.Log10(Math.Abs(value)));
        Rational steps = exact.Abs() / Rational.FromInteger(10).Pow(magnitude - 11);
        BigInteger whole = ((2 * steps.Numerator) + steps.Denominator) / (2 * steps.Denominator);
        Rational expected = Rational.FromInteger(whole * exact.Sign) * Rational.FromInteger(10).Pow(magnitude - 11);
        Assert.Equal(expected, rounded);
    }

    // Binary halves have an end, so these lie exactly between two steps of the twelfth digit.
    [Theory]
    [InlineData(100000000000.5, "100000000001")]
    [InlineData(-100000000000.5, "-100000000001")]
    [InlineData(0.5, "1/2")]
    [InlineData(1e-7, "1/10000000")]
    [InlineData(123456789012.0, "123456789012")]
    [InlineData(1e15, "1000000000000000")]
    public void Halves_go_away_from_zero(double value, string expected)
    {
        Assert.True(TwelveDigits.TryRound(value, out Rational rounded));
        Assert.Equal(expected, rounded.ToString());
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void What_is_no_number_is_refused(double value) => Assert.False(TwelveDigits.TryRound(value, out _));
}
