using ProcRunner.Quantities;
using ProcRunner.ShopMath;

namespace ProcRunner.Formulas;

/// <summary>Valve springs and shims, and how far a reading is off; exact but for the rate from the wire.</summary>
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
            Name = "heightfor",
            Parameters =
            [
                new("load", Force),
                new("height", Length),
                new("rate", new FormulaTakes.A(Dimension.OfSpringRate)),
                new("wanted load", Force),
            ],
            Gives = new FormulaGives.A(Dimension.OfLength),
            Summary = "height at which a spring has a wanted load",
            Details = "Holds between free length and solid height; a wanted load of 0 gives the free length.",
            Relation = "height - (wanted load - load) / rate",
            Source = Linear,
            Examples = [new("heightfor('26.2 lbf', '2.07 in', '22.987012987 lbf/in', '0 lbf')", "3.209774 in")],
            Work = new FormulaWork.Numbers(all =>
                FormulaNumber.Of(
                    Spring.HeightFor(
                        LoadOf(all[0]),
                        HeightOf(all[1]),
                        new Exact(all[2], Dimension.OfSpringRate),
                        LoadOf(all[3])
                    )
                )
            ),
        },
        new()
        {
            Name = "wirerate",
            Parameters =
            [
                new("wire", Length),
                new("mean diameter", Length),
                new("active coils", new FormulaTakes.A(Dimension.None)),
                new("shear modulus", new FormulaTakes.A(Dimension.OfPressure)),
            ],
            Gives = new FormulaGives.A(Dimension.OfSpringRate),
            Summary = "rate of a spring from its wire",
            Details =
                "Round wire, cylindrical. The mean diameter is the outside less one wire; squared ends take two from the total coils.",
            Relation = "shear modulus x wire^4 / (8 x mean diameter^3 x active coils)",
            Source = "Shigley, Mechanical Engineering Design, chapter 10",
            Examples = [new("wirerate('5 mm', '30 mm', 15, '84 GPa')", "16.2037037 N/mm")],
            Work = new FormulaWork.Numbers(WireRate),
        },
        new()
        {
            Name = "coilbind",
            Parameters = [new("height", Length), new("lift", Length), new("solid height", Length)],
            Gives = new FormulaGives.A(Dimension.OfLength),
            Summary = "what a spring has left to solid at full lift",
            Details =
                "Not above zero, the spring binds. 0.050 to 0.060 in is common practice unless the maker says otherwise.",
            Relation = "height - lift - solid height",
            Source = "lengths along one axis",
            Examples = [new("coilbind('2.07 in', '0.77 in', '1.28 in')", "0.020 in")],
            Work = new FormulaWork.Numbers(all =>
                FormulaNumber.Of(Spring.CoilBindMargin(HeightOf(all[0]), HeightOf(all[1]), HeightOf(all[2])))
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

    private static FormulaNumber WireRate(ReadOnlySpan<Rational> all)
    {
        WireSpring spring = new(
            all[0].ToDouble(),
            all[1].ToDouble(),
            all[2].ToDouble(),
            Units.Megapascal.FromBase(all[3]).ToDouble()
        );
        return spring.Fault is { } fault
            ? FormulaNumber.Not(fault)
            : RoundedDouble.Of(spring.RateNewtonsPerMillimetre, Units.NewtonPerMillimetre);
    }

    private static Exact LoadOf(Rational value) => new(value, Dimension.OfForce);

    private static Exact HeightOf(Rational millimetres) => new(millimetres, Dimension.OfLength);

    // The two are of one dimension, which the checker has proved; the part of one in the other has none.
    private static Exact PureOf(Rational value) => new(value, Dimension.None);
}
