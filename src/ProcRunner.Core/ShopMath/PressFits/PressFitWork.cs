using ProcRunner.Quantities;

namespace ProcRunner.ShopMath;

/// <summary>The table of press fits.</summary>
internal static class PressFitWork
{
    public const string Family = "press and shrink fits";
    private const string Shigley =
        "Lam\u00E9; Shigley, Mechanical Engineering Design, chapter 3, press and shrink fits";
    private const string Model =
        "Elastic, plane stress. A head is modelled as a ring out to its nearest passage or edge; the outer part is the head, the "
        + "inner one what is pressed in. Interference is on the diameter.";

    private const string Ring =
        "diameter=100 mm; outside=250 mm; inside=50 mm; outer-modulus=70 GPa; outer-poisson=0.25; "
        + "inner-modulus=210 GPa; inner-poisson=0.3";

    private static readonly WorkTakes Length = new WorkTakes.Amount(Units.Millimetre);

    private static readonly WorkParameter[] Parts =
    [
        new("diameter", Length, "where the parts touch"),
        new("outside", Length, "outside diameter of the outer part"),
        new("inside", Length, "bore of the inner part; solid if left out", IsOptional: true),
        .. MaterialArguments.Elastic("outer"),
        .. MaterialArguments.Elastic("inner"),
        new("length", Length, "length engaged; with friction it gives the force", IsOptional: true),
        new(
            "friction",
            new WorkTakes.Amount(Units.One),
            "coefficient of friction, 0.12 to 0.20 is usual",
            IsOptional: true
        ),
    ];

    public static IReadOnlyList<WorkFunction> Table { get; } =
    [
        new()
        {
            Name = "press-fit",
            Family = Family,
            Summary = "contact pressure, hoop stress and push-out force of an interference",
            Details = Model,
            Parameters = [new("interference", Length, "on the diameter"), .. Parts],
            Source = Shigley,
            Gives =
            [
                .. WorkGives.Of(
                    Dimension.OfPressure,
                    "contact pressure",
                    "outer hoop at bore",
                    "outer hoop outside",
                    "inner hoop at contact",
                    "inner hoop at bore"
                ),
                .. WorkGives.Of(Dimension.OfForce, "push force"),
                .. WorkGives.Of(Dimension.OfTorque, "torque"),
            ],
            Examples =
            [
                new(
                    "interference=0.2 mm; diameter=400 mm; outside=500 mm; inside=300 mm; outer-modulus=200 GPa; outer-poisson=0.3; "
                        + "inner-modulus=200 GPa; inner-poisson=0.3",
                    "contact pressure=12.3046875 MPa; outer hoop at bore=56.0546875 MPa; outer hoop outside=43.75 MPa; "
                        + "inner hoop at bore=-56.25 MPa; inner hoop at contact=-43.9453125 MPa",
                    "Ugural and Fenster, Advanced Strength and Applied Elasticity, Ex. 8.3, p. 243, printed 12.3"
                ),
                new(
                    "interference=0.004 in; diameter=1.5 in; outside=2.4 in; inside=1.26 in; outer-material=aluminium-356; "
                        + "inner-modulus=29000000 psi; inner-poisson=0.3; length=0.236 in; friction=0.12",
                    "contact pressure=6085.783 psi; push force=812.177 lbf",
                    "the same relation worked out apart from this program"
                ),
            ],
            Work = all => Solve(all, (fit, given) => fit.AtInterference(given.In("interference", Units.Millimetre))),
        },
        new()
        {
            Name = "press-fit-for-hoop",
            Family = Family,
            Summary = "most interference that keeps the outer part's hoop stress under a limit",
            Details = Model,
            Parameters =
            [
                new("hoop-limit", new WorkTakes.Amount(Units.Megapascal), "at the bore of the outer part"),
                .. Parts,
            ],
            Source = Shigley,
            Gives =
            [
                .. WorkGives.Of(Dimension.OfPressure, "contact pressure"),
                .. WorkGives.Of(Dimension.OfLength, "interference"),
                .. WorkGives.Of(
                    Dimension.OfPressure,
                    "outer hoop at bore",
                    "outer hoop outside",
                    "inner hoop at contact",
                    "inner hoop at bore"
                ),
                .. WorkGives.Of(Dimension.OfForce, "push force"),
                .. WorkGives.Of(Dimension.OfTorque, "torque"),
            ],
            Examples =
            [
                new(
                    $"hoop-limit=30 MPa; {Ring}; length=100 mm; friction=0.15",
                    "contact pressure=21.724137931 MPa; interference=0.064753694581 mm; push force=102372.588195 N; "
                        + "torque=5118.6294097 N\u00B7m",
                    "lecture slides on shrink fits: steel shaft in iron disc, inputs as printed there"
                ),
            ],
            Work = all => Solve(all, (fit, given) => fit.AtOuterHoop(given.In("hoop-limit", Units.Megapascal))),
        },
        new()
        {
            Name = "press-fit-for-pressure",
            Family = Family,
            Summary = "interference that gives a contact pressure",
            Details = Model,
            Parameters = [new("pressure", new WorkTakes.Amount(Units.Megapascal), "contact pressure wanted"), .. Parts],
            Source = Shigley,
            Gives =
            [
                .. WorkGives.Of(Dimension.OfPressure, "contact pressure"),
                .. WorkGives.Of(Dimension.OfLength, "interference"),
                .. WorkGives.Of(
                    Dimension.OfPressure,
                    "outer hoop at bore",
                    "outer hoop outside",
                    "inner hoop at contact",
                    "inner hoop at bore"
                ),
            ],
            Examples =
            [
                new(
                    "pressure=30 MPa; diameter=250 mm; outside=300 mm; inside=200 mm; outer-modulus=200 GPa; outer-poisson=0.3; "
                        + "inner-modulus=200 GPa; inner-poisson=0.3",
                    "interference=0.3787878788 mm",
                    "Bhavikatti, Strength of Materials, ch. 8, compound cylinder, printed 0.189 on the radius"
                ),
            ],
            Work = all => Solve(all, (fit, given) => fit.AtPressure(given.In("pressure", Units.Megapascal))),
        },
        new()
        {
            Name = "ring-stress",
            Family = Family,
            Summary = "stress in the wall of a thick ring under pressure from inside",
            Details = "Tension is positive.",
            Parameters =
            [
                new("inside", Length, "bore"),
                new("outside", Length, "outside diameter"),
                new("pressure", new WorkTakes.Amount(Units.Megapascal), "in the bore"),
                new("at", Length, "diameter where the stress is wanted"),
            ],
            Source = "Lam\u00E9; Boresi and Schmidt, Advanced Mechanics of Materials, chapter 11",
            Gives = WorkGives.Of(Dimension.OfPressure, "radial", "hoop"),
            Examples =
            [
                new(
                    "inside=20 mm; outside=100 mm; pressure=300 MPa; at=50 mm",
                    "radial=-37.5 MPa; hoop=62.5 MPa",
                    "Boresi and Schmidt, Ex. 11.1, p. 397"
                ),
            ],
            Work = RingStress,
        },
    ];

    private static ShopResult<WorkAnswer> Solve(
        WorkArguments all,
        Func<PressFit, WorkArguments, ShopResult<PressFitLoad>> load
    ) =>
        MaterialArguments
            .Elasticity(all, "outer")
            .Then(outer =>
                MaterialArguments
                    .Elasticity(all, "inner")
                    .Then(inner =>
                        PressFit
                            .Of(
                                all.In("inside", Units.Millimetre, 0),
                                all.In("diameter", Units.Millimetre),
                                all.In("outside", Units.Millimetre),
                                outer,
                                inner
                            )
                            .Then(fit => load(fit, all))
                            .Then(found => Show(all, found, outer, inner))
                    )
            );

    private static ShopResult<WorkAnswer> Show(WorkArguments all, PressFitLoad load, Elasticity outer, Elasticity inner)
    {
        Working working = new(all);
        Know(working, all, "outer", outer);
        Know(working, all, "inner", inner);
        if (!all.Has("inside"))
        {
            working.Know("inside", "0");
        }

        Gives(working, load);
        Stress(working, all, load);
        return Force(working, all, load) is { } fault ? fault : working.Done();
    }

    private static void Know(Working working, WorkArguments all, string part, Elasticity material)
    {
        working.Know(
            $"{part}-modulus",
            MaterialArguments.Show(all, part, "modulus", material.ModulusMegapascals / 1000, "GPa")
        );
        working.Know($"{part}-poisson", MaterialArguments.Show(all, part, "poisson", material.Poisson, ""));
    }

    private static void Gives(Working working, PressFitLoad load)
    {
        working.Step(
            "outer give",
            "(({outside}\u00B2 + {diameter}\u00B2) / ({outside}\u00B2 - {diameter}\u00B2) + {outer-poisson}) / {outer-modulus}, per MPa",
            load.Fit.OuterGivePerMegapascal,
            Units.One,
            Units.One,
            isResult: false
        );
        working.Step(
            "inner give",
            "(({diameter}\u00B2 + {inside}\u00B2) / ({diameter}\u00B2 - {inside}\u00B2) - {inner-poisson}) / {inner-modulus}, per MPa",
            load.Fit.InnerGivePerMegapascal,
            Units.One,
            Units.One,
            isResult: false
        );
    }

    private static void Stress(Working working, WorkArguments all, PressFitLoad load)
    {
        bool isGiven = all.Has("interference");
        if (!isGiven)
        {
            Pressure(
                working,
                "contact pressure",
                all.Has("pressure")
                    ? "{pressure}"
                    : "{hoop-limit} x ({outside}\u00B2 - {diameter}\u00B2) / ({outside}\u00B2 + {diameter}\u00B2)",
                load.PressureMegapascals
            );

            // Under a stress limit it is the most there may be.
            working.Step(
                "interference",
                "{diameter} x {contact-pressure} x ({outer-give} + {inner-give})",
                load.InterferenceMillimetres,
                Units.Millimetre,
                Units.Inch,
                rounding: all.Has("hoop-limit") ? Rounding.Down : Rounding.Nearest
            );
        }
        else
        {
            Pressure(
                working,
                "contact pressure",
                "{interference} / ({diameter} x ({outer-give} + {inner-give}))",
                load.PressureMegapascals
            );
        }

        Pressure(
            working,
            "outer hoop at bore",
            "{contact-pressure} x ({outside}\u00B2 + {diameter}\u00B2) / ({outside}\u00B2 - {diameter}\u00B2)",
            load.OuterHoopAtBoreMegapascals
        );
        Pressure(
            working,
            "outer hoop outside",
            "2 x {contact-pressure} x {diameter}\u00B2 / ({outside}\u00B2 - {diameter}\u00B2)",
            load.OuterHoopAtOutsideMegapascals
        );
        Pressure(
            working,
            "inner hoop at contact",
            "-{contact-pressure} x ({diameter}\u00B2 + {inside}\u00B2) / ({diameter}\u00B2 - {inside}\u00B2)",
            load.InnerHoopAtContactMegapascals
        );
        Pressure(
            working,
            "inner hoop at bore",
            load.Fit.InsideMillimetres > 0
                ? "-2 x {contact-pressure} x {diameter}\u00B2 / ({diameter}\u00B2 - {inside}\u00B2)"
                : "-{contact-pressure}, solid",
            load.InnerHoopAtBoreMegapascals
        );
    }

    private static ShopFault? Force(Working working, WorkArguments all, PressFitLoad load)
    {
        if (!all.Has("length") && !all.Has("friction"))
        {
            return null;
        }

        if (!all.Has("length") || !all.Has("friction"))
        {
            return new ShopFault(
                all.Has("length") ? "friction" : "length",
                "nothing",
                "length and friction go together"
            );
        }

        double length = all.In("length", Units.Millimetre);
        double friction = all.In("friction", Units.One);
        if (!load.AxialForceNewtons(length, friction).TryGet(out double force, out ShopFault? fault))
        {
            return fault;
        }

        working.Step(
            "push force",
            "pi x {diameter} x {length} x {friction} x {contact-pressure}",
            force,
            Units.Newton,
            Units.PoundForce
        );
        if (load.TorqueNewtonMetres(length, friction).TryGet(out double torque, out _))
        {
            working.Step("torque", "{push-force} x {diameter} / 2", torque, Units.NewtonMetre, Units.PoundForceFoot);
        }

        return null;
    }

    private static ShopResult<WorkAnswer> RingStress(WorkArguments all) =>
        new ThickRing(
            all.In("inside", Units.Millimetre),
            all.In("outside", Units.Millimetre),
            all.In("pressure", Units.Megapascal)
        )
            .StressMegapascals(all.In("at", Units.Millimetre))
            .Then(stress =>
            {
                const string mean = "{pressure} x {inside}\u00B2 / ({outside}\u00B2 - {inside}\u00B2)";
                Working working = new(all);
                Pressure(working, "radial", mean + " x (1 - {outside}\u00B2 / {at}\u00B2)", stress.Radial);
                Pressure(working, "hoop", mean + " x (1 + {outside}\u00B2 / {at}\u00B2)", stress.Hoop);
                return working.Done();
            });

    private static void Pressure(Working working, string name, string formula, double megapascals) =>
        working.Step(name, formula, megapascals, Units.Megapascal, Units.Psi);
}
