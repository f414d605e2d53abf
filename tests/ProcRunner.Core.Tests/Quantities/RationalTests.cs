using System.Numerics;
using FsCheck;
using FsCheck.Xunit;
using ProcRunner.Quantities;

namespace ProcRunner.Tests.Quantities;

public sealed class RationalTests
{
    [Theory]
    [InlineData(6, 4, "3/2")]
    [InlineData(-6, 4, "-3/2")]
    [InlineData(6, -4, "-3/2")]
    [InlineData(-6, -4, "3/2")]
    [InlineData(0, -7, "0")]
    [InlineData(8, 4, "2")]
    public void Is_always_reduced_with_the_sign_above(int above, int below, string expected) =>
        Assert.Equal(expected, Rational.FromRatio(above, below).ToString());

    [Fact]
    public void Default_is_zero_and_counts_like_it()
    {
        Assert.Equal(Rational.Zero, Rational.FromInteger(0));
        Assert.Equal(Rational.Zero.GetHashCode(), Rational.FromRatio(0, 5).GetHashCode());
        Assert.Equal(Rational.One, default(Rational) + Rational.One);
        Assert.Equal(BigInteger.One, default(Rational).Denominator);
    }

    [Fact]
    public void Nothing_is_divided_by_zero()
    {
        Assert.Throws<DivideByZeroException>(() => Rational.FromRatio(1, 0));
        Assert.Throws<DivideByZeroException>(() => Rational.One / Rational.Zero);
        Assert.Throws<DivideByZeroException>(() => Rational.Zero.Pow(-1));
    }

    // Halves and near halves worked by hand.
    [Theory]
    [InlineData("0.0525", 3, "0.053", "0.052", "0.053", "0.052", "0.053")]
    [InlineData("-0.0525", 3, "-0.053", "-0.053", "-0.052", "-0.052", "-0.053")]
    [InlineData("0.0524", 3, "0.052", "0.052", "0.053", "0.052", "0.053")]
    [InlineData("-0.0524", 3, "-0.052", "-0.053", "-0.052", "-0.052", "-0.053")]
    [InlineData("0.052", 3, "0.052", "0.052", "0.052", "0.052", "0.052")]
    [InlineData("2.5", 0, "3", "2", "3", "2", "3")]
    public void Rounds_the_way_it_is_told(
        string value,
        int digits,
        string nearest,
        string down,
        string up,
        string inward,
        string outward
    )
    {
        Rational rational = Rational.FromDecimal(Number(value));
        Assert.Equal(Number(nearest), rational.Round(digits, Rounding.Nearest));
        Assert.Equal(Number(down), rational.Round(digits, Rounding.Down));
        Assert.Equal(Number(up), rational.Round(digits, Rounding.Up));
        Assert.Equal(Number(inward), rational.Round(digits, Rounding.TowardZero));
        Assert.Equal(Number(outward), rational.Round(digits, Rounding.AwayFromZero));
    }

    [Fact]
    public void Rounding_keeps_the_digits_asked_for()
    {
        Rational third = Rational.FromRatio(1, 3);
        Assert.Equal("0.3333", Text(third.Round(4, Rounding.Nearest)));
        Assert.Equal("2.0000", Text(Rational.FromInteger(2).Round(4, Rounding.Nearest)));
    }

    [Fact]
    public void Rounds_to_the_step_of_a_readout()
    {
        // 0.0005 in steps: 0.05234 lies between 0.0520 and 0.0525.
        Rational step = Rational.FromDecimal(0.0005m);
        Rational value = Rational.FromDecimal(0.05234m);
        Assert.Equal(Rational.FromDecimal(0.0525m), value.RoundToStep(step, Rounding.Nearest));
        Assert.Equal(Rational.FromDecimal(0.0520m), value.RoundToStep(step, Rounding.Down));
        Assert.Equal(Rational.FromDecimal(-0.0525m), (-value).RoundToStep(step, Rounding.Down));
        Assert.Throws<ArgumentOutOfRangeException>(() => value.RoundToStep(Rational.Zero, Rounding.Down));
    }

    [Fact]
    public void What_does_not_fit_a_decimal_is_said_not_cut()
    {
        Rational huge = Rational.FromInteger(BigInteger.Pow(10, 40));
        Assert.False(huge.TryToDecimal(out _));
        Assert.False(huge.TryRound(2, Rounding.Nearest, out _));
        Assert.Throws<OverflowException>(() => huge.Round(2, Rounding.Nearest));
        Assert.False(Rational.FromRatio(1, 3).TryToDecimal(out _));
        Assert.False(Rational.FromRatio(1, BigInteger.Pow(2, 29)).TryToDecimal(out _));
        Assert.True(Rational.FromRatio(1, BigInteger.Pow(2, 28)).TryToDecimal(out decimal smallest));
        Assert.Equal("0.0000000037252902984619140625", Text(smallest));
        Assert.True(Rational.FromDecimal(decimal.MaxValue).TryToDecimal(out decimal most));
        Assert.Equal(decimal.MaxValue, most);
    }

    [Fact]
    public void A_double_is_taken_for_exactly_what_its_bits_say()
    {
        // IEEE 754 binary64: 0.1 is 3602879701896397 / 2^55.
        Assert.Equal(Rational.FromRatio(3602879701896397, BigInteger.Pow(2, 55)), Rational.FromDouble(0.1));
        Assert.Equal(Rational.FromRatio(1, BigInteger.Pow(2, 1074)), Rational.FromDouble(double.Epsilon));
        Assert.Equal(Rational.Zero, Rational.FromDouble(-0.0));
        Assert.Throws<ArgumentOutOfRangeException>(() => Rational.FromDouble(double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>(() => Rational.FromDouble(double.NegativeInfinity));
    }

    [Fact]
    public void To_double_sees_what_lies_below_the_last_bit()
    {
        // 2^53 + 1 lies half way between two doubles and goes to the even one; any more and it goes up (IEEE 754).
        BigInteger half = BigInteger.Pow(2, 53) + 1;
        Assert.Equal(9007199254740992.0, Rational.FromInteger(half).ToDouble());
        Assert.Equal(
            9007199254740994.0,
            (Rational.FromInteger(half) + Rational.FromRatio(1, BigInteger.Pow(2, 40))).ToDouble()
        );
        Assert.Equal(double.NegativeInfinity, (-Rational.FromInteger(10).Pow(400)).ToDouble());
    }

    [Property]
    public bool A_double_comes_back_bit_for_bit(NormalFloat value) =>
        Rational.FromDouble(value.Item).ToDouble().Equals(value.Item + 0.0);

    // The division of the processor is correctly rounded by IEEE 754 and both operands are exact.
    [Property]
    public bool To_double_is_the_nearest_double(int above, NonZeroInt below) =>
        Rational.FromRatio(above, below.Item).ToDouble().Equals(((double)above / below.Item) + 0.0);

    [Property]
    public bool A_decimal_comes_back(decimal value) =>
        Rational.FromDecimal(value).TryToDecimal(out decimal back) && back == value;

    [Property]
    public bool Sums_and_products_commute_and_associate(decimal a, decimal b, NonZeroInt c)
    {
        (Rational x, Rational y) = (Rational.FromDecimal(a), Rational.FromDecimal(b));
        Rational z = Rational.FromRatio(1, c.Item);
        return x + y == y + x
            && x * y == y * x
            && (x + y) + z == x + (y + z)
            && (x * y) * z == x * (y * z)
            && x * (y + z) == (x * y) + (x * z);
    }

    [Property]
    public bool Inverses_undo(int above, NonZeroInt below, NonZeroInt other)
    {
        Rational x = Rational.FromRatio(above, below.Item);
        Rational y = Rational.FromRatio(other.Item, below.Item);
        return (x + y) - y == x
            && (x * y) / y == x
            && x + (-x) == Rational.Zero
            && y * y.Pow(-1) == Rational.One
            && x.Pow(0) == Rational.One
            && x.Pow(3) == x * x * x
            && x.Abs().Sign == Math.Abs(x.Sign);
    }

    [Property]
    public bool Order_is_total(int a, NonZeroInt b, int c, NonZeroInt d, int e, NonZeroInt f)
    {
        Rational x = Rational.FromRatio(a, b.Item);
        Rational y = Rational.FromRatio(c, d.Item);
        Rational z = Rational.FromRatio(e, f.Item);
        bool oneHolds = (x < y ? 1 : 0) + (x == y ? 1 : 0) + (x > y ? 1 : 0) == 1;
        bool isTransitive = !(x <= y && y <= z) || x <= z;
        return oneHolds && isTransitive && Math.Sign(x.CompareTo(y)) == -Math.Sign(y.CompareTo(x));
    }

    [Property]
    public bool Order_agrees_with_subtraction(int a, NonZeroInt b, int c, NonZeroInt d)
    {
        Rational x = Rational.FromRatio(a, b.Item);
        Rational y = Rational.FromRatio(c, d.Item);
        return Math.Sign(x.CompareTo(y)) == (x - y).Sign;
    }

    [Property]
    public bool Rounding_moves_less_than_one_unit_and_the_right_way(int above, NonZeroInt below, byte places)
    {
        int digits = places % 8;
        Rational x = Rational.FromRatio(above, below.Item);
        Rational unit = Rational.FromInteger(10).Pow(-digits);
        Rational At(Rounding mode) => Rational.FromDecimal(x.Round(digits, mode));
        return At(Rounding.Down) <= x
            && At(Rounding.Up) >= x
            && At(Rounding.TowardZero).Abs() <= x.Abs()
            && At(Rounding.AwayFromZero).Abs() >= x.Abs()
            && (At(Rounding.Nearest) - x).Abs() * Rational.FromInteger(2) <= unit
            && (At(Rounding.Up) - At(Rounding.Down)) <= unit;
    }

    private static decimal Number(string text) =>
        decimal.Parse(text, System.Globalization.CultureInfo.InvariantCulture);

    private static string Text(decimal value) => value.ToString(System.Globalization.CultureInfo.InvariantCulture);
}
