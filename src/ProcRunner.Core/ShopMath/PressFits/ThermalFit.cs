using ProcRunner.Quantities;

namespace ProcRunner.ShopMath;

/// <summary>
/// Fits and heat with a constant expansion (linear thermal expansion); exact. A constant expansion overstates shrinkage in the cold
/// by up to a tenth at dry-ice temperature: <see cref="ExpansionCurve"/> does not.
/// </summary>
public static class ThermalFit
{
    /// <summary>
    /// Interference left when each part has its own temperature: interference - diameter x (expansion of outer x its warming -
    /// expansion of inner x its warming). Not above 0, the fit is nothing there.
    /// </summary>
    /// <param name="interference">At the temperature where it was measured, on the diameter.</param>
    /// <param name="diameter">Above 0.</param>
    /// <param name="outerExpansion">Of the head, not below 0.</param>
    /// <param name="outerWarming">From where the interference was measured; below 0 for cooling.</param>
    /// <param name="innerExpansion">Of what is pressed in, not below 0.</param>
    /// <param name="innerWarming">From where the interference was measured.</param>
    public static ShopResult<Exact> InterferenceLeft(
        Exact interference,
        Exact diameter,
        Exact outerExpansion,
        Exact outerWarming,
        Exact innerExpansion,
        Exact innerWarming
    ) =>
        (
            Allowed.Above0("diameter", diameter)
            ?? Allowed.NotBelow0("outer expansion", outerExpansion)
            ?? Allowed.NotBelow0("inner expansion", innerExpansion)
        )
            is { } fault
            ? fault
            : interference - (diameter * ((outerExpansion * outerWarming) - (innerExpansion * innerWarming)));

    /// <summary>
    /// How much warmer the head, or colder the part, must be to go together: (interference + clearance) / (expansion x diameter).
    /// </summary>
    /// <param name="interference">On the diameter, not below 0.</param>
    /// <param name="clearance">Wanted to drop it in, on the diameter, not below 0.</param>
    /// <param name="expansion">Of the part that is heated or chilled, above 0.</param>
    /// <param name="diameter">Above 0.</param>
    public static ShopResult<Exact> TemperatureDifference(
        Exact interference,
        Exact clearance,
        Exact expansion,
        Exact diameter
    ) =>
        (
            Allowed.NotBelow0("interference", interference)
            ?? Allowed.NotBelow0("clearance", clearance)
            ?? Allowed.Above0("expansion", expansion)
            ?? Allowed.Above0("diameter", diameter)
        )
            is { } fault
            ? fault
            : (interference + clearance) / (expansion * diameter);

    /// <summary>How a length changes: length x expansion x warming.</summary>
    /// <param name="length">Not below 0.</param>
    /// <param name="expansion">Not below 0.</param>
    /// <param name="warming">Below 0 for cooling.</param>
    public static ShopResult<Exact> LengthChange(Exact length, Exact expansion, Exact warming) =>
        (Allowed.NotBelow0("length", length) ?? Allowed.NotBelow0("expansion", expansion)) is { } fault
            ? fault
            : length * expansion * warming;
}
