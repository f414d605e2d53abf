using ProcRunner.Quantities;

namespace ProcRunner.ShopMath;

/// <summary>What a deck may still lose.</summary>
/// <param name="Limits">Each limit that was given with the cut it leaves; the first of the least binds.</param>
public sealed record DeckStock(IReadOnlyList<DeckLimit> Limits)
{
    /// <summary>The limit that binds.</summary>
    public DeckLimit Binding { get; } =
        Limits.Aggregate((least, one) => one.Cut.CompareTo(least.Cut) < 0 ? one : least);

    /// <summary>The cut allowed: the least of what the limits leave; below 0 a limit is passed already.</summary>
    public Exact Allowed => Binding.Cut;

    /// <summary>
    /// From limits, each optional but one at least: thickness - minimum; budget of head and block - lost by the block - lost by
    /// the head; the maker's own limit. Several limits, the smallest wins.
    /// </summary>
    /// <param name="thickness">Least thickness measured; given with <paramref name="minimum"/>.</param>
    /// <param name="minimum">Least allowed.</param>
    /// <param name="budget">What head and block may lose together.</param>
    /// <param name="blockLost">Lost by the block; 0 or more.</param>
    /// <param name="headLost">Lost by the head before; 0 or more.</param>
    /// <param name="ownLimit">The maker's limit of one cut.</param>
    public static ShopResult<DeckStock> Of(
        Exact? thickness,
        Exact? minimum,
        Exact? budget,
        Exact blockLost,
        Exact headLost,
        Exact? ownLimit
    )
    {
        if (
            (
                ShopMath.Allowed.NotBelow0("block lost", blockLost)
                ?? ShopMath.Allowed.NotBelow0("head lost", headLost)
                ?? Together(thickness, minimum)
            ) is
            { } fault
        )
        {
            return fault;
        }

        List<DeckLimit> limits = [];
        if (thickness is { } thick && minimum is { } least)
        {
            limits.Add(new DeckLimit("thickness", thick - least));
        }

        if (budget is { } together)
        {
            limits.Add(new DeckLimit("budget of head and block", together - blockLost - headLost));
        }

        if (ownLimit is { } own)
        {
            limits.Add(new DeckLimit("own limit", own));
        }

        return limits.Count > 0
            ? new DeckStock(limits)
            : new ShopFault(
                "thickness",
                "nothing",
                "give at least one limit: minimum with thickness, budget, or own-limit"
            );
    }

    /// <summary>
    /// The cut that leaves no old surface: the range of readings over the plane the head is set up to, or the deepest pit or
    /// groove if that is deeper.
    /// </summary>
    /// <param name="readings">Heights over the set-up plane, at least 1.</param>
    /// <param name="pits">Depths of pits and grooves below the highest reading; none is fine.</param>
    public static ShopResult<Exact> CutNeeded(IReadOnlyList<Exact> readings, IReadOnlyList<Exact> pits)
    {
        if (readings.Count == 0)
        {
            return new ShopFault("readings", "nothing", "at least 1 reading is needed");
        }

        Exact range = Most(readings) - readings.Aggregate((least, one) => one.CompareTo(least) < 0 ? one : least);
        return Most([range, .. pits]);
    }

    /// <summary>Thickest less thinnest of thicknesses.</summary>
    public static ShopResult<Exact> Wedge(IReadOnlyList<Exact> thicknesses) =>
        thicknesses.Count < 2
            ? new ShopFault(
                "thickness",
                FormattableString.Invariant($"{thicknesses.Count} values"),
                "at least 2 thicknesses are needed"
            )
            : CutNeeded(thicknesses, []);

    private static Exact Most(IReadOnlyList<Exact> all) =>
        all.Aggregate((most, one) => one.CompareTo(most) > 0 ? one : most);

    private static ShopFault? Together(Exact? thickness, Exact? minimum) =>
        thickness is null == minimum is null
            ? null
            : new ShopFault(
                thickness is null ? "thickness" : "minimum",
                "nothing",
                "thickness and minimum are given together"
            );
}
