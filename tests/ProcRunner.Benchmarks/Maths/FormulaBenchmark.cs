using System.Globalization;
using ProcRunner.Formulas;

namespace ProcRunner.Benchmarks.Maths;

/// <summary>
/// What working a loaded formula out costs, in time and memory, beside the same arithmetic written by hand on ratios of big
/// integers: by turns, so that the ratio holds on other machines.
/// </summary>
internal static class FormulaBenchmark
{
    private const int Samples = 25;
    private const int WarmUps = 20;
    private const int Rounds = 20_000;
    private const double GoalNanoseconds = 200;

    private static readonly (string, string)[] Recession =
    [
        ("spec.recession.aim", "0.052 in"),
        ("recession", "0.0235 in"),
    ];
    private static readonly (string, string)[] Fit = [("bore", "0.3145 in"), ("stem", "0.3118 in")];
    private static readonly (string, string)[] Spring =
    [
        ("load1", "51.7 lbf"),
        ("height1", "2.26 in"),
        ("load2", "81.4 lbf"),
        ("height2", "1.56 in"),
    ];
    private static readonly BigRatio Low = BigRatio.Reduced(381, 10000);
    private static readonly BigRatio High = BigRatio.Reduced(127, 1000);

    private static readonly FormulaCase[] Cases =
    [
        new("[spec.recession.aim] - [recession]", Recession, all => (all[0] - all[1]).Above.Sign > 0),
        new(
            "[bore] - [stem] >= '0.0015 in' and [bore] - [stem] <= '0.005 in'",
            Fit,
            all => !Low.IsAbove(all[0] - all[1]) && !(all[0] - all[1]).IsAbove(High)
        ),
        new(
            "if([kind] = 'I', '0.052 in', '0.058 in') - [recession]",
            [("kind", "I"), ("recession", "0.0235 in")],
            all => (BigRatio.Reduced(3302, 2500) - all[1]).Above.Sign > 0
        ),
        new(
            "mean([a], [b], [c]) - max([a], [b], [c])",
            [("a", "0.3131 in"), ("b", "0.3133 in"), ("c", "7.955 mm")],
            all =>
                (((all[0] + all[1] + all[2]) / new BigRatio(3, 1)) - (all[0].IsAbove(all[1]) ? all[0] : all[1]))
                    .Above
                    .Sign < 0
        ),
        new(
            "springrate([load1], [height1], [load2], [height2])",
            Spring,
            all => ((all[2] - all[0]) / (all[1] - all[3])).Above.Sign > 0
        ),
        new(
            "leakdown([supply], [held])",
            [("supply", "80 psi"), ("held", "61.5 psi")],
            all => ((all[0] - all[1]) / all[0]).Above.Sign > 0
        ),
        new("sink([removed], [face angle])", [("removed", "0.004 in"), ("face angle", "45 deg")]),
    ];

    public static IEnumerable<Result> Run() => Cases.Select(Run);

    private static Result Run(FormulaCase one)
    {
        Formula formula = one.Compile();
        bool ofAmount = formula.Type is FormulaType.OfQuantity;
        BigRatio[] ratios = one.Ratios;

        // The platform compiles a method again once it has been called often, and a busy machine is late with that.
        for (int i = 0; i < WarmUps; i++)
        {
            Work(formula, one, ofAmount);
            ByHand(one, ratios);
            Thread.Sleep(50);
        }

        List<double> formulas = [];
        List<double> hands = [];
        long before = GC.GetAllocatedBytesForCurrentThread();
        Work(formula, one, ofAmount);
        double bytes = (GC.GetAllocatedBytesForCurrentThread() - before) / (double)Rounds;
        for (int i = 0; i < Samples; i++)
        {
            formulas.Add(Timing.Of(() => Work(formula, one, ofAmount)) * 1e6 / Rounds);
            hands.Add(Timing.Of(() => ByHand(one, ratios)) * 1e6 / Rounds);
        }

        double median = Timing.Quantile(formulas, 0.5);
        double hand = Timing.Quantile(hands, 0.5);
        string ratio = one.ByHand is null
            ? "no counterpart in big integers"
            : string.Create(
                CultureInfo.InvariantCulture,
                $"{median / hand:0.00} of the same on big integers by hand ({hand:0} ns)"
            );
        return new(
            "formula " + one.Text,
            "under 200 ns, no memory",
            string.Create(
                CultureInfo.InvariantCulture,
                $"median {median:0} ns (fastest of {Samples} {formulas.Min():0}), {bytes:0} bytes; {ratio}"
            ),
            median < GoalNanoseconds && bytes < 0.5
        );
    }

    private static void Work(Formula formula, FormulaCase scope, bool ofAmount)
    {
        for (int i = 0; i < Rounds; i++)
        {
            if (!(ofAmount ? formula.TryAmount(scope, out _) : formula.Holds(scope) is not null))
            {
                throw new InvalidOperationException(formula.Text);
            }
        }
    }

    private static void ByHand(FormulaCase one, BigRatio[] ratios)
    {
        for (int i = 0; i < Rounds && one.ByHand is { } byHand; i++)
        {
            if (!byHand(ratios))
            {
                throw new InvalidOperationException(one.Text);
            }
        }
    }
}
