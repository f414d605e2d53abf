using ProcRunner.Quantities;

namespace ProcRunner.ShopMath;

/// <summary>The shim for a wanted lash when the lash was felt with leaves: an interval stays an interval.</summary>
/// <param name="Thinnest">The thinnest shim that can't leave too much lash.</param>
/// <param name="Thickest">The thickest shim that can't leave too little lash.</param>
public sealed record LashShim(Exact Thinnest, Exact Thickest)
{
    /// <summary>
    /// Whether any shim is right for every lash in the interval; if not, a thinner trial shim is fitted and the lash felt
    /// again.
    /// </summary>
    public bool IsDecided => Thinnest.CompareTo(Thickest) <= 0;

    /// <summary>
    /// New shim = old shim + measured lash - wanted lash, at both ends: thinnest = old + refuses - wanted most, thickest =
    /// old + slides - wanted least.
    /// </summary>
    /// <param name="fitted">The shim in place, measured, above 0.</param>
    /// <param name="slides">The thickest leaf that slides in; the same as <paramref name="refuses"/> for a lash measured exactly.</param>
    /// <param name="refuses">The thinnest leaf that does not.</param>
    /// <param name="wantedLeast">Least lash allowed.</param>
    /// <param name="wantedMost">Most lash allowed.</param>
    public static ShopResult<LashShim> Of(
        Exact fitted,
        Exact slides,
        Exact refuses,
        Exact wantedLeast,
        Exact wantedMost
    ) =>
        (
            Allowed.Above0("fitted", fitted)
            ?? Allowed.NotBelow0("slides", slides)
            ?? Allowed.NotAbove("slides", slides, "leaf that refuses", refuses)
            ?? Allowed.NotAbove("wanted least", wantedLeast, "most lash wanted", wantedMost)
        )
            is { } fault
            ? fault
            : new LashShim(fitted + refuses - wantedMost, fitted + slides - wantedLeast);
}
