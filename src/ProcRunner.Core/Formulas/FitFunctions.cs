using ProcRunner.Quantities;
using ProcRunner.ShopMath;

namespace ProcRunner.Formulas;

/// <summary>Press fits, cold and hot; all exact.</summary>
internal static class FitFunctions
{
    private static readonly FormulaTakes Length = new FormulaTakes.A(Dimension.OfLength);
    private static readonly FormulaTakes Expansion = new FormulaTakes.A(Dimension.OfExpansion);
    private static readonly FormulaTakes Difference = new FormulaTakes.A(Dimension.OfTemperatureDifference);
    private static readonly FormulaGives GivesLength = new FormulaGives.A(Dimension.OfLength);

    public static IReadOnlyList<FormulaFunction> Table { get; } =
    [
        new()
        {
            Name = "leastinterference",
            Parameters = [new("hole largest", Length), new("part smallest", Length)],
            Gives = GivesLength,
            Summary = "the loosest that a fit can be",
            Details = "Below zero it is a clearance: such a press fit can be loose.",
            Relation = "part smallest - hole largest",
            Source = "ISO 286-1:2010, interference fits",
            Examples = [new("leastinterference('1.6425 in', '1.6445 in')", "0.0020 in")],
            Work = new FormulaWork.Numbers(all => Fit.LeastInterference(Of(all[0]), Of(all[1])).Value),
        },
        new()
        {
            Name = "mostinterference",
            Parameters = [new("hole smallest", Length), new("part largest", Length)],
            Gives = GivesLength,
            Summary = "the tightest that a fit can be",
            Details = "What the casting around it must bear. Below zero it is a clearance.",
            Relation = "part largest - hole smallest",
            Source = "ISO 286-1:2010, interference fits",
            Examples = [new("mostinterference('1.6415 in', '1.6455 in')", "0.0040 in")],
            Work = new FormulaWork.Numbers(all => Fit.MostInterference(Of(all[0]), Of(all[1])).Value),
        },
        new()
        {
            Name = "assemblytemperature",
            Parameters =
            [
                new("interference", Length),
                new("clearance", Length),
                new("expansion", Expansion),
                new("diameter", Length),
            ],
            Gives = new FormulaGives.A(Dimension.OfTemperatureDifference),
            Summary = "how much warmer the head, or colder the part, must be to go together",
            Details =
                "Interference and clearance are on the diameter. Expansion is taken as constant, which overstates shrinkage "
                + "in the cold by up to a tenth at dry-ice temperature. A head has its own limit of heat.",
            Relation = "(interference + clearance) / (expansion x diameter)",
            Source = "linear thermal expansion, as for any shrink fit",
            Examples = [new("assemblytemperature('0.10 mm', '0.02 mm', '0.0000215 1/K', '38 mm')", "146.878825 K")],
            Work = new FormulaWork.Numbers(all =>
                FormulaNumber.Of(
                    ThermalFit.TemperatureDifference(
                        Of(all[0]),
                        Of(all[1]),
                        new Exact(all[2], Dimension.OfExpansion),
                        Of(all[3])
                    )
                )
            ),
        },
        new()
        {
            Name = "hotfit",
            Parameters =
            [
                new("interference", Length),
                new("diameter", Length),
                new("expansion of head", Expansion),
                new("expansion of insert", Expansion),
                new("warming", Difference),
            ],
            Gives = GivesLength,
            Summary = "interference left at another temperature",
            Details =
                "Head and insert warmed alike. A head that expands more than its insert lets go of it; not above zero, the "
                + "fit is nothing at that temperature.",
            Relation = "interference - diameter x (expansion of head - expansion of insert) x warming",
            Source = "linear thermal expansion of both parts",
            Examples =
            [
                new("hotfit('0.10 mm', '38 mm', '0.0000215 1/K', '0.0000117 1/K', '100 K')", "0.06276 mm"),
                new("hotfit('0.10 mm', '38 mm', '0.0000114 1/K', '0.0000117 1/K', '100 K')", "0.10114 mm"),
            ],
            Work = new FormulaWork.Numbers(HotFit),
        },
    ];

    private static FormulaNumber HotFit(ReadOnlySpan<Rational> all)
    {
        Exact warming = new(all[4], Dimension.OfTemperatureDifference);
        return FormulaNumber.Of(
            ThermalFit.InterferenceLeft(
                Of(all[0]),
                Of(all[1]),
                new Exact(all[2], Dimension.OfExpansion),
                warming,
                new Exact(all[3], Dimension.OfExpansion),
                warming
            )
        );
    }

    private static Exact Of(Rational millimetres) => new(millimetres, Dimension.OfLength);
}
