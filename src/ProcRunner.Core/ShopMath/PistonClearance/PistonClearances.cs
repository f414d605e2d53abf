using ProcRunner.Quantities;

namespace ProcRunner.ShopMath;

/// <summary>
/// Static estimate of valve-to-piston clearance on every cylinder from one that was measured. Square to the deck; exact.
/// </summary>
/// <remarks>
/// It takes pistons, pockets, lift and timing as alike on all cylinders, and says nothing of running. Only the engine builder
/// can close it: measured on every cylinder, with the gasket that is fitted.
/// </remarks>
public static class PistonClearances
{
    /// <summary>
    /// For each cylinder: measured + (its recession - recession where it was measured) - deck cut since + change of the gasket's
    /// thickness.
    /// </summary>
    /// <param name="measured">Clearance measured on one cylinder.</param>
    /// <param name="recessionThere">Recession of that valve when it was measured.</param>
    /// <param name="recessions">Of the same kind of valve, cylinder by cylinder, at least 1.</param>
    /// <param name="deckCut">Since the measurement, head and block together; not counted in the recessions.</param>
    /// <param name="gasketChange">New compressed thickness less the one measured with.</param>
    public static ShopResult<IReadOnlyList<Exact>> Estimate(
        Exact measured,
        Exact recessionThere,
        IReadOnlyList<Exact> recessions,
        Exact deckCut,
        Exact gasketChange
    ) =>
        recessions.Count == 0
            ? new ShopFault("recessions", "nothing", "give one for each cylinder")
            : recessions.Select(one => measured + (one - recessionThere) - deckCut + gasketChange).ToArray();
}
