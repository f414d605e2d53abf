using ProcRunner.Quantities;

namespace ProcRunner.Formulas;

/// <summary>The one place where a function with a root, an angle or pi leaves exact numbers and comes back to them.</summary>
internal static class RoundedDouble
{
    /// <summary>Significant digits kept; a double is good for 15, so the noise of a few operations is cut off.</summary>
    public const int Digits = 12;

    /// <summary>
    /// The double rounded to 12 significant decimal digits, half away from zero, as an exact number: the sine of 30 deg is
    /// 0.5 and the tangent of 45 deg is 1. Of a length of 100 mm that leaves 0.1 nm, far below any gauge, so it is rounded to
    /// nearest and not away from the pass. Not possible if the double is infinite or not a number.
    /// </summary>
    public static FormulaNumber Of(double value)
    {
        if (!double.IsFinite(value))
        {
            return FormulaNumber.Not("the number is too large");
        }

        if (value == 0)
        {
            return Rational.Zero;
        }

        int magnitude = (int)Math.Floor(Math.Log10(Math.Abs(value)));
        Rational step = Rational.FromInteger(10).Pow(magnitude - Digits + 1);
        return Rational.FromDouble(value).RoundToStep(step, Rounding.Nearest);
    }
}
