using ProcRunner.Quantities;
using ProcRunner.ShopMath;

namespace ProcRunner.Formulas;

/// <summary>What a press fit does to both parts; rounded to 12 digits, the fit left at temperature exact.</summary>
internal static class PressFitFunctions
{
    private const string Shigley =
        "Lam\u00E9; Shigley, Mechanical Engineering Design, chapter 3, press and shrink fits";
    private const string Ring =
        "A head is modelled as a ring out to its nearest passage or edge. Elastic, plane stress. A solid insert has an inside of 0.";
    private const string Example = "('0.2 mm', '400 mm', '500 mm', '300 mm', '200 GPa', 0.3, '200 GPa', 0.3)";
    private static readonly FormulaTakes Length = new FormulaTakes.A(Dimension.OfLength);
    private static readonly FormulaTakes Pressure = new FormulaTakes.A(Dimension.OfPressure);
    private static readonly FormulaTakes Pure = new FormulaTakes.A(Dimension.None);
    private static readonly FormulaTakes Expansion = new FormulaTakes.A(Dimension.OfExpansion);
    private static readonly FormulaTakes Warming = new FormulaTakes.A(Dimension.OfTemperatureDifference);

    private static readonly FormulaParameter[] Parts =
    [
        new("interference", Length),
        new("diameter", Length),
        new("outside", Length),
        new("inside", Length),
        new("head modulus", Pressure),
        new("head poisson", Pure),
        new("insert modulus", Pressure),
        new("insert poisson", Pure),
    ];

    public static IReadOnlyList<FormulaFunction> Table { get; } =
    [
        new()
        {
            Name = "contactpressure",
            Parameters = Parts,
            Gives = new FormulaGives.A(Dimension.OfPressure),
            Summary = "pressure between head and insert of a press fit",
            Details = Ring,
            Relation =
                "interference / (diameter x (((outside^2 + diameter^2) / (outside^2 - diameter^2) + head poisson) / head modulus "
                + "+ ((diameter^2 + inside^2) / (diameter^2 - inside^2) - insert poisson) / insert modulus))",
            Source = Shigley,
            Examples = [new("contactpressure" + Example, "12.3046875 MPa")],
            Work = new FormulaWork.Numbers(all => Load(all, load => load.PressureMegapascals)),
        },
        new()
        {
            Name = "headhoop",
            Parameters = Parts,
            Gives = new FormulaGives.A(Dimension.OfPressure),
            Summary = "largest hoop stress that a press fit puts into the head",
            Details = "At the bore, where it is largest; tension. " + Ring,
            Relation = "contactpressure x (outside^2 + diameter^2) / (outside^2 - diameter^2)",
            Source = Shigley,
            Examples = [new("headhoop" + Example, "56.0546875 MPa")],
            Work = new FormulaWork.Numbers(all => Load(all, load => load.OuterHoopAtBoreMegapascals)),
        },
        new()
        {
            Name = "fitleft",
            Parameters =
            [
                new("interference", Length),
                new("diameter", Length),
                new("expansion of head", Expansion),
                new("warming of head", Warming),
                new("expansion of insert", Expansion),
                new("warming of insert", Warming),
            ],
            Gives = new FormulaGives.A(Dimension.OfLength),
            Summary = "interference left when head and insert each have their own temperature",
            Details = "Not above zero, the fit is nothing at those temperatures. hotfit is for both warmed alike.",
            Relation =
                "interference - diameter x (expansion of head x warming of head - expansion of insert x warming of insert)",
            Source = "linear thermal expansion of both parts",
            Examples =
            [
                new("fitleft('0.10 mm', '38 mm', '0.0000215 1/K', '80 K', '0.0000117 1/K', '180 K')", "0.114668 mm"),
            ],
            Work = new FormulaWork.Numbers(FitLeft),
        },
    ];

    private static FormulaNumber Load(ReadOnlySpan<Rational> all, Func<PressFitLoad, double> megapascals)
    {
        double interference = all[0].ToDouble();
        return PressFit
            .Of(
                all[3].ToDouble(),
                all[1].ToDouble(),
                all[2].ToDouble(),
                new Elasticity(Units.Megapascal.FromBase(all[4]).ToDouble(), all[5].ToDouble()),
                new Elasticity(Units.Megapascal.FromBase(all[6]).ToDouble(), all[7].ToDouble())
            )
            .Then(fit => fit.AtInterference(interference))
            .TryGet(out PressFitLoad? load, out ShopFault? fault)
            ? RoundedDouble.Of(megapascals(load), Units.Megapascal)
            : FormulaNumber.Not(fault);
    }

    private static FormulaNumber FitLeft(ReadOnlySpan<Rational> all) =>
        FormulaNumber.Of(
            ThermalFit.InterferenceLeft(
                new Exact(all[0], Dimension.OfLength),
                new Exact(all[1], Dimension.OfLength),
                new Exact(all[2], Dimension.OfExpansion),
                new Exact(all[3], Dimension.OfTemperatureDifference),
                new Exact(all[4], Dimension.OfExpansion),
                new Exact(all[5], Dimension.OfTemperatureDifference)
            )
        );
}
