namespace ProcRunner.ShopMath;

/// <summary>A thick ring under pressure from inside (Lamé; Boresi and Schmidt, Advanced Mechanics of Materials, chapter 11).</summary>
/// <param name="InsideMillimetres">Bore, mm.</param>
/// <param name="OutsideMillimetres">Outside diameter, mm.</param>
/// <param name="PressureMegapascals">In the bore.</param>
public sealed record ThickRing(double InsideMillimetres, double OutsideMillimetres, double PressureMegapascals)
{
    /// <summary>
    /// Stress at a diameter in the wall, MPa, tension positive: A - B/r² and A + B/r², with A = p d²/(D²-d²) and B/r² = A D²/at². A ring
    /// inside out, a pressure below 0 or a place outside of the wall is a fault.
    /// </summary>
    /// <param name="atMillimetres">From the bore to the outside.</param>
    public ShopResult<(double Radial, double Hoop)> StressMegapascals(double atMillimetres)
    {
        ShopFault? fault =
            Allowed.Above0("inside", InsideMillimetres, "mm")
            ?? Check("inside", InsideMillimetres, "outside", OutsideMillimetres)
            ?? Allowed.Within("pressure", PressureMegapascals, 0, double.MaxValue, "MPa")
            ?? Allowed.Within("at", atMillimetres, InsideMillimetres, OutsideMillimetres, "mm");
        if (fault is not null)
        {
            return fault;
        }

        double inside = InsideMillimetres * InsideMillimetres;
        double outside = OutsideMillimetres * OutsideMillimetres;
        double mean = PressureMegapascals * inside / (outside - inside);
        double swing = mean * outside / (atMillimetres * atMillimetres);
        return (mean - swing, mean + swing);
    }

    /// <summary>(D²+d²)/(D²-d²), worked so that a thin wall loses no digits.</summary>
    internal static double Ratio(double inside, double outside) =>
        ((outside * outside) + (inside * inside)) / ((outside - inside) * (outside + inside));

    /// <summary>A ring turned inside out, or no ring.</summary>
    internal static ShopFault? Check(
        string inside,
        double insideMillimetres,
        string outside,
        double outsideMillimetres
    ) =>
        insideMillimetres >= 0 && insideMillimetres < outsideMillimetres && double.IsFinite(outsideMillimetres)
            ? null
            : new ShopFault(
                inside,
                Allowed.Show(insideMillimetres, "mm"),
                $"it must be 0 or more and below the {outside} of {Allowed.Show(outsideMillimetres, "mm")}"
            );
}
