using System.Numerics;

namespace ProcRunner.Quantities;

/// <summary>A decimal as what it is made of: a whole number of 96 bits and the places after the point.</summary>
internal static class DecimalBits
{
    /// <summary>The most places after the point that a decimal holds.</summary>
    public const int MostPlaces = 28;

    /// <summary>10.</summary>
    public static readonly BigInteger Ten = new(10);

    private static readonly long[] Powers =
    [
        .. Enumerable.Range(0, 19).Select(places => (long)BigInteger.Pow(10, places)),
    ];

    private static readonly BigInteger Most = (BigInteger.One << 96) - 1;

    /// <summary>The digits of a decimal as a whole number, with its sign: 520 for 0.0520.</summary>
    public static BigInteger Mantissa(decimal value)
    {
        Span<int> bits = stackalloc int[4];
        decimal.GetBits(value, bits);
        BigInteger size =
            new BigInteger(unchecked((uint)bits[2])) << 64
            | new BigInteger(unchecked((uint)bits[1])) << 32
            | unchecked((uint)bits[0]);
        return bits[3] < 0 ? -size : size;
    }

    /// <summary>The digits of a decimal and the power of ten that they stand over; false where they don't fit longs.</summary>
    public static bool TryShort(decimal value, out long digits, out long unit)
    {
        Span<int> bits = stackalloc int[4];
        decimal.GetBits(value, bits);
        int places = (bits[3] >> 16) & 0xFF;
        digits = 0;
        unit = 1;
        if (bits[2] != 0 || bits[1] < 0 || places >= Powers.Length)
        {
            return false;
        }

        long size = ((long)bits[1] << 32) | unchecked((uint)bits[0]);
        digits = bits[3] < 0 ? -size : size;
        unit = Powers[places];
        return true;
    }

    /// <summary>The decimal of these digits and places; false if it has none. Never a negative zero.</summary>
    public static bool TryMake(BigInteger mantissa, int places, out decimal value)
    {
        BigInteger size = BigInteger.Abs(mantissa);
        if (places is < 0 or > MostPlaces || size > Most)
        {
            value = 0;
            return false;
        }

        uint low = (uint)(size & uint.MaxValue);
        uint middle = (uint)((size >> 32) & uint.MaxValue);
        uint high = (uint)(size >> 64);
        value = unchecked(new decimal((int)low, (int)middle, (int)high, mantissa.Sign < 0, (byte)places));
        return true;
    }

    /// <summary>The decimal of these digits, none of them <see cref="long.MinValue"/>, and places, 0 to 28. Never a negative zero.</summary>
    public static decimal Make(long digits, int places)
    {
        ulong size = (ulong)Math.Abs(digits);
        return unchecked(new decimal((int)size, (int)(size >> 32), 0, digits < 0, (byte)places));
    }

    /// <summary>So many digits times a power of ten; false where it doesn't fit a long.</summary>
    public static bool TryScale(long digits, int power, out long scaled)
    {
        scaled = 0;
        return power < Powers.Length && LongRatios.TryTimes(digits, Powers[power], out scaled);
    }

    /// <summary>The decimal with its point moved so many places right, or left below zero; the digits stay.</summary>
    public static bool TryShift(decimal value, int places, out decimal moved)
    {
        int wanted = value.Scale - places;
        return wanted >= 0
            ? TryMake(Mantissa(value), wanted, out moved)
            : TryMake(Mantissa(value) * BigInteger.Pow(Ten, -wanted), 0, out moved);
    }
}
