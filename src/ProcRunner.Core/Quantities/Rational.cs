using System.Globalization;
using System.Numerics;

namespace ProcRunner.Quantities;

/// <summary>
/// An exact ratio of two integers, always reduced, with a denominator above zero; <c>default</c> is 0.
/// </summary>
/// <remarks>
/// The folder's ground floor. A <see cref="Unit"/> carries its factor as a <see cref="Rational"/>, a <see cref="Quantity"/>
/// is a decimal in one unit as it was entered, <see cref="Exact"/> is the same amount in base units, and
/// <see cref="EntryText"/> reads what was typed. Sizes are bounded only by memory: who takes powers bounds the exponent.
/// </remarks>
public readonly struct Rational
    : IEquatable<Rational>,
        IComparable<Rational>,
        IComparable,
        IComparisonOperators<Rational, Rational, bool>
{
    private const long MostExactDouble = 1L << 53;

    // Most numbers of a shop fit two longs, which cost no memory of their own; the rest stand in _large. Every number has
    // exactly one of the two forms, so that equal numbers have equal fields.
    private readonly long _above;

    // Kept less one, so that the all-zero default is 0/1 and needs no special case.
    private readonly long _belowLessOne;
    private readonly LargeRatio? _large;

    private Rational(long above, long below)
    {
        _above = above;
        _belowLessOne = below - 1;
    }

    private Rational(LargeRatio large) => _large = large;

    /// <summary>0.</summary>
    public static Rational Zero => default;

    /// <summary>1.</summary>
    public static Rational One { get; } = new(1L, 1L);

    /// <summary>The part above the line; carries the sign.</summary>
    public BigInteger Numerator => _large?.Above ?? _above;

    /// <summary>The part below the line; always above zero.</summary>
    public BigInteger Denominator => _large?.Below ?? Below;

    /// <summary>-1, 0 or 1.</summary>
    public int Sign => _large?.Above.Sign ?? Math.Sign(_above);

    /// <summary>Whether this is 0.</summary>
    public bool IsZero => _large is null && _above == 0;

    /// <summary>Whether both parts have at most 63 bits; working with such numbers takes no memory.</summary>
    internal bool IsShort => _large is null;

    private long Below => _belowLessOne + 1;

    /// <summary>The same number; nothing is lost.</summary>
    public static Rational FromDecimal(decimal value) =>
        DecimalBits.TryShort(value, out long digits, out long unit)
            ? FromDigits(digits, unit)
            : FromRatio(DecimalBits.Mantissa(value), BigInteger.Pow(DecimalBits.Ten, value.Scale));

    /// <summary>The product of a decimal and a factor; nothing is lost.</summary>
    internal static Rational FromDecimal(decimal value, Rational factor) =>
        factor._large is null
        && LongRatios.IsOfTwosAndFives(factor.Below)
        && DecimalBits.TryShort(value, out long digits, out long unit)
        && LongRatios.TryTimes(digits, factor._above, out long above)
        && LongRatios.TryTimes(unit, factor.Below, out long below)
            ? FromDigits(above, below)
            : FromDecimal(value) * factor;

    /// <summary>The same number over 1.</summary>
    public static Rational FromInteger(BigInteger value) => OfReduced(value, BigInteger.One);

    /// <summary>The same number over 1.</summary>
    public static Rational FromInteger(long value) =>
        value == long.MinValue ? OfReduced(value, BigInteger.One) : new Rational(value, 1L);

    /// <summary>The reduced ratio of two integers.</summary>
    /// <exception cref="DivideByZeroException"><paramref name="denominator"/> is 0.</exception>
    public static Rational FromRatio(BigInteger numerator, BigInteger denominator)
    {
        if (denominator.IsZero)
        {
            throw new DivideByZeroException("A ratio over 0 has no value.");
        }

        BigInteger divisor = BigInteger.GreatestCommonDivisor(numerator, denominator) * denominator.Sign;
        return OfReduced(numerator / divisor, denominator / divisor);
    }

    /// <summary>Exactly the number that the bits of a double stand for (0.1 is 3602879701896397/2^55).</summary>
    /// <exception cref="ArgumentOutOfRangeException">The double is not a number, or infinite.</exception>
    public static Rational FromDouble(double value)
    {
        if (!double.IsFinite(value))
        {
            throw new ArgumentOutOfRangeException(nameof(value), value, "Only a finite double is a ratio.");
        }

        long bits = BitConverter.DoubleToInt64Bits(value);
        int biased = (int)((bits >> 52) & 0x7FF);
        long fraction = bits & 0xF_FFFF_FFFF_FFFF;
        BigInteger mantissa = biased == 0 ? fraction : fraction | (1L << 52);
        int exponent = Math.Max(biased, 1) - 1075;
        BigInteger signed = bits < 0 ? -mantissa : mantissa;
        return exponent < 0 ? FromRatio(signed, BigInteger.One << -exponent) : FromInteger(signed << exponent);
    }

    /// <summary>The number without its sign.</summary>
    public Rational Abs() => Sign < 0 ? -this : this;

    /// <summary>A whole power; below zero the inverse, and 0 to the 0 is 1.</summary>
    /// <exception cref="DivideByZeroException">0 to a negative power.</exception>
    public Rational Pow(int exponent)
    {
        int size = Math.Abs(exponent);
        BigInteger above = BigInteger.Pow(Numerator, size);
        BigInteger below = BigInteger.Pow(Denominator, size);
        return exponent < 0 ? FromRatio(below, above) : OfReduced(above, below);
    }

    /// <summary>The nearest double (ties to even); infinite when too large. For statistics and geometry only.</summary>
    public double ToDouble()
    {
        if (IsZero)
        {
            return 0;
        }

        // Both are doubles themselves, so their quotient is rounded once.
        if (_large is null && Math.Abs(_above) <= MostExactDouble && Below <= MostExactDouble)
        {
            return (double)_above / Below;
        }

        return BigRatios.ToDouble(Numerator, Denominator);
    }

    /// <summary>The number to so many digits after the point, as a decimal of that scale.</summary>
    /// <param name="digits">0 to 28.</param>
    /// <param name="mode">Which way to round.</param>
    /// <exception cref="OverflowException">The result does not fit a decimal; <see cref="TryRound"/> says so instead.</exception>
    public decimal Round(int digits, Rounding mode) =>
        TryRound(digits, mode, out decimal result)
            ? result
            : throw new OverflowException(
                string.Create(CultureInfo.InvariantCulture, $"{this} to {digits} digits does not fit a decimal.")
            );

    /// <summary>As <see cref="Round"/>, but false where the result does not fit a decimal.</summary>
    public bool TryRound(int digits, Rounding mode, out decimal result)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(digits);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(digits, DecimalBits.MostPlaces);
        if (_large is null && DecimalBits.TryScale(_above, digits, out long above))
        {
            result = DecimalBits.Make(LongRatios.Divide(above, Below, mode), digits);
            return true;
        }

        BigInteger scaled = BigRatios.Divide(Numerator * BigInteger.Pow(DecimalBits.Ten, digits), Denominator, mode);
        return DecimalBits.TryMake(scaled, digits, out result);
    }

    /// <summary>The whole multiple of a step that the rounding picks.</summary>
    /// <param name="step">Above zero, e.g. the resolution of a readout.</param>
    /// <param name="mode">Which way to round.</param>
    /// <exception cref="ArgumentOutOfRangeException">The step is 0 or below.</exception>
    public Rational RoundToStep(Rational step, Rounding mode)
    {
        if (step.Sign <= 0)
        {
            throw new ArgumentOutOfRangeException(nameof(step), step, "A step is above zero.");
        }

        Rational steps = this / step;
        if (steps._large is null)
        {
            return new Rational(LongRatios.Divide(steps._above, steps.Below, mode), 1L) * step;
        }

        return FromInteger(BigRatios.Divide(steps.Numerator, steps.Denominator, mode)) * step;
    }

    /// <summary>The same number as a decimal with no digit too many; false if no decimal is exactly equal.</summary>
    public bool TryToDecimal(out decimal result) =>
        _large is null
            ? LongRatios.TryToDecimal(_above, Below, out result)
            : BigRatios.TryToDecimal(Numerator, Denominator, out result);

    /// <inheritdoc/>
    public bool Equals(Rational other) =>
        _above == other._above && _belowLessOne == other._belowLessOne && _large == other._large;

    /// <inheritdoc/>
    public override bool Equals(object? obj) => obj is Rational other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(_above, _belowLessOne, _large);

    /// <summary>Compares by cross-multiplying; nothing is divided, so nothing is lost.</summary>
    public int CompareTo(Rational other) =>
        _large is null && other._large is null
            ? LongRatios.Compare(_above, Below, other._above, other.Below)
            : (Numerator * other.Denominator).CompareTo(other.Numerator * Denominator);

    int IComparable.CompareTo(object? obj) =>
        obj switch
        {
            null => 1,
            Rational other => CompareTo(other),
            _ => throw new ArgumentException("Only a ratio compares with a ratio.", nameof(obj)),
        };

    /// <summary><c>n/d</c>, or <c>n</c> alone over 1; the same in every culture.</summary>
    public override string ToString() =>
        _large is null && _belowLessOne == 0
            ? Numerator.ToString(CultureInfo.InvariantCulture)
            : string.Create(CultureInfo.InvariantCulture, $"{Numerator}/{Denominator}");

    /// <summary>Sum.</summary>
    public static Rational operator +(Rational left, Rational right) =>
        left._large is null
        && right._large is null
        && LongRatios.TrySum(left._above, left.Below, right._above, right.Below, out long above, out long below)
            ? new Rational(above, below)
            : FromRatio(
                (left.Numerator * right.Denominator) + (right.Numerator * left.Denominator),
                left.Denominator * right.Denominator
            );

    /// <summary>Difference.</summary>
    public static Rational operator -(Rational left, Rational right) => left + (-right);

    /// <summary>Product.</summary>
    public static Rational operator *(Rational left, Rational right) =>
        left._large is null
        && right._large is null
        && LongRatios.TryProduct(left._above, left.Below, right._above, right.Below, out long above, out long below)
            ? new Rational(above, below)
            : FromRatio(left.Numerator * right.Numerator, left.Denominator * right.Denominator);

    /// <summary>Quotient.</summary>
    /// <exception cref="DivideByZeroException">The divisor is 0.</exception>
    public static Rational operator /(Rational left, Rational right)
    {
        if (right._large is null && right._above != 0)
        {
            long sign = Math.Sign(right._above);
            return left * new Rational(sign * right.Below, sign * right._above);
        }

        return FromRatio(left.Numerator * right.Denominator, left.Denominator * right.Numerator);
    }

    /// <summary>The number with its sign turned.</summary>
    public static Rational operator -(Rational value) =>
        value._large is { } large
            ? new Rational(large with { Above = -large.Above })
            : new Rational(-value._above, value.Below);

    /// <summary>Equal.</summary>
    public static bool operator ==(Rational left, Rational right) => left.Equals(right);

    /// <summary>Not equal.</summary>
    public static bool operator !=(Rational left, Rational right) => !left.Equals(right);

    /// <summary>Below.</summary>
    public static bool operator <(Rational left, Rational right) => left.CompareTo(right) < 0;

    /// <summary>Above.</summary>
    public static bool operator >(Rational left, Rational right) => left.CompareTo(right) > 0;

    /// <summary>Not above.</summary>
    public static bool operator <=(Rational left, Rational right) => left.CompareTo(right) <= 0;

    /// <summary>Not below.</summary>
    public static bool operator >=(Rational left, Rational right) => left.CompareTo(right) >= 0;

    /// <summary>As <see cref="FromRatio"/>, for two longs: neither the least long, the one below the line above zero.</summary>
    internal static Rational FromParts(long above, long below)
    {
        long divisor = LongRatios.Divisor(above, below);
        return new Rational(above / divisor, below / divisor);
    }

    // What is below is a product of twos and fives, so nothing else cancels.
    private static Rational FromDigits(long above, long below)
    {
        if (above == 0)
        {
            return Zero;
        }

        int twos = Math.Min(BitOperations.TrailingZeroCount(above), BitOperations.TrailingZeroCount(below));
        above >>= twos;
        below >>= twos;
        while (below % 5 == 0 && above % 5 == 0)
        {
            above /= 5;
            below /= 5;
        }

        return new Rational(above, below);
    }

    private static Rational OfReduced(BigInteger above, BigInteger below) =>
        BigInteger.Abs(above) <= long.MaxValue && below <= long.MaxValue
            ? new Rational((long)above, (long)below)
            : new Rational(new LargeRatio(above, below));
}
