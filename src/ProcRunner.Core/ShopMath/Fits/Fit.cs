using ProcRunner.Quantities;

namespace ProcRunner.ShopMath;

/// <summary>Fits of a part in a hole, all on the diameter and all exact. Interference below 0 is clearance.</summary>
/// <remarks>
/// The folder: this is arithmetic on sizes; <see cref="IsoTolerance"/> and <see cref="IsoDeviation"/> are the tables of ISO 286-1,
/// <see cref="AnsiFit"/> those of ANSI B4.1; <c>FitWork</c> and <c>StandardFitWork</c> are the calculator's table over them.
/// </remarks>
public static class Fit
{
    /// <summary>Interference at the loosest: part smallest - hole largest (ISO 286-1:2010, interference fits).</summary>
    /// <param name="holeLargest">Diameter.</param>
    /// <param name="partSmallest">Diameter.</param>
    public static Exact LeastInterference(Exact holeLargest, Exact partSmallest) => partSmallest - holeLargest;

    /// <summary>Interference at the tightest: part largest - hole smallest (ISO 286-1:2010, interference fits).</summary>
    /// <param name="holeSmallest">Diameter.</param>
    /// <param name="partLargest">Diameter.</param>
    public static Exact MostInterference(Exact holeSmallest, Exact partLargest) => partLargest - holeSmallest;

    /// <summary>Range of the fit of two parts from their limits. A smallest size above its largest, or one not above 0, is a fault.</summary>
    /// <param name="holeSmallest">Above 0.</param>
    /// <param name="holeLargest">Not below the smallest.</param>
    /// <param name="partSmallest">Above 0.</param>
    /// <param name="partLargest">Not below the smallest.</param>
    public static ShopResult<FitRange> OfLimits(
        Exact holeSmallest,
        Exact holeLargest,
        Exact partSmallest,
        Exact partLargest
    ) =>
        (
            Allowed.Above0("hole smallest", holeSmallest)
            ?? Allowed.NotAbove("hole smallest", holeSmallest, "hole largest", holeLargest)
            ?? Allowed.Above0("part smallest", partSmallest)
            ?? Allowed.NotAbove("part smallest", partSmallest, "part largest", partLargest)
        )
            is { } fault
            ? fault
            : new FitRange(LeastInterference(holeLargest, partSmallest), MostInterference(holeSmallest, partLargest));

    /// <summary>The bore to cut for a measured part: part - interference.</summary>
    /// <param name="part">Its diameter as measured, above 0.</param>
    /// <param name="interference">On the diameter, 0 or more and below the part.</param>
    public static ShopResult<Exact> TargetBore(Exact part, Exact interference) =>
        (
            Allowed.Above0("part", part)
            ?? Allowed.NotBelow0("interference", interference)
            ?? Allowed.Below("interference", interference, "part", part)
        )
            is { } fault
            ? fault
            : part - interference;

    /// <summary>
    /// The smallest part on offer that a bore can still be cut for: the first whose target bore, part - interference, is not
    /// smaller than the bore is. Null if even the largest is too small: a part made to measure, or no repair.
    /// </summary>
    /// <param name="bore">The bore as it cleans up, above 0.</param>
    /// <param name="interference">On the diameter, 0 or more.</param>
    /// <param name="parts">Diameters on offer, in any order, each above the interference.</param>
    public static ShopResult<Oversize?> NextOversize(Exact bore, Exact interference, IReadOnlyList<Exact> parts)
    {
        if ((Allowed.Above0("bore", bore) ?? Allowed.NotBelow0("interference", interference)) is { } fault)
        {
            return fault;
        }

        foreach (Exact part in parts.Order())
        {
            if (!TargetBore(part, interference).TryGet(out Exact target, out ShopFault? wrong))
            {
                return wrong;
            }

            if (target.CompareTo(bore) >= 0)
            {
                return new Oversize(part, target, target - bore);
            }
        }

        return (Oversize?)null;
    }
}
