using ProcRunner.Quantities;

namespace ProcRunner.Formulas;

/// <summary>Sine, cosine and tangent.</summary>
internal static class AngleFunctions
{
    public static IReadOnlyList<FormulaFunction> Table { get; } =
    [
        OfAngle("sin", "sine", "opposite side / longest side of a right triangle", "sin('30 deg')", "0.5", Sine),
        OfAngle("cos", "cosine", "adjacent side / longest side of a right triangle", "cos('60 deg')", "0.5", Cosine),
        OfAngle("tan", "tangent", "opposite side / adjacent side of a right triangle", "tan('45 deg')", "1", Tangent),
    ];

    /// <summary>The sine of an angle in degrees.</summary>
    public static double Sine(Rational degrees) => Math.Sin(Radians(degrees));

    /// <summary>The cosine of an angle in degrees; exactly 0 where it is.</summary>
    public static double Cosine(Rational degrees) => IsQuarter(degrees) ? 0 : Math.Cos(Radians(degrees));

    /// <summary>The tangent of an angle in degrees; not a number where there is none.</summary>
    public static double Tangent(Rational degrees) => IsQuarter(degrees) ? double.NaN : Math.Tan(Radians(degrees));

    // Whole turns are taken off exactly, so that no digit is lost to them.
    private static double Radians(Rational degrees)
    {
        Rational turn = Rational.FromInteger(360);
        return double.DegreesToRadians((degrees - degrees.RoundToStep(turn, Rounding.Nearest)).ToDouble());
    }

    // 90 or 270 deg and whole turns from there.
    private static bool IsQuarter(Rational degrees) =>
        ((degrees - Rational.FromInteger(90)) / Rational.FromInteger(180)).Denominator.IsOne;

    private static FormulaFunction OfAngle(
        string name,
        string words,
        string relation,
        string example,
        string result,
        Func<Rational, double> work
    ) =>
        new()
        {
            Name = name,
            Parameters = [new("angle", new FormulaTakes.A(Dimension.OfAngle))],
            Gives = new FormulaGives.A(Dimension.None),
            Summary = $"{words} of an angle",
            Details = "Rounded to 12 significant digits.",
            Relation = relation,
            Source = "definition",
            Examples = [new(example, result)],
            Work = new FormulaWork.Numbers(all =>
                work(all[0]) is var found && double.IsNaN(found)
                    ? FormulaNumber.Not($"the {words} does not exist at this angle")
                    : RoundedDouble.Of(found)
            ),
        };
}
