using ProcRunner.Quantities;

namespace ProcRunner.ShopMath;

/// <summary>The one place where a calculation with a root, an angle or pi leaves exact numbers and comes back to them.</summary>
public static class TwelveDigits
{
    /// <summary>Significant digits kept; a double is good for 15, so the noise of a few operations is cut off.</summary>
    public const int Digits = 12;

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
            Rational step = Rational.FromInteger(10).Pow(magnitude - Digits + 1);
            rounded = Rational.FromDouble(value).RoundToStep(step, Rounding.Nearest);
        }

        return true;
    }
}
