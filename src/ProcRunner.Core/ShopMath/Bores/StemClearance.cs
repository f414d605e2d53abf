using ProcRunner.Quantities;

namespace ProcRunner.ShopMath;

/// <summary>Play of a stem in its guide, on the diameter; below 0 it does not go in. All exact.</summary>
/// <param name="Smallest">Smallest bore - largest stem.</param>
/// <param name="Largest">Largest bore - smallest stem.</param>
public sealed record StemClearance(Exact Smallest, Exact Largest)
{
    /// <summary>
    /// From the extremes of both: clearance = bore - stem (ISO 286-1:2010). A smallest above its largest, or one not above 0, is a
    /// fault.
    /// </summary>
    /// <param name="boreSmallest">Smallest reading of the guide, above 0.</param>
    /// <param name="boreLargest">Largest reading of the guide.</param>
    /// <param name="stemSmallest">Smallest reading of the stem, above 0.</param>
    /// <param name="stemLargest">Largest reading of the stem.</param>
    public static ShopResult<StemClearance> Of(
        Exact boreSmallest,
        Exact boreLargest,
        Exact stemSmallest,
        Exact stemLargest
    ) =>
        (
            Allowed.Above0("bore smallest", boreSmallest)
            ?? Allowed.NotAbove("bore smallest", boreSmallest, "bore largest", boreLargest)
            ?? Allowed.Above0("stem smallest", stemSmallest)
            ?? Allowed.NotAbove("stem smallest", stemSmallest, "stem largest", stemLargest)
        )
            is { } fault
            ? fault
            : new StemClearance(boreSmallest - stemLargest, boreLargest - stemSmallest);

    /// <summary>From the shapes of both, each place against the other's worst.</summary>
    /// <param name="bore">Of the guide.</param>
    /// <param name="stem">Of the stem.</param>
    public static ShopResult<StemClearance> Of(RoundShape bore, RoundShape stem) =>
        Of(bore.Smallest, bore.Largest, stem.Smallest, stem.Largest);
}
