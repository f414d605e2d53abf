using ProcRunner.Quantities;

namespace ProcRunner.ShopMath;

/// <summary>What a deck may still lose.</summary>
/// <param name="Limits">Each limit that was given with the cut it leaves; the first of the least binds.</param>
public sealed record DeckStock(IReadOnlyList<DeckLimit> Limits)
{
    /// <summary>The name of the limit by thickness.</summary>
    public const string Thickness = "thickness";

    /// <summary>The name of the limit by what head and block have lost.</summary>
    public const string Budget = "budget of head and block";

    /// <summary>The name of the maker's limit of one cut.</summary>
    public const string OwnLimit = "own limit";

    /// <summary>The name of the limit by the shallowest valve.</summary>
    public const string Recession = "recession";

    /// <summary>The name of the limit by what stands out of the deck.</summary>
    public const string Protrusion = "protrusion";

    /// <summary>The limit that binds.</summary>
    public DeckLimit Binding { get; } =
        Limits.Aggregate((least, one) => one.Cut.CompareTo(least.Cut) < 0 ? one : least);

    /// <summary>The cut allowed: the least of what the limits leave; below 0 a limit is passed already.</summary>
    public Exact Allowed => Binding.Cut;

    /// <summary>
    /// From limits, each optional but one at least. Several limits, the smallest wins. A cut square to the deck takes its own
    /// depth off thickness and recession and adds it to what stands out, whatever the guides' angle.
    /// </summary>
    /// <param name="thickness">thickness - minimum: least measured, least allowed.</param>
    /// <param name="budget">budget - lost: what head and block may lose together, what both have lost before.</param>
    /// <param name="ownLimit">The maker's limit of one cut.</param>
    /// <param name="recession">recession - low: the shallowest valve, the least recession allowed.</param>
    /// <param name="protrusion">high - protrusion: the most allowed, what stands out furthest.</param>
    public static ShopResult<DeckStock> Of(
        Exact? thickness,
        Exact? budget,
        Exact? ownLimit,
        Exact? recession,
        Exact? protrusion
    )
    {
        List<DeckLimit> limits = [];
        foreach (
            (string name, Exact? cut) in (ReadOnlySpan<(string, Exact?)>)
                [
                    (Thickness, thickness),
                    (Budget, budget),
                    (OwnLimit, ownLimit),
                    (Recession, recession),
                    (Protrusion, protrusion),
                ]
        )
        {
            if (cut is { } left)
            {
                limits.Add(new DeckLimit(name, left));
            }
        }

        return limits.Count > 0
            ? new DeckStock(limits)
            : new ShopFault(
                "thickness",
                "nothing",
                "give at least one limit: minimum with thickness, budget, own-limit, recession-low with recession, or "
                    + "protrusion-high with protrusion"
            );
    }

    /// <summary>
    /// The cut that leaves no old surface: the range of readings over the plane the head is set up to, or the deepest pit or
    /// groove if that is deeper.
    /// </summary>
    /// <param name="readings">Heights over the set-up plane, lengths in any unit, at least 1; none is a fault.</param>
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

    /// <summary>Thickest less thinnest of thicknesses, by definition of the wedge; fewer than 2 are a fault.</summary>
    /// <param name="thicknesses">Lengths in any unit, at least 2.</param>
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
}
