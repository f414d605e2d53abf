using ProcRunner.Quantities;
using ProcRunner.ShopMath;

namespace ProcRunner.Formulas;

/// <summary>What a function with a root or an angle gives: <see cref="TwelveDigits"/>, or why there is no number.</summary>
internal static class RoundedDouble
{
    /// <summary>The double to 12 significant digits: the sine of 30 deg is 0.5. Not possible if it is not finite.</summary>
    public static FormulaNumber Of(double value) =>
        TwelveDigits.TryRound(value, out Rational rounded) ? rounded : FormulaNumber.Not("the number is too large");

    /// <summary>As the other, for a double in a unit.</summary>
    public static FormulaNumber Of(double value, Unit unit) =>
        TwelveDigits.TryRound(value, out Rational rounded)
            ? unit.ToBase(rounded)
            : FormulaNumber.Not("the number is too large");
}
