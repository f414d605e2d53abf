using System.Numerics;
using ProcRunner.Quantities;

namespace ProcRunner.ShopMath;

/// <summary>The one place where a calculation with a root, an angle or pi leaves exact numbers and comes back to them.</summary>
public static class TwelveDigits
{
    /// <summary>Significant digits kept; a double is good for 15, so the noise of a few operations is cut off.</summary>
    public const int Digits = 12;

    private const int MostShortPlaces = 18;

    private static readonly long[] Powers =
    [
        .. Enumerable.Range(0, MostShortPlaces + 1).Select(places => (long)BigInteger.Pow(10, places)),
    ];

    /// <summary>
    /// The double rounded to 12 significant decimal digits, half away from zero, as an exact number. Of a length of 100 mm that
    /// leaves 0.1 nm, far below any gauge, so it is rounded to nearest and not away from the pass.
    /// </summary>
    /// <returns>False if the double is infinite or not a number.</returns>
    public static bool TryRound(double value, out Rational rounded)
    {
        rounded = Rational.Zero;
        if (!double.IsFinite(value))
        {
            return false;
        }

        if (value != 0)
        {
            int magnitude = (int)Math.Floor(Math.Log10(Math.Abs(value)));
            if (TryShort(value, Digits - 1 - magnitude, out rounded))
            {
                return true;
            }

            Rational step = Rational.FromInteger(10).Pow(magnitude - Digits + 1);
            rounded = Rational.FromDouble(value).RoundToStep(step, Rounding.Nearest);
        }

        return true;
    }

    // The same in whole numbers of 128 bits, for the sizes of a shop: value x 10^places is mantissa x 10^places / 2^down.
    private static bool TryShort(double value, int places, out Rational rounded)
    {
        rounded = Rational.Zero;
        long bits = BitConverter.DoubleToInt64Bits(Math.Abs(value));
        int down = 1075 - (int)(bits >> 52);
        if (places is < 0 or > MostShortPlaces || down is < 1 or > 120)
        {
            return false;
        }

        ulong mantissa = unchecked((ulong)((bits & 0xF_FFFF_FFFF_FFFF) | (1L << 52)));
        UInt128 scaled = mantissa * (UInt128)Powers[places];
        UInt128 half = UInt128.One << (down - 1);
        long whole = (long)((scaled + half) >> down);
        rounded = Rational.FromParts(value < 0 ? -whole : whole, Powers[places]);
        return true;
    }
}
