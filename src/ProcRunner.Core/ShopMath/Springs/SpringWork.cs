using ProcRunner.Quantities;

namespace ProcRunner.ShopMath;

/// <summary>The table of springs in the head.</summary>
internal static class SpringWork
{
    public const string Family = "springs";
    private const string Linear = "linear spring";
    private const string Geometry = "lengths along one axis";
    private const string Tm220 = "TM 9-2815-220-24, WP 0145, middle spring; the rate worked by hand";
    private static readonly WorkTakes Length = new WorkTakes.Amount(Units.Inch);
    private static readonly WorkTakes Force = new WorkTakes.Amount(Units.PoundForce);
    private static readonly WorkTakes Rate = new WorkTakes.Amount(Units.PoundForcePerInch);

    public static IReadOnlyList<WorkFunction> Table { get; } =
    [
        new()
        {
            Name = "spring-rate",
            Family = Family,
            Summary = "rate of a spring from two loads",
            Details = "The two may stand in either order.",
            Parameters =
            [
                new("load1", Force, "one load"),
                new("height1", Length, "its height"),
                new("load2", Force, "another load"),
                new("height2", Length, "its height"),
            ],
            Source = Linear,
            Gives = WorkGives.Of(Dimension.OfSpringRate, "rate"),
            Examples =
            [
                new(
                    "load1=51.7 lbf; height1=2.26 in; load2=81.4 lbf; height2=1.56 in",
                    "rate=42.428571429 lbf/in",
                    Tm220
                ),
                new("load1=51.7 lbf; height1=2.26 in; load2=81.4 lbf; height2=1.56 in", "rate=7.430381438 N/mm", Tm220),
            ],
            Work = all =>
                Working.OneStep(
                    all,
                    Spring.Rate(all.Amount("load1"), all.Amount("height1"), all.Amount("load2"), all.Amount("height2")),
                    "rate",
                    "({load2} - {load1}) / ({height1} - {height2})",
                    Units.NewtonPerMillimetre,
                    Units.PoundForcePerInch
                ),
        },
        new()
        {
            Name = "spring-load",
            Family = Family,
            Summary = "load of a spring at another height",
            Details = "Holds between free length and solid height; solid height is not checked here.",
            Parameters =
            [
                new("load", Force, "a known load"),
                new("height", Length, "its height"),
                new("rate", Rate, "rate of the spring"),
                new("at", Length, "the height asked about"),
            ],
            Source = Linear,
            Gives = WorkGives.Of(Dimension.OfForce, "load there"),
            Examples =
            [
                new(
                    "load=51.7 lbf; height=2.26 in; rate=42.428571 lbf/in; at=2.29 in",
                    "load there=50.427143 lbf",
                    Tm220
                ),
            ],
            Work = all =>
                Working.OneStep(
                    all,
                    Spring.LoadAt(all.Amount("load"), all.Amount("height"), all.Amount("rate"), all.Amount("at")),
                    "load there",
                    "{load} + {rate} x ({height} - {at})",
                    Units.Newton,
                    Units.PoundForce
                ),
        },
        new()
        {
            Name = "spring-height",
            Family = Family,
            Summary = "height at which a spring has a wanted load",
            Details = "Holds between free length and solid height; a wanted load of 0 gives the free length.",
            Parameters =
            [
                new("load", Force, "a known load"),
                new("height", Length, "its height"),
                new("rate", Rate, "rate of the spring"),
                new("wanted", Force, "the load asked about"),
            ],
            Source = Linear,
            Gives = WorkGives.Of(Dimension.OfLength, "height there"),
            Examples =
            [
                new(
                    "load=26.2 lbf; height=2.07 in; rate=22.987012987 lbf/in; wanted=0 lbf",
                    "height there=3.209774 in",
                    "TM 9-2815-220-24, WP 0145, inner spring; free length worked by hand"
                ),
                new(
                    "load=0 lbf; height=2 in; rate=73.3 lbf/in; wanted=35 lbf",
                    "height there=1.5225102 in",
                    "Wentzell, Machine Design, Ex. 8.4, p. 165: 35 lb at 73.3 lb/in, printed 0.48 in of travel"
                ),
            ],
            Work = all =>
                Working.OneStep(
                    all,
                    Spring.HeightFor(
                        all.Amount("load"),
                        all.Amount("height"),
                        all.Amount("rate"),
                        all.Amount("wanted")
                    ),
                    "height there",
                    "{height} - ({wanted} - {load}) / {rate}",
                    Units.Millimetre,
                    Units.Inch
                ),
        },
        new()
        {
            Name = "percent-of-spec",
            Family = Family,
            Summary = "how far a load is off its spec",
            Details = "Below zero when the load is too small. A shim is no cure for a weak spring.",
            Parameters = [new("reading", Force, "load as read"), new("spec", Force, "load of the spec")],
            Source = "definition of a relative deviation",
            Gives = WorkGives.Of(Dimension.None, "off", "of spec"),
            Examples = [new("reading=86 lbf; spec=97.5 lbf", "off=-11.8 %; of spec=88.2 %", "worked by hand")],
            Work = PercentOfSpec,
        },
        new()
        {
            Name = "coil-bind",
            Family = Family,
            Summary = "what a spring has left to solid at full lift, and how much shim that allows",
            Details = "0.050 to 0.060 in at full lift is common practice unless the maker says otherwise.",
            Parameters =
            [
                new("height", Length, "installed height, valve closed"),
                new("lift", Length, "full lift"),
                new("solid", Length, "solid height"),
                new("margin", Length, "wanted at full lift; with it the most shim is worked out", IsOptional: true),
            ],
            Source = Geometry,
            Gives = WorkGives.Of(Dimension.OfLength, "left", "most shim"),
            Examples =
            [
                new(
                    "height=1.800 in; lift=0.472 in; solid=1.250 in; margin=0.050 in",
                    "left=0.078 in; most shim=0.028 in",
                    "worked by hand; 0.050 in is common practice"
                ),
                new(
                    "height=2.07 in; lift=0.77 in; solid=1.28 in",
                    "left=0.020 in",
                    "TM 9-2815-220-24, WP 0145, inner spring"
                ),
            ],
            Work = CoilBind,
        },
        new()
        {
            Name = "retainer-to-seal",
            Family = Family,
            Summary = "what is left between retainer and seal at full lift",
            Details = "Shims under the seal take from it, shims above it don't. 0.050 in is common practice.",
            Parameters = [new("gap", Length, "valve closed"), new("lift", Length, "full lift")],
            Source = Geometry,
            Gives = WorkGives.Of(Dimension.OfLength, "left"),
            Examples = [new("gap=0.540 in; lift=0.472 in", "left=0.068 in", "worked by hand")],
            Work = all =>
                Working.OneStep(
                    all,
                    Spring.RetainerToSeal(all.Amount("gap"), all.Amount("lift")),
                    "left",
                    "{gap} - {lift}",
                    Units.Millimetre,
                    Units.Inch,
                    Rounding.Down
                ),
        },
        ShimWork.Function,
    ];

    private static ShopResult<WorkAnswer> PercentOfSpec(WorkArguments all) =>
        Spring
            .PartOff(all.Amount("reading"), all.Amount("spec"))
            .Then(off =>
            {
                Working working = new(all);
                working.Step("off", "({reading} - {spec}) / {spec}", off, Units.Percent, Units.Percent);
                Exact of = all.Amount("reading") / all.Amount("spec");
                working.Step("of spec", "{reading} / {spec}", of, Units.Percent, Units.Percent);
                return working.Done();
            });

    private static ShopResult<WorkAnswer> CoilBind(WorkArguments all) =>
        Spring
            .CoilBindMargin(all.Amount("height"), all.Amount("lift"), all.Amount("solid"))
            .Then(left =>
            {
                Working working = new(all);
                working.Step(
                    "left",
                    "{height} - {lift} - {solid}",
                    left,
                    Units.Millimetre,
                    Units.Inch,
                    rounding: Rounding.Down
                );
                if (!all.Has("margin"))
                {
                    return working.Done();
                }

                return Spring
                    .MostShim(all.Amount("height"), all.Amount("lift"), all.Amount("solid"), all.Amount("margin"))
                    .Then(shim =>
                    {
                        working.Step(
                            "most shim",
                            "{left} - {margin}",
                            shim,
                            Units.Millimetre,
                            Units.Inch,
                            rounding: Rounding.Down
                        );
                        return working.Done();
                    });
            });
}
