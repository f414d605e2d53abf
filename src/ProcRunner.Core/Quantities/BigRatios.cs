using System.Numerics;

namespace ProcRunner.Quantities;

/// <summary>What becomes of a ratio of two big integers, the one below the line above zero.</summary>
internal static class BigRatios
{
    /// <summary>The nearest double (ties to even); infinite when too large.</summary>
    /// <param name="numerator">Not 0.</param>
    /// <param name="denominator">Above zero.</param>
    public static double ToDouble(BigInteger numerator, BigInteger denominator)
    {
        // A quotient of 62 or 63 bits, its lowest bit set when something was cut, rounds to 53 bits as the whole would.
        BigInteger above = BigInteger.Abs(numerator);
        int shift = (int)(above.GetBitLength() - denominator.GetBitLength()) - 62;
        BigInteger quotient = BigInteger.DivRem(
            shift < 0 ? above << -shift : above,
            shift > 0 ? denominator << shift : denominator,
            out BigInteger rest
        );
        ulong bits = (ulong)quotient | (rest.IsZero ? 0UL : 1UL);
        return Math.ScaleB(numerator.Sign * (double)bits, shift);
    }

    /// <summary>The same number as a decimal with no digit too many; false if no decimal is exactly equal.</summary>
    public static bool TryToDecimal(BigInteger above, BigInteger below, out decimal result)
    {
        result = 0;
        BigInteger rest = below;
        int twos = CountOut(ref rest, 2);
        int fives = rest.IsOne ? 0 : CountOut(ref rest, 5);
        int places = Math.Max(twos, fives);
        return rest.IsOne
            && places <= DecimalBits.MostPlaces
            && DecimalBits.TryMake(above * BigInteger.Pow(DecimalBits.Ten, places) / below, places, out result);
    }

    /// <summary>The quotient as a whole number, rounded.</summary>
    public static BigInteger Divide(BigInteger above, BigInteger below, Rounding mode)
    {
        BigInteger whole = BigInteger.DivRem(above, below, out BigInteger rest);
        if (rest.IsZero)
        {
            return whole;
        }

        bool outward = mode switch
        {
            Rounding.Nearest => BigInteger.Abs(rest) * 2 >= below,
            Rounding.Down => above.Sign < 0,
            Rounding.Up => above.Sign > 0,
            Rounding.TowardZero => false,
            Rounding.AwayFromZero => true,
            _ => throw new ArgumentOutOfRangeException(nameof(mode), mode, "Not a way to round."),
        };
        return outward ? whole + above.Sign : whole;
    }

    private static int CountOut(ref BigInteger value, int factor)
    {
        int count = 0;

        // Past the places of a decimal the count no longer matters.
        while (count <= DecimalBits.MostPlaces && (value % factor).IsZero)
        {
            value /= factor;
            count++;
        }

        return count;
    }
}
