using System.Numerics;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using ProcRunner.Quantities;

namespace ProcRunner.Tests.Quantities;

/// <summary>
/// Ratios whose parts lie about the edge of what fits a long, against schoolbook arithmetic on big integers: the form that a
/// number is kept in must never show.
/// </summary>
public sealed class RationalEdgeTests
{
    /// <summary>A number as two parts, neither reduced nor turned.</summary>
    public sealed record Parts(BigInteger Above, BigInteger Below)
    {
        internal Rational Ratio => Rational.FromRatio(Above, Below);
    }

    public static Arbitrary<Parts> Numbers() =>
        Arb.From(
            from above in Whole()
            from below in Whole()
            select new Parts(above, below.IsZero ? BigInteger.One : below)
        );

    [Property(MaxTest = 5000, Arbitrary = [typeof(RationalEdgeTests)])]
    public void Arithmetic_is_that_of_big_integers(Parts a, Parts b)
    {
        (Rational x, Rational y) = (a.Ratio, b.Ratio);
        Same((a.Above * b.Below) + (b.Above * a.Below), a.Below * b.Below, x + y);
        Same((a.Above * b.Below) - (b.Above * a.Below), a.Below * b.Below, x - y);
        Same(a.Above * b.Above, a.Below * b.Below, x * y);
        Same(-a.Above, a.Below, -x);
        Same(BigInteger.Abs(a.Above), BigInteger.Abs(a.Below), x.Abs());
        Same(a.Above * a.Above * a.Above, a.Below * a.Below * a.Below, x.Pow(3));
        if (!b.Above.IsZero)
        {
            Same(a.Above * b.Below, a.Below * b.Above, x / y);
        }
    }

    // What is typed goes into base units by the units' own factors, whose parts below are products of twos and fives for most.
    [Property(MaxTest = 500, Arbitrary = [typeof(RationalEdgeTests)])]
    public void A_decimal_times_a_factor_is_that_of_big_integers(Parts any, int digits, long more, byte places)
    {
        decimal[] values = [new decimal(digits) / Power(places % 9), new decimal(more) / Power(places % 19), 0m];
        foreach (decimal value in values)
        {
            (BigInteger above, BigInteger below) = (
                new BigInteger(value * Power(value.Scale)),
                (BigInteger)Power(value.Scale)
            );
            Same(above * any.Above, below * any.Below, Rational.FromDecimal(value, any.Ratio));
            foreach (Unit unit in Units.All)
            {
                Rational factor = unit.Factor;
                Rational product = Rational.FromDecimal(value, factor);
                Same(above * factor.Numerator, below * factor.Denominator, product);
                Assert.Equal(product + unit.Offset, unit.ToBase(value));
            }
        }
    }

    private static decimal Power(int places)
    {
        decimal power = 1;
        for (int i = 0; i < places; i++)
        {
            power *= 10;
        }

        return power;
    }

    [Property(MaxTest = 5000, Arbitrary = [typeof(RationalEdgeTests)])]
    public void Order_and_equality_are_those_of_big_integers(Parts a, Parts b)
    {
        BigInteger left = a.Above * b.Below * a.Below.Sign * b.Below.Sign;
        BigInteger right = b.Above * a.Below * a.Below.Sign * b.Below.Sign;
        Assert.Equal(left.CompareTo(right), Math.Sign(a.Ratio.CompareTo(b.Ratio)));
        Assert.Equal(left == right, a.Ratio == b.Ratio);
        Assert.Equal(a.Above.Sign * a.Below.Sign, a.Ratio.Sign);
        Rational again = Rational.FromRatio(a.Above * b.Below, a.Below * b.Below);
        Assert.Equal(a.Ratio, again);
        Assert.Equal(a.Ratio.GetHashCode(), again.GetHashCode());
    }

    [Property(MaxTest = 3000, Arbitrary = [typeof(RationalEdgeTests)])]
    public void Rounding_to_a_step_is_the_whole_number_that_big_integers_give(Parts a, Parts b)
    {
        if (b.Ratio.IsZero)
        {
            return;
        }

        Rational step = b.Ratio.Abs();
        BigInteger above = a.Above * BigInteger.Abs(b.Below) * a.Below.Sign;
        BigInteger below = BigInteger.Abs(a.Below) * BigInteger.Abs(b.Above);
        BigInteger floor = BigInteger.Divide(above - (((above % below) + below) % below), below);
        BigInteger ceiling = above % below == 0 ? floor : floor + 1;
        BigInteger toZero = above.Sign < 0 ? ceiling : floor;
        BigInteger nearest = ((2 * (above - (floor * below))) - below) switch
        {
            { Sign: < 0 } => floor,
            { Sign: > 0 } => ceiling,
            _ => above.Sign < 0 ? floor : ceiling,
        };
        Rational Times(BigInteger steps) => Rational.FromInteger(steps) * step;
        Assert.Equal(Times(floor), a.Ratio.RoundToStep(step, Rounding.Down));
        Assert.Equal(Times(ceiling), a.Ratio.RoundToStep(step, Rounding.Up));
        Assert.Equal(Times(toZero), a.Ratio.RoundToStep(step, Rounding.TowardZero));
        Assert.Equal(Times(nearest), a.Ratio.RoundToStep(step, Rounding.Nearest));
    }

    // A double of its own kind, IEEE 754: the nearest one lies within half a step of the number, so no neighbour is nearer.
    [Property(MaxTest = 3000, Arbitrary = [typeof(RationalEdgeTests)])]
    public void No_neighbour_of_the_double_is_nearer(Parts a)
    {
        double near = a.Ratio.ToDouble();
        Rational off = (Rational.FromDouble(near) - a.Ratio).Abs();
        Assert.True(off <= (Rational.FromDouble(Math.BitIncrement(near)) - a.Ratio).Abs());
        Assert.True(off <= (Rational.FromDouble(Math.BitDecrement(near)) - a.Ratio).Abs());
    }

    [Property(MaxTest = 3000)]
    public void A_decimal_is_its_digits_over_a_power_of_ten(decimal value)
    {
        foreach (decimal one in (decimal[])[value, value / 1_000_000_000m, Math.Truncate(value), value % 1000m])
        {
            BigInteger unit = BigInteger.Pow(10, one.Scale);
            Rational read = Rational.FromDecimal(one);
            Assert.True(read.TryToDecimal(out decimal back));
            Assert.Equal(one, back);
            Assert.Equal(BigInteger.Zero, unit % read.Denominator);
        }
    }

    [Fact]
    public void The_least_long_is_kept_in_full()
    {
        Rational least = Rational.FromInteger(long.MinValue);
        Assert.Equal(-(BigInteger)long.MinValue, (-least).Numerator);
        Assert.Equal(Rational.One, least / least);
        Assert.Equal(BigInteger.One << 63, (Rational.One / least).Denominator);
        Assert.Equal(Rational.FromInteger(long.MinValue), Rational.FromInteger(long.MinValue + 1) - Rational.One);
    }

    private static void Same(BigInteger above, BigInteger below, Rational given)
    {
        BigInteger divisor = BigInteger.GreatestCommonDivisor(above, below) * below.Sign;
        Assert.Equal(above / divisor, given.Numerator);
        Assert.Equal(below / divisor, given.Denominator);
        Assert.Equal(Rational.FromRatio(above, below), given);
    }

    // Small numbers, powers of two and ten, the ends of a long, all give or take a little and with common divisors.
    private static Gen<BigInteger> Whole() =>
        from size in Gen.Elements(0, 1, 7, 20, 31, 32, 47, 62, 63, 64, 65, 100)
        from near in Gen.Choose(-3, 3)
        from factor in Gen.Elements(1, 2, 3, 5, 10, 127, 254)
        from small in Gen.Choose(0, 5000)
        from sign in Gen.Elements(-1, 1)
        from shape in Gen.Choose(0, 3)
        select sign
            * shape switch
            {
                0 => small,
                1 => (BigInteger.One << size) + near,
                2 => ((BigInteger.One << size) / factor * factor) + (near * factor),
                _ => BigInteger.Pow(10, size / 5) * small,
            };
}
