namespace ProcRunner.ShopMath;

/// <summary>A press fit under its contact pressure; tension is positive. Lamé, as in <see cref="PressFit"/>.</summary>
/// <param name="Fit">The pair of parts.</param>
/// <param name="PressureMegapascals">Contact pressure, 0 or more; the radial stress there is its negative.</param>
public sealed record PressFitLoad(PressFit Fit, double PressureMegapascals)
{
    /// <summary>Interference on the diameter, mm: d p (Co/Eo + Ci/Ei).</summary>
    public double InterferenceMillimetres => BoreGrowthMillimetres + PartShrinkageMillimetres;

    /// <summary>How much the bore of the outer part grows, on the diameter, mm.</summary>
    public double BoreGrowthMillimetres => Fit.DiameterMillimetres * PressureMegapascals * Fit.OuterGivePerMegapascal;

    /// <summary>How much the outside of the inner part shrinks, on the diameter, mm.</summary>
    public double PartShrinkageMillimetres =>
        Fit.DiameterMillimetres * PressureMegapascals * Fit.InnerGivePerMegapascal;

    /// <summary>Hoop stress of the outer part at its bore, MPa: p (D²+d²)/(D²-d²).</summary>
    public double OuterHoopAtBoreMegapascals =>
        PressureMegapascals * ThickRing.Ratio(Fit.DiameterMillimetres, Fit.OutsideMillimetres);

    /// <summary>Hoop stress of the outer part at its outside, MPa: 2 p d²/(D²-d²).</summary>
    public double OuterHoopAtOutsideMegapascals => OuterHoopAtBoreMegapascals - PressureMegapascals;

    /// <summary>Hoop stress of the inner part where the parts touch, MPa: -p (d²+di²)/(d²-di²).</summary>
    public double InnerHoopAtContactMegapascals =>
        -PressureMegapascals * ThickRing.Ratio(Fit.InsideMillimetres, Fit.DiameterMillimetres);

    /// <summary>Hoop stress of the inner part at its bore, MPa: -2 p d²/(d²-di²); -p throughout a solid one.</summary>
    public double InnerHoopAtBoreMegapascals =>
        Fit.InsideMillimetres > 0 ? InnerHoopAtContactMegapascals - PressureMegapascals : -PressureMegapascals;

    /// <summary>Force to push the part along, N: pi d L f p. Shigley, chapter 3.</summary>
    /// <param name="lengthMillimetres">Length engaged, above 0.</param>
    /// <param name="friction">Coefficient of friction, 0 to 1; 0.12 to 0.20 is usual.</param>
    public ShopResult<double> AxialForceNewtons(double lengthMillimetres, double friction) =>
        (Allowed.Above0("length", lengthMillimetres, "mm") ?? Allowed.Within("friction", friction, 0, 1, ""))
            is { } fault
            ? fault
            : Math.PI * Fit.DiameterMillimetres * lengthMillimetres * friction * PressureMegapascals;

    /// <summary>Torque to turn the part, N m: half the diameter times <see cref="AxialForceNewtons"/>.</summary>
    /// <param name="lengthMillimetres">Length engaged, above 0.</param>
    /// <param name="friction">Coefficient of friction, 0 to 1.</param>
    public ShopResult<double> TorqueNewtonMetres(double lengthMillimetres, double friction) =>
        AxialForceNewtons(lengthMillimetres, friction)
            .Then<double>(newtons => newtons * Fit.DiameterMillimetres / 2000);
}
