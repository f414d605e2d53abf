using System.Numerics;

namespace ProcRunner.Quantities;

/// <summary>
/// Arithmetic of reduced ratios whose parts are longs, none of them <see cref="long.MinValue"/>, with a part below the line
/// above zero. Nothing is lost: what doesn't fit longs is refused, and the caller works with big integers instead. Results
/// are reduced.
/// </summary>
internal static class LongRatios
{
    /// <summary>Sum; false if a step or the result doesn't fit.</summary>
    public static bool TrySum(long a, long b, long c, long d, out long above, out long below)
    {
        // Knuth, The Art of Computer Programming, vol. 2, 4.5.1: with g = gcd(b, d) the sum can only be reduced by a divisor of g.
        long g = b == d ? b : Divisor(b, d);
        (above, below) = (0, 0);
        if (
            !TryTimes(a, d / g, out long left)
            || !TryTimes(c, b / g, out long right)
            || !TryAdd(left, right, out above)
        )
        {
            return false;
        }

        long divisor = g == 1 ? 1 : Divisor(above, g);
        above /= divisor;
        return TryTimes(b / g, d / divisor, out below);
    }

    /// <summary>Product; false if it doesn't fit.</summary>
    public static bool TryProduct(long a, long b, long c, long d, out long above, out long below)
    {
        long g = Divisor(a, d);
        long h = Divisor(c, b);
        below = 0;
        return TryTimes(a / g, c / h, out above) && TryTimes(b / h, d / g, out below);
    }

    /// <summary>Product of two longs; false if it doesn't fit.</summary>
    public static bool TryTimes(long one, long other, out long product)
    {
        if (one == unchecked((int)one) && other == unchecked((int)other))
        {
            product = one * other;
            return true;
        }

        return Fits(Math.BigMul(one, other, out long low), low, out product);
    }

    /// <summary>Whether a number above zero has no other prime factors, as what stands below a decimal has none.</summary>
    public static bool IsOfTwosAndFives(long number)
    {
        long rest = number >> BitOperations.TrailingZeroCount(number);
        while (rest % 5 == 0)
        {
            rest /= 5;
        }

        return rest == 1;
    }

    /// <summary>Below 0, 0 or above 0 as a/b is below, equal to or above c/d.</summary>
    public static int Compare(long a, long b, long c, long d)
    {
        if (b == d)
        {
            return a.CompareTo(c);
        }

        int high = Math.BigMul(a, d, out long low).CompareTo(Math.BigMul(c, b, out long otherLow));
        return high != 0 ? high : unchecked((ulong)low).CompareTo(unchecked((ulong)otherLow));
    }

    /// <summary>The quotient as a whole number, rounded.</summary>
    public static long Divide(long above, long below, Rounding mode)
    {
        (long whole, long rest) = Math.DivRem(above, below);
        if (rest == 0)
        {
            return whole;
        }

        bool outward = mode switch
        {
            Rounding.Nearest => Math.Abs(rest) >= below - Math.Abs(rest),
            Rounding.Down => above < 0,
            Rounding.Up => above > 0,
            Rounding.TowardZero => false,
            Rounding.AwayFromZero => true,
            _ => throw new ArgumentOutOfRangeException(nameof(mode), mode, "Not a way to round."),
        };
        return outward ? whole + Math.Sign(above) : whole;
    }

    /// <summary>The same number as a decimal with no digit too many; false where there is none: unless below is 2^n 5^m.</summary>
    public static bool TryToDecimal(long above, long below, out decimal result)
    {
        if (below == 1)
        {
            result = DecimalBits.Make(above, 0);
            return true;
        }

        long rest = below;
        int twos = BitOperations.TrailingZeroCount(rest);
        int fives = 0;
        for (rest >>= twos; rest % 5 == 0; rest /= 5)
        {
            fives++;
        }

        int places = Math.Max(twos, fives);
        result = 0;
        if (rest != 1 || places > DecimalBits.MostPlaces)
        {
            return false;
        }

        if (DecimalBits.TryScale(1, places, out long unit) && TryTimes(above, unit / below, out long digits))
        {
            result = DecimalBits.Make(digits, places);
            return true;
        }

        return BigRatios.TryToDecimal(above, below, out result);
    }

    /// <summary>The greatest common divisor, above zero; of 0 and a number the number.</summary>
    /// <param name="one">Any.</param>
    /// <param name="other">Above zero.</param>
    public static long Divisor(long one, long other)
    {
        ulong a = (ulong)Math.Abs(one);
        ulong b = (ulong)other;
        if (b == 1 || a == 1)
        {
            return 1;
        }

        if (a == 0)
        {
            return other;
        }

        // One division first, where it takes off many bits at once.
        if (a >> 8 > b)
        {
            a %= b;
            if (a == 0)
            {
                return other;
            }
        }
        else if (b >> 8 > a)
        {
            b %= a;
            if (b == 0)
            {
                return (long)a;
            }
        }

        // Halving instead of dividing (Stein): a division costs more than all the shifts of a round.
        int twos = BitOperations.TrailingZeroCount(a | b);
        a >>= BitOperations.TrailingZeroCount(a);
        do
        {
            b >>= BitOperations.TrailingZeroCount(b);

            // Without a jump: which of the two is less can't be foreseen.
            ulong less = Math.Min(a, b);
            b = Math.Max(a, b) - less;
            a = less;
        } while (b != 0);

        return (long)(a << twos);
    }

    // A product of two longs fits when its upper half only repeats the sign of the lower; long.MinValue is left out, so that
    // every number that fits has a negative that fits.
    private static bool Fits(long high, long low, out long value)
    {
        value = low;
        return high == low >> 63 && low != long.MinValue;
    }

    private static bool TryAdd(long one, long other, out long sum)
    {
        sum = unchecked(one + other);
        return ((one ^ sum) & (other ^ sum)) >= 0 && sum != long.MinValue;
    }
}
