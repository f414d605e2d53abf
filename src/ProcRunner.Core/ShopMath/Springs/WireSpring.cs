namespace ProcRunner.ShopMath;

/// <summary>
/// A helical compression spring of round wire. D is the mean diameter of the coil, OD - d. Shigley, Mechanical Engineering Design,
/// chapter 10; Jindal, Machine Design, chapter 8. What its members give counts only while <see cref="Fault"/> is null.
/// </summary>
/// <param name="WireMillimetres">d, above 0.</param>
/// <param name="MeanMillimetres">D, above the wire.</param>
/// <param name="ActiveCoils">Na, above 0; squared ends take two from the total.</param>
/// <param name="ShearModulusMegapascals">G, above 0; about 80 GPa for steel wire.</param>
public sealed record WireSpring(
    double WireMillimetres,
    double MeanMillimetres,
    double ActiveCoils,
    double ShearModulusMegapascals
)
{
    /// <summary>What is wrong with the dimensions; null if they make a spring.</summary>
    public ShopFault? Fault =>
        CheckCoil(WireMillimetres, MeanMillimetres, ShearModulusMegapascals)
        ?? Allowed.Above0("coils", ActiveCoils, "");

    /// <summary>C = D/d, the spring index.</summary>
    public double Index => MeanMillimetres / WireMillimetres;

    /// <summary>Rate, N/mm: G d^4 / (8 D³ Na) (Shigley eq. 10-9).</summary>
    public double RateNewtonsPerMillimetre => RateOf(ActiveCoils);

    /// <summary>Rate with the wire's direct shear counted, N/mm: the rate / (1 + 1/(2 C²)) (Shigley eq. 10-8).</summary>
    public double RateWithShearNewtonsPerMillimetre => RateNewtonsPerMillimetre / (1 + (1 / (2 * Index * Index)));

    /// <summary>Correction of the stress for direct shear: (2C + 1) / (2C) (Jindal, chapter 8).</summary>
    public double ShearCorrection => ((2 * Index) + 1) / (2 * Index);

    /// <summary>Correction of the stress for shear and curvature by Wahl: (4C - 1)/(4C - 4) + 0.615/C (Jindal, chapter 8).</summary>
    public double WahlCorrection => (((4 * Index) - 1) / ((4 * Index) - 4)) + (0.615 / Index);

    /// <summary>Shear stress under a load, MPa: correction x 8 F D / (pi d³) (Shigley eq. 10-7), with Wahl's correction.</summary>
    /// <param name="loadNewtons">F, not below 0.</param>
    public double StressMegapascals(double loadNewtons) =>
        WahlCorrection * 8 * loadNewtons * MeanMillimetres / (Math.PI * Math.Pow(WireMillimetres, 3));

    /// <summary>Mass of the active coils, kg: Na pi² d² D rho / 4 (Shigley, chapter 10).</summary>
    /// <param name="densityKilogramsPerCubicMetre">About 7860 for steel, above 0.</param>
    public double MassKilograms(double densityKilogramsPerCubicMetre) =>
        ActiveCoils
        * Math.PI
        * Math.PI
        * WireMillimetres
        * WireMillimetres
        * MeanMillimetres
        * densityKilogramsPerCubicMetre
        / 4
        * 1e-9;

    /// <summary>First natural frequency with both ends on plates, Hz: (1/2) root(k/m) (Shigley eq. 10-25).</summary>
    /// <param name="densityKilogramsPerCubicMetre">Above 0.</param>
    public double NaturalFrequencyHertz(double densityKilogramsPerCubicMetre) =>
        Math.Sqrt(RateNewtonsPerMillimetre * 1000 / MassKilograms(densityKilogramsPerCubicMetre)) / 2;

    /// <summary>Active coils that give a rate: G d^4 / (8 D³ k).</summary>
    /// <param name="wireMillimetres">d, above 0.</param>
    /// <param name="meanMillimetres">D, above the wire.</param>
    /// <param name="shearModulusMegapascals">G, above 0.</param>
    /// <param name="rateNewtonsPerMillimetre">k, above 0.</param>
    public static ShopResult<double> CoilsFor(
        double wireMillimetres,
        double meanMillimetres,
        double shearModulusMegapascals,
        double rateNewtonsPerMillimetre
    ) =>
        (
            CheckCoil(wireMillimetres, meanMillimetres, shearModulusMegapascals)
            ?? Allowed.Above0("rate", rateNewtonsPerMillimetre, "N/mm")
        )
            is { } fault
            ? fault
            : new WireSpring(wireMillimetres, meanMillimetres, 1, shearModulusMegapascals).RateOf(1)
                / rateNewtonsPerMillimetre;

    /// <summary>Solid height, mm: total coils x d with squared and ground ends, one wire more with ends only squared (Shigley Table 10-1).</summary>
    /// <param name="totalCoils">Active coils and two more.</param>
    /// <param name="areGround">Whether the ends are ground.</param>
    public double SolidMillimetres(double totalCoils, bool areGround) =>
        (areGround ? totalCoils : totalCoils + 1) * WireMillimetres;

    private double RateOf(double coils) =>
        ShearModulusMegapascals * Math.Pow(WireMillimetres, 4) / (8 * Math.Pow(MeanMillimetres, 3) * coils);

    private static ShopFault? CheckCoil(double wire, double mean, double shearModulus) =>
        Allowed.Above0("wire", wire, "mm")
        ?? (
            mean > wire && double.IsFinite(mean)
                ? null
                : new ShopFault(
                    "mean diameter",
                    Allowed.Show(mean, "mm"),
                    $"it must be above the wire of {Allowed.Show(wire, "mm")}"
                )
        )
        ?? Allowed.Above0("shear modulus", shearModulus, "MPa");
}
