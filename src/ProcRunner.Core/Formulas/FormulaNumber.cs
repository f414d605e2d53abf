using ProcRunner.Quantities;
using ProcRunner.ShopMath;

namespace ProcRunner.Formulas;

/// <summary>What a function makes of its numbers: a number in base units, or why there is none.</summary>
internal readonly record struct FormulaNumber(Rational Value, string? Why)
{
    // Far beyond any reading; keeps powers of powers from filling the memory.
    private const int MostBits = 4096;

    public static implicit operator FormulaNumber(Rational value) =>
        !value.IsShort && (value.Numerator.GetBitLength() > MostBits || value.Denominator.GetBitLength() > MostBits)
            ? Not("the number has too many digits")
            : new FormulaNumber(value, null);

    /// <summary>What a calculation of the shop gives, or why it gives nothing.</summary>
    public static FormulaNumber Of(ShopResult<Exact> result) =>
        result.TryGet(out Exact amount, out ShopFault? fault) ? amount.Value : Not(fault);

    public static FormulaNumber Not(ShopFault fault) => Not($"{fault.Argument}: {fault.Allowed}");

    public static FormulaNumber Not(string why) => new(default, why);

    /// <summary>A quotient; not possible over zero.</summary>
    public static FormulaNumber Ratio(Rational above, Rational below) =>
        below.IsZero ? Not("it divides by zero") : above / below;

    /// <summary>A whole power, its size held before it is worked out.</summary>
    public static FormulaNumber Power(Rational value, int exponent)
    {
        long bits = Math.Max(value.Numerator.GetBitLength(), value.Denominator.GetBitLength());
        return value.IsZero && exponent < 0 ? Not("it divides by zero")
            : bits * Math.Abs(exponent) > 2 * MostBits ? Not("the number has too many digits")
            : value.Pow(exponent);
    }
}
