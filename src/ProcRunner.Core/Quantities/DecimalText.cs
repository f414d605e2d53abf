using System.Globalization;
using System.Numerics;

namespace ProcRunner.Quantities;

/// <summary>Reads a decimal as plain ASCII digits, without rounding what does not fit and without culture.</summary>
internal static class DecimalText
{
    // So many fit a long, whatever they are.
    private const int ShortDigits = 18;

    /// <summary>Digits with at most one point and no sign, at least one digit; the places typed are kept as the scale.</summary>
    /// <returns>False if it is anything else, or more than a decimal holds.</returns>
    public static bool TryUnsigned(ReadOnlySpan<char> text, out decimal value)
    {
        value = 0;
        int point = text.IndexOf('.');
        ReadOnlySpan<char> whole = point < 0 ? text : text[..point];
        ReadOnlySpan<char> places = point < 0 ? [] : text[(point + 1)..];
        if (whole.Length + places.Length is 0 or > 100 || !AllDigits(whole) || !AllDigits(places))
        {
            return false;
        }

        if (whole.Length + places.Length <= ShortDigits)
        {
            value = DecimalBits.Make(Digits(places, Digits(whole, 0)), places.Length);
            return true;
        }

        BigInteger mantissa = BigInteger.Parse(
            string.Concat("0", whole, places),
            NumberStyles.None,
            CultureInfo.InvariantCulture
        );
        return DecimalBits.TryMake(mantissa, places.Length, out value);
    }

    private static long Digits(ReadOnlySpan<char> text, long before)
    {
        foreach (char digit in text)
        {
            before = (before * 10) + (digit - '0');
        }

        return before;
    }

    private static bool AllDigits(ReadOnlySpan<char> text) => !text.ContainsAnyExceptInRange('0', '9');
}
