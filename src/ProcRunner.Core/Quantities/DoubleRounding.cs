namespace ProcRunner.Quantities;

/// <summary>The one place where a double becomes a decimal.</summary>
public static class DoubleRounding
{
    /// <summary>
    /// The exact value of the double's bits, rounded to so many digits. A result that will be held against a limit is rounded
    /// away from the pass: <see cref="Rounding.Up"/> under an upper limit, <see cref="Rounding.Down"/> over a lower one.
    /// </summary>
    /// <param name="value">The result of statistics, or of geometry with roots.</param>
    /// <param name="digits">After the point, 0 to 28; fewer than the double is good for.</param>
    /// <param name="mode">Which way to round.</param>
    /// <param name="result">The decimal.</param>
    /// <returns>False if the double is not a number, infinite or too large for a decimal.</returns>
    public static bool TryToDecimal(double value, int digits, Rounding mode, out decimal result)
    {
        result = 0;
        return double.IsFinite(value) && Rational.FromDouble(value).TryRound(digits, mode, out result);
    }
}
