using ProcRunner.Quantities;
using ProcRunner.ShopMath;

namespace ProcRunner.Formulas;

/// <summary>Cutting speed and spindle speed; rounded to 12 digits for pi.</summary>
internal static class SpeedFunctions
{
    private const string Jones = "F. D. Jones, \"Turning and Boring\", rules for calculating cutting speeds";
    private static readonly FormulaTakes Diameter = new FormulaTakes.A(Dimension.OfLength);

    public static IReadOnlyList<FormulaFunction> Table { get; } =
    [
        new()
        {
            Name = "spindlespeed",
            Parameters = [new("surface speed", new FormulaTakes.A(Dimension.OfSpeed)), new("diameter", Diameter)],
            Gives = new FormulaGives.A(Dimension.OfTurningSpeed),
            Summary = "spindle speed for a cutting speed",
            Details =
                "The cutting speed is a shop setting for material and cutter; take it at the largest diameter that cuts. In "
                + "ft/min and in it is 12 V / (pi D), in m/min and mm 1000 V / (pi D).",
            Relation = "surface speed / (pi x diameter)",
            Source = Jones,
            Examples =
            [
                new("spindlespeed('60 ft/min', '5 in')", "45.83662361 rpm"),
                new("spindlespeed('25 m/min', '12 mm')", "663.14559622 rpm"),
            ],
            Work = new FormulaWork.Numbers(all =>
                FormulaNumber.Of(
                    CuttingSpeed.SpindleSpeed(
                        new Exact(all[0], Dimension.OfSpeed),
                        new Exact(all[1], Dimension.OfLength)
                    )
                )
            ),
        },
        new()
        {
            Name = "surfacespeed",
            Parameters =
            [
                new("spindle speed", new FormulaTakes.A(Dimension.OfTurningSpeed)),
                new("diameter", Diameter),
            ],
            Gives = new FormulaGives.A(Dimension.OfSpeed),
            Summary = "cutting speed of a spindle speed",
            Details = "How fast the metal passes the cutting edge at that diameter.",
            Relation = "pi x diameter x spindle speed",
            Source = Jones,
            Examples = [new("surfacespeed('45.83662361 rpm', '5 in')", "60.000000 ft/min")],
            Work = new FormulaWork.Numbers(all =>
                FormulaNumber.Of(
                    CuttingSpeed.SurfaceSpeed(
                        new Exact(all[0], Dimension.OfTurningSpeed),
                        new Exact(all[1], Dimension.OfLength)
                    )
                )
            ),
        },
        new()
        {
            Name = "idealroughness",
            Parameters = [new("feed", new FormulaTakes.A(Dimension.OfFeed)), new("nose radius", Diameter)],
            Gives = new FormulaGives.A(Dimension.OfLength),
            Summary = "best peak-to-valley roughness a feed and nose radius can leave",
            Details = "A real surface is rougher. Peak to valley is no Ra: don't hold it against an Ra limit.",
            Relation = "feed^2 / (8 x nose radius)",
            Source = "geometry of circles a feed apart (from memory)",
            Examples = [new("idealroughness('0.1 mm/rev', '0.8 mm')", "1.5625 \u00B5m")],
            Work = new FormulaWork.Numbers(all =>
                FormulaNumber.Of(
                    CuttingSpeed.IdealRoughness(
                        new Exact(all[0], Dimension.OfFeed),
                        new Exact(all[1], Dimension.OfLength)
                    )
                )
            ),
        },
    ];
}
