namespace ProcRunner.ShopMath;

/// <summary>
/// A ring or bar pressed into a ring, by Lamé: elastic, plane stress, no slip, both parts of one length. What is pressed in is the
/// inner part, what it sits in the outer one.
/// </summary>
/// <remarks>
/// p = interference / (d (Co/Eo + Ci/Ei)) with Co = (D²+d²)/(D²-d²) + nu_o and Ci = (d²+di²)/(d²-di²) - nu_i, all diameters:
/// Shigley, Mechanical Engineering Design, chapter 3, press and shrink fits; the compressed inner part carries the minus. The
/// folder: this, <see cref="PressFitLoad"/> and <see cref="ThickRing"/> for stress; <see cref="ThermalFit"/> for heat with a constant
/// expansion, <see cref="ExpansionCurve"/> for a tabulated one; <see cref="Material"/> for figures of materials with their origin.
/// </remarks>
public sealed record PressFit
{
    private PressFit() { }

    /// <summary>Diameter where the parts touch, mm.</summary>
    public required double DiameterMillimetres { get; init; }

    /// <summary>Outside diameter of the outer part, mm.</summary>
    public required double OutsideMillimetres { get; init; }

    /// <summary>Bore of the inner part, mm; 0 when solid.</summary>
    public required double InsideMillimetres { get; init; }

    /// <summary>How the outer part gives: growth of its bore per diameter, for each MPa.</summary>
    public required double OuterGivePerMegapascal { get; init; }

    /// <summary>How the inner part gives: shrinkage of its outside per diameter, for each MPa.</summary>
    public required double InnerGivePerMegapascal { get; init; }

    /// <summary>A pair of parts. Diameters the wrong way round, or a material that is none, are a fault.</summary>
    /// <param name="insideMillimetres">Bore of the inner part: 0 when solid, below the diameter.</param>
    /// <param name="diameterMillimetres">Where they touch: above 0, below the outside.</param>
    /// <param name="outsideMillimetres">Outside of the outer part; a head is modelled as a ring up to the nearest passage or edge.</param>
    /// <param name="outer">Material of the outer part.</param>
    /// <param name="inner">Material of the inner part.</param>
    public static ShopResult<PressFit> Of(
        double insideMillimetres,
        double diameterMillimetres,
        double outsideMillimetres,
        Elasticity outer,
        Elasticity inner
    )
    {
        ShopFault? fault =
            Allowed.Above0("diameter", diameterMillimetres, "mm")
            ?? ThickRing.Check("inside", insideMillimetres, "diameter", diameterMillimetres)
            ?? ThickRing.Check("diameter", diameterMillimetres, "outside", outsideMillimetres)
            ?? outer.Check("outer")
            ?? inner.Check("inner");
        if (fault is not null)
        {
            return fault;
        }

        double ratioOuter = ThickRing.Ratio(diameterMillimetres, outsideMillimetres);
        double ratioInner = ThickRing.Ratio(insideMillimetres, diameterMillimetres);
        return new PressFit
        {
            DiameterMillimetres = diameterMillimetres,
            OutsideMillimetres = outsideMillimetres,
            InsideMillimetres = insideMillimetres,
            OuterGivePerMegapascal = (ratioOuter + outer.Poisson) / outer.ModulusMegapascals,
            InnerGivePerMegapascal = (ratioInner - inner.Poisson) / inner.ModulusMegapascals,
        };
    }

    /// <summary>What an interference brings about: p = interference / (d (Co/Eo + Ci/Ei)), as above.</summary>
    /// <param name="interferenceMillimetres">On the diameter, 0 or more, up to the diameter: with clearance there is no fit to work out.</param>
    public ShopResult<PressFitLoad> AtInterference(double interferenceMillimetres) =>
        Allowed.Within("interference", interferenceMillimetres, 0, DiameterMillimetres, "mm") is { } fault
            ? fault
            : new PressFitLoad(
                this,
                interferenceMillimetres / (DiameterMillimetres * (OuterGivePerMegapascal + InnerGivePerMegapascal))
            );

    /// <summary>What a contact pressure goes with.</summary>
    /// <param name="pressureMegapascals">0 or more.</param>
    public ShopResult<PressFitLoad> AtPressure(double pressureMegapascals) =>
        Allowed.Within("pressure", pressureMegapascals, 0, double.MaxValue, "MPa") is { } fault
            ? fault
            : new PressFitLoad(this, pressureMegapascals);

    /// <summary>What goes with a hoop stress at the bore of the outer part, where it is largest: p = hoop (D²-d²)/(D²+d²).</summary>
    /// <param name="hoopMegapascals">The most it may bear, above 0.</param>
    public ShopResult<PressFitLoad> AtOuterHoop(double hoopMegapascals) =>
        Allowed.Above0("hoop limit", hoopMegapascals, "MPa") is { } fault
            ? fault
            : new PressFitLoad(this, hoopMegapascals / ThickRing.Ratio(DiameterMillimetres, OutsideMillimetres));
}
