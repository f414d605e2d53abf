namespace ProcRunner.ShopMath;

/// <summary>Volume above the piston and compression ratio; lengths in mm, areas in cm2, volumes in cm3.</summary>
/// <remarks>What is out of the range named at an argument is a fault.</remarks>
public static class ChamberVolume
{
    private const double CubicMillimetresPerCubicCentimetre = 1000;

    /// <summary>
    /// What a chamber grows by when valves sink: valves x pi/4 x diameter^2 x sink. Exact only if the valve's head moves in a bore
    /// of its own diameter, else an estimate.
    /// </summary>
    /// <param name="headDiameterMillimetres">Of the valve's head, above 0.</param>
    /// <param name="sinkMillimetres">Change of recession; below 0 the chamber shrinks.</param>
    /// <param name="valves">How many sink alike, 1 or more.</param>
    public static ShopResult<double> OfSink(double headDiameterMillimetres, double sinkMillimetres, double valves) =>
        (
            Allowed.Above0("head diameter", headDiameterMillimetres, "mm")
            ?? Allowed.Finite("sink", sinkMillimetres, "mm")
            ?? Count("valves", valves)
        )
            is { } fault
            ? fault
            : valves
                * Math.PI
                / 4
                * headDiameterMillimetres
                * headDiameterMillimetres
                * sinkMillimetres
                / CubicMillimetresPerCubicCentimetre;

    /// <summary>What a chamber shrinks by when the deck is cut, as a change below 0: -area x cut.</summary>
    /// <param name="areaSquareCentimetres">Of the chamber in the deck's plane, above 0.</param>
    /// <param name="cutMillimetres">Square to the deck.</param>
    public static ShopResult<double> OfSkim(double areaSquareCentimetres, double cutMillimetres) =>
        (Allowed.Above0("area", areaSquareCentimetres, "cm2") ?? Allowed.Finite("deck cut", cutMillimetres, "mm"))
            is { } fault
            ? fault
            : -areaSquareCentimetres * cutMillimetres / 10;

    /// <summary>Swept volume, cm3: pi/4 x bore^2 x stroke (a cylinder's).</summary>
    /// <param name="boreMillimetres">Diameter of the cylinder, above 0.</param>
    /// <param name="strokeMillimetres">Above 0.</param>
    public static ShopResult<double> Swept(double boreMillimetres, double strokeMillimetres) =>
        (Allowed.Above0("bore", boreMillimetres, "mm") ?? Allowed.Above0("stroke", strokeMillimetres, "mm"))
            is { } fault
            ? fault
            : Math.PI / 4 * boreMillimetres * boreMillimetres * strokeMillimetres / CubicMillimetresPerCubicCentimetre;

    /// <summary>Compression ratio: (swept + chamber) / chamber, the chamber being all that is above the piston at its top (definition).</summary>
    /// <param name="sweptCubicCentimetres">Above 0.</param>
    /// <param name="chamberCubicCentimetres">With gasket, piston's bowl and all, above 0.</param>
    public static ShopResult<double> Ratio(double sweptCubicCentimetres, double chamberCubicCentimetres) =>
        (
            Allowed.Above0("swept volume", sweptCubicCentimetres, "cm3")
            ?? Allowed.Above0("chamber", chamberCubicCentimetres, "cm3")
        )
            is { } fault
            ? fault
            : (sweptCubicCentimetres + chamberCubicCentimetres) / chamberCubicCentimetres;

    /// <summary>The chamber that a ratio needs: swept / (ratio - 1).</summary>
    /// <param name="sweptCubicCentimetres">Above 0.</param>
    /// <param name="ratio">Above 1.</param>
    public static ShopResult<double> ForRatio(double sweptCubicCentimetres, double ratio) =>
        Allowed.Above0("swept volume", sweptCubicCentimetres, "cm3") is { } fault ? fault
        : ratio > 1 && double.IsFinite(ratio) ? sweptCubicCentimetres / (ratio - 1)
        : new ShopFault("ratio", Allowed.Show(ratio, ""), "it must be above 1");

    private static ShopFault? Count(string argument, double value) =>
        value is >= 1 and <= int.MaxValue && value == Math.Floor(value)
            ? null
            : new ShopFault(argument, Allowed.Show(value, ""), "it must be a whole number, 1 or more");
}
