using ProcRunner.Quantities;

namespace ProcRunner.Formulas;

/// <summary>Functions of plain arithmetic; all but the root are exact.</summary>
internal static class NumberFunctions
{
    private const string Definition = "definition";
    private static readonly FormulaTakes Any = new FormulaTakes.Alike(OnScale: true);
    private static readonly FormulaTakes Amount = new FormulaTakes.Alike(OnScale: false);

    public static IReadOnlyList<FormulaFunction> Table { get; } =
    [
        OfMany("min", "the smallest", "the smallest of its values", "min('2 mm', '1 mm', '3 mm')", "1 mm", Smallest),
        OfMany("max", "the largest", "the largest of its values", "max('2 mm', '0.1 in')", "2.54 mm", Largest),
        OfMany(
            "mean",
            "the mean",
            "sum of its values / how many they are",
            "mean('1 mm', '2 mm', '6 mm')",
            "3 mm",
            Mean
        ),
        OfMany(
            "median",
            "the one in the middle",
            "the middle value; of an even number of them the mean of the middle two",
            "median('1 mm', '9 mm', '2 mm', '4 mm')",
            "3 mm",
            Median
        ),
        OfMany(
            "spread",
            "largest less smallest",
            "largest - smallest",
            "spread('0.51 mm', '0.55 mm', '0.50 mm')",
            "0.05 mm",
            all => Largest(all) - Smallest(all)
        ) with
        {
            Gives = new FormulaGives.Difference(),
        },
        new()
        {
            Name = "abs",
            Parameters = [new("value", Amount)],
            Gives = new FormulaGives.LikeLast(),
            Summary = "a value without its sign",
            Details = "The size of a difference, whichever way it goes.",
            Relation = "|value|",
            Source = Definition,
            Examples = [new("abs('0.023 in' - '0.052 in')", "0.029 in")],
            Work = new FormulaWork.Numbers(all => all[0].Abs()),
        },
        ToStep("roundto", "to the nearest step", Rounding.Nearest, "0.53 mm", "A half goes away from zero."),
        ToStep("downto", "to the step below", Rounding.Down, "0.52 mm", "Toward smaller numbers, below zero as well."),
        ToStep("upto", "to the step above", Rounding.Up, "0.53 mm", "Toward larger numbers, below zero as well."),
        new()
        {
            Name = "pow",
            Parameters =
            [
                new("value", new FormulaTakes.AnyQuantity()),
                new("exponent", new FormulaTakes.WrittenWhole(-12, 12)),
            ],
            Gives = new FormulaGives.Power(),
            Summary = "a whole power",
            Details = "Exact. The exponent stands in the formula, so that the unit of the result is known beforehand.",
            Relation = "value to the power of exponent",
            Source = Definition,
            Examples = [new("pow(1.5, 2)", "2.25"), new("pow('2 mm', 2) / '1 mm'", "4 mm"), new("pow(2, -2)", "0.25")],
            Work = new FormulaWork.Numbers(all => FormulaNumber.Power(all[0], (int)all[1].Numerator)),
        },
        new()
        {
            Name = "sqrt",
            Parameters = [new("value", new FormulaTakes.AnyQuantity())],
            Gives = new FormulaGives.Root(),
            Summary = "the square root",
            Details = "Of a unit that is itself a square, as an area. Rounded to 12 significant digits.",
            Relation = "the number whose square is value",
            Source = Definition,
            Examples = [new("sqrt(2)", "1.41421356237"), new("sqrt(pow('3 mm', 2) + pow('4 mm', 2))", "5 mm")],
            Work = new FormulaWork.Numbers(all =>
                all[0].Sign < 0
                    ? FormulaNumber.Not("a negative number has no square root")
                    : RoundedDouble.Of(Math.Sqrt(all[0].ToDouble()))
            ),
        },
    ];

    private static FormulaFunction OfMany(
        string name,
        string words,
        string relation,
        string example,
        string result,
        NumberOfMany work
    ) =>
        new()
        {
            Name = name,
            Parameters = [new("value", Any)],
            Repeats = true,
            Gives = new FormulaGives.LikeLast(),
            Summary = words + " of its values",
            Details = "All of them in one dimension, in whatever units; exact.",
            Relation = relation,
            Source = Definition,
            Examples = [new(example, result)],
            Work = new FormulaWork.Numbers(all => work(all)),
        };

    private static FormulaFunction ToStep(string name, string words, Rounding mode, string result, string way) =>
        new()
        {
            Name = name,
            Parameters = [new("value", Amount), new("step", Amount)],
            Gives = new FormulaGives.LikeLast(),
            Summary = "a value " + words,
            Details = way + " A step is above zero: a readout's resolution, or the grade of a shim.",
            Relation = "the multiple of step that is nearest in that direction",
            Source = Definition,
            Examples = [new($"{name}('0.526 mm', '0.01 mm')", result)],
            Work = new FormulaWork.Numbers(all =>
                all[1].Sign <= 0 ? FormulaNumber.Not("a step is above zero") : all[0].RoundToStep(all[1], mode)
            ),
        };

    private static Rational Smallest(ReadOnlySpan<Rational> all)
    {
        Rational smallest = all[0];
        foreach (Rational one in all[1..])
        {
            smallest = one < smallest ? one : smallest;
        }

        return smallest;
    }

    private static Rational Largest(ReadOnlySpan<Rational> all)
    {
        Rational largest = all[0];
        foreach (Rational one in all[1..])
        {
            largest = one > largest ? one : largest;
        }

        return largest;
    }

    private static Rational Mean(ReadOnlySpan<Rational> all)
    {
        Rational sum = Rational.Zero;
        foreach (Rational one in all)
        {
            sum += one;
        }

        return sum / Rational.FromInteger(all.Length);
    }

    private static Rational Median(ReadOnlySpan<Rational> all)
    {
        Rational[] sorted = all.ToArray();
        Array.Sort(sorted);
        int half = sorted.Length / 2;
        return sorted.Length % 2 == 1 ? sorted[half] : (sorted[half - 1] + sorted[half]) / Rational.FromInteger(2);
    }

    private delegate Rational NumberOfMany(ReadOnlySpan<Rational> all);
}
