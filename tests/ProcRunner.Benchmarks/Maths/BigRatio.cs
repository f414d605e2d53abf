using System.Numerics;

namespace ProcRunner.Benchmarks.Maths;

/// <summary>A reduced ratio of two big integers, as formulas worked with before: the measure for their arithmetic.</summary>
internal readonly record struct BigRatio(BigInteger Above, BigInteger Below)
{
    public static BigRatio Reduced(BigInteger above, BigInteger below)
    {
        BigInteger divisor = BigInteger.GreatestCommonDivisor(above, below) * below.Sign;
        return new BigRatio(above / divisor, below / divisor);
    }

    public bool IsAbove(BigRatio other) => Above * other.Below > other.Above * Below;

    public static BigRatio operator -(BigRatio one, BigRatio other) =>
        Reduced((one.Above * other.Below) - (other.Above * one.Below), one.Below * other.Below);

    public static BigRatio operator +(BigRatio one, BigRatio other) =>
        Reduced((one.Above * other.Below) + (other.Above * one.Below), one.Below * other.Below);

    public static BigRatio operator *(BigRatio one, BigRatio other) =>
        Reduced(one.Above * other.Above, one.Below * other.Below);

    public static BigRatio operator /(BigRatio one, BigRatio other) =>
        Reduced(one.Above * other.Below, one.Below * other.Above);
}
