using ProcRunner.Quantities;

namespace ProcRunner.ShopMath;

/// <summary>The table of springs from their wire, and of nested springs.</summary>
internal static class WireSpringWork
{
    private const string Shigley = "Shigley, Mechanical Engineering Design, chapter 10";
    private const string Jindal = "Jindal, Machine Design, Ex. 8.1, inputs as printed; worked by hand";
    private static readonly WorkTakes Length = new WorkTakes.Amount(Units.Millimetre);

    private static readonly WorkParameter[] Coil =
    [
        new("wire", Length, "diameter of the wire"),
        new("mean-diameter", Length, "of the coil: outside diameter less one wire"),
        new("shear-modulus", new WorkTakes.Amount(Units.Gigapascal), "of the wire; about 80 GPa for steel"),
    ];

    public static IReadOnlyList<WorkFunction> Table { get; } =
    [
        new()
        {
            Name = "spring-from-wire",
            Family = SpringWork.Family,
            Summary = "rate of a spring from its wire, with index, corrections, stress and natural frequency",
            Details = "Round wire, cylindrical, coils of even pitch. Squared ends take two from the total coils.",
            Parameters =
            [
                .. Coil,
                new("coils", new WorkTakes.Amount(Units.One), "active coils"),
                new("load", new WorkTakes.Amount(Units.Newton), "for travel and stress", IsOptional: true),
                new(
                    "density",
                    new WorkTakes.Amount(Units.KilogramPerCubicMetre),
                    "for mass and frequency; steel 7860 kg/m3",
                    true
                ),
            ],
            Source = Shigley,
            Gives =
            [
                .. WorkGives.Of(Dimension.OfSpringRate, "rate"),
                .. WorkGives.Of(Dimension.None, "index"),
                .. WorkGives.Of(Dimension.OfSpringRate, "rate with direct shear"),
                .. WorkGives.Of(Dimension.None, "shear correction", "wahl correction"),
                .. WorkGives.Of(Dimension.OfLength, "travel"),
                .. WorkGives.Of(Dimension.OfPressure, "stress"),
                .. WorkGives.Of(Dimension.OfMass, "mass"),
                .. WorkGives.Of(Dimension.OfFrequency, "natural frequency"),
            ],
            Examples =
            [
                new(
                    "wire=5 mm; mean-diameter=30 mm; coils=15; shear-modulus=84 GPa; load=300 N",
                    "rate=16.2037037 N/mm; travel=18.5142857 mm; shear correction=1.0833333; wahl correction=1.2525",
                    Jindal
                ),
                new(
                    "wire=1.905 mm; mean-diameter=17.475 mm; coils=12.2; shear-modulus=81 GPa; density=7860 kg/m3",
                    "rate=2.04815853 N/mm; mass=0.0150047677 kg; natural frequency=184.72988 Hz",
                    "a published quiz on Shigley, chapter 10, printed 2.05 N/mm and 185 Hz; more digits worked apart from this program"
                ),
                new(
                    "wire=0.037 in; mean-diameter=0.400 in; coils=10.5; shear-modulus=11850000 psi",
                    "rate=4.1311027 lbf/in",
                    "Shigley, Ex. 10-1, printed 4.13 (from memory)"
                ),
            ],
            Work = FromWire,
        },
        new()
        {
            Name = "spring-coils",
            Family = SpringWork.Family,
            Summary = "active coils that give a rate",
            Details = "Round wire, cylindrical.",
            Parameters = [.. Coil, new("rate", new WorkTakes.Amount(Units.NewtonPerMillimetre), "rate wanted")],
            Source = Shigley,
            Gives = WorkGives.Of(Dimension.None, "coils"),
            Examples =
            [
                new(
                    "wire=0.105 in; mean-diameter=0.620 in; shear-modulus=11850000 psi; rate=70 lbf/in",
                    "coils=10.792261282",
                    "Wentzell, Machine Design, Ex. 8.2, p. 163, printed 12.79 with two end coils"
                ),
            ],
            Work = all =>
                WireSpring
                    .CoilsFor(
                        all.In("wire", Units.Millimetre),
                        all.In("mean-diameter", Units.Millimetre),
                        all.In("shear-modulus", Units.Megapascal),
                        all.In("rate", Units.NewtonPerMillimetre)
                    )
                    .Then(coils =>
                    {
                        Working working = new(all);
                        working.Step(
                            "coils",
                            "{shear-modulus} x {wire}^4 / (8 x {mean-diameter}\u00B3 x {rate})",
                            coils,
                            Units.One,
                            Units.One
                        );
                        return working.Done();
                    }),
        },
        new()
        {
            Name = "nested-springs",
            Family = SpringWork.Family,
            Summary = "load, rate and coil-bind margin of springs under one retainer",
            Details = "Give loads, rates, heights and solid heights in one order.",
            Parameters =
            [
                new("loads", new WorkTakes.Amounts(Units.PoundForce, 1), "of each, valve closed"),
                new("rates", new WorkTakes.Amounts(Units.PoundForcePerInch, 1), "of each"),
                new("lift", Length, "full lift"),
                new("heights", new WorkTakes.Amounts(Units.Inch, 1), "installed height of each", IsOptional: true),
                new("solids", new WorkTakes.Amounts(Units.Inch, 1), "solid height of each", IsOptional: true),
            ],
            Source = "springs side by side: loads and rates add up",
            Gives =
            [
                .. WorkGives.Of(Dimension.OfSpringRate, "rate"),
                .. WorkGives.Of(Dimension.OfForce, "closed", "open"),
                .. WorkGives.Of(Dimension.OfLength, "least margin"),
                .. WorkGives.Words("binds first"),
            ],
            Examples =
            [
                new(
                    "loads=51.7 85.4 lbf; rates=42.428571429 69.714285714 lbf/in; lift=0.70 in; heights=2.26 2.26 in; solids=1.34 1.47 in",
                    "rate=112.142857 lbf/in; closed=137.1 lbf; open=215.6 lbf; least margin=0.090 in",
                    "TM 9-2815-220-24, WP 0145, middle and outer spring; sums by hand, loads at 1.56 in as printed"
                ),
            ],
            Work = Nested,
        },
    ];

    private static ShopResult<WorkAnswer> FromWire(WorkArguments all)
    {
        WireSpring spring = new(
            all.In("wire", Units.Millimetre),
            all.In("mean-diameter", Units.Millimetre),
            all.In("coils", Units.One),
            all.In("shear-modulus", Units.Megapascal)
        );
        double density = all.In("density", Units.KilogramPerCubicMetre, 1);
        if ((spring.Fault ?? Allowed.Above0("density", density, "kg/m3")) is { } fault)
        {
            return fault;
        }

        Working working = new(all);
        Rate(working, spring);
        if (all.Has("load"))
        {
            Load(working, spring, all.In("load", Units.Newton));
        }

        if (all.Has("density"))
        {
            Frequency(working, spring, density);
        }

        return working.Done();
    }

    private static void Rate(Working working, WireSpring spring)
    {
        working.Step(
            "rate",
            "{shear-modulus} x {wire}^4 / (8 x {mean-diameter}\u00B3 x {coils})",
            spring.RateNewtonsPerMillimetre,
            Units.NewtonPerMillimetre,
            Units.PoundForcePerInch
        );
        working.Step("index", "{mean-diameter} / {wire}", spring.Index, Units.One, Units.One);
        working.Step(
            "rate with direct shear",
            "{rate} / (1 + 1 / (2 x {index}\u00B2))",
            spring.RateWithShearNewtonsPerMillimetre,
            Units.NewtonPerMillimetre,
            Units.PoundForcePerInch
        );
        working.Step(
            "shear correction",
            "(2 x {index} + 1) / (2 x {index})",
            spring.ShearCorrection,
            Units.One,
            Units.One
        );
        working.Step(
            "wahl correction",
            "(4 x {index} - 1) / (4 x {index} - 4) + 0.615 / {index}",
            spring.WahlCorrection,
            Units.One,
            Units.One
        );
    }

    private static void Load(Working working, WireSpring spring, double newtons)
    {
        working.Step(
            "travel",
            "{load} / {rate}",
            newtons / spring.RateNewtonsPerMillimetre,
            Units.Millimetre,
            Units.Inch
        );
        working.Step(
            "stress",
            "{wahl-correction} x 8 x {load} x {mean-diameter} / (pi x {wire}\u00B3)",
            spring.StressMegapascals(newtons),
            Units.Megapascal,
            Units.Psi
        );
    }

    private static void Frequency(Working working, WireSpring spring, double density)
    {
        working.Step(
            "mass",
            "{coils} x pi\u00B2 x {wire}\u00B2 x {mean-diameter} x {density} / 4",
            spring.MassKilograms(density),
            Units.Kilogram,
            Units.Kilogram
        );
        working.Step(
            "natural frequency",
            "root({rate} / {mass}) / 2",
            spring.NaturalFrequencyHertz(density),
            Units.Hertz,
            Units.Hertz
        );
    }

    private static ShopResult<WorkAnswer> Nested(WorkArguments all) =>
        NestedSprings
            .Of(
                all.Amounts("loads"),
                all.Amounts("rates"),
                all.Amount("lift"),
                all.Amounts("heights"),
                all.Amounts("solids")
            )
            .Then(nest =>
            {
                Working working = new(all);
                working.Step("rate", "sum of {rates}", nest.Rate, Units.NewtonPerMillimetre, Units.PoundForcePerInch);
                working.Step("closed", "sum of {loads}", nest.Closed, Units.Newton, Units.PoundForce);
                working.Step("open", "{closed} + {rate} x {lift}", nest.Open, Units.Newton, Units.PoundForce);
                if (nest.LeastMargin is { } margin)
                {
                    working.Step(
                        "least margin",
                        "the least of each of {heights}, less {lift}, less its own of {solids}",
                        margin,
                        Units.Millimetre,
                        Units.Inch,
                        rounding: Rounding.Down
                    );
                    working.Say(
                        "binds first",
                        "the spring with {least-margin}",
                        FormattableString.Invariant($"spring {nest.Nearest}")
                    );
                }

                return working.Done();
            });
}
