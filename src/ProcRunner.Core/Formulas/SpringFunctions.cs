using ProcRunner.Quantities;
using ProcRunner.ShopMath;

namespace ProcRunner.Formulas;

/// <summary>Valve springs and shims, and how far a reading is off; all exact.</summary>
internal static class SpringFunctions
{
    private const string Linear = "linear spring";
    private static readonly FormulaTakes Length = new FormulaTakes.A(Dimension.OfLength);
    private static readonly FormulaTakes Force = new FormulaTakes.A(Dimension.OfForce);

    public static IReadOnlyList<FormulaFunction> Table { get; } =
    [
        new()
        {
            Name = "springrate",
            Parameters = [new("load1", Force), new("height1", Length), new("load2", Force), new("height2", Length)],
            Gives = new FormulaGives.A(Dimension.OfSpringRate),
            Summary = "rate of a spring from two loads",
            Details = "Load rises as height falls; the two may stand in either order.",
            Relation = "(load2 - load1) / (height1 - height2)",
            Source = Linear,
            Examples = [new("springrate('51.7 lbf', '2.26 in', '81.4 lbf', '1.56 in')", "42.428571 lbf/in")],
            Work = new FormulaWork.Numbers(all =>
                FormulaNumber.Of(Spring.Rate(LoadOf(all[0]), HeightOf(all[1]), LoadOf(all[2]), HeightOf(all[3])))
            ),
        },
        new()
        {
            Name = "loadat",
            Parameters =
            [
                new("load", Force),
                new("height", Length),
                new("rate", new FormulaTakes.A(Dimension.OfSpringRate)),
                new("height2", Length),
            ],
            Gives = new FormulaGives.A(Dimension.OfForce),
            Summary = "load of a spring at another height",
            Details = "Holds between free length and solid height; neither is checked here.",
            Relation = "load + rate x (height - height2)",
            Source = Linear,
            Examples = [new("loadat('51.7 lbf', '2.26 in', '42.428571 lbf/in', '2.29 in')", "50.427143 lbf")],
            Work = new FormulaWork.Numbers(all =>
                FormulaNumber.Of(
                    Spring.LoadAt(
                        LoadOf(all[0]),
                        HeightOf(all[1]),
                        new Exact(all[2], Dimension.OfSpringRate),
                        HeightOf(all[3])
                    )
                )
            ),
        },
        new()
        {
            Name = "shimfor",
            Parameters = [new("measured height", Length), new("wanted height", Length)],
            Gives = new FormulaGives.A(Dimension.OfLength),
            Summary = "shim that brings a spring to its height",
            Details = "Below zero no shim helps: the height is too small already. A shim is no cure for a weak spring.",
            Relation = "measured height - wanted height",
            Source = "the shim takes up the height",
            Examples = [new("shimfor('1.762 in', '1.700 in')", "0.062 in")],
            Work = new FormulaWork.Numbers(all => Spring.ShimFor(HeightOf(all[0]), HeightOf(all[1])).Value),
        },
        new()
        {
            Name = "percentoff",
            Parameters =
            [
                new("reading", new FormulaTakes.Alike(OnScale: false)),
                new("spec", new FormulaTakes.Alike(OnScale: false)),
            ],
            Gives = new FormulaGives.A(Dimension.None),
            Summary = "how far a reading is off its spec, as a part of the spec",
            Details = "Below zero when the reading is too small.",
            Relation = "(reading - spec) / spec",
            Source = "definition of a relative deviation",
            Examples = [new("percentoff('86 lbf', '97.5 lbf')", "-11.8 %")],
            Work = new FormulaWork.Numbers(all => FormulaNumber.Of(Spring.PartOff(PureOf(all[0]), PureOf(all[1])))),
        },
    ];

    private static Exact LoadOf(Rational value) => new(value, Dimension.OfForce);

    private static Exact HeightOf(Rational millimetres) => new(millimetres, Dimension.OfLength);

    // The two are of one dimension, which the checker has proved; the part of one in the other has none.
    private static Exact PureOf(Rational value) => new(value, Dimension.None);
}
