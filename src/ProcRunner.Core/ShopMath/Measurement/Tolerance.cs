using ProcRunner.Quantities;

namespace ProcRunner.ShopMath;

/// <summary>A specification zone; limits are inclusive and at least one is there. All three amounts of one kind.</summary>
public sealed record Tolerance
{
    private Tolerance(Exact? low, Exact? high) => (Low, High) = (low, high);

    /// <summary>Least allowed; null for none.</summary>
    public Exact? Low { get; }

    /// <summary>Most allowed; null for none.</summary>
    public Exact? High { get; }

    /// <summary>From its limits; a fault where both are missing or low is above high.</summary>
    /// <param name="low">Least allowed, in any unit; null for none.</param>
    /// <param name="high">Most allowed, of the same kind; null for none.</param>
    public static ShopResult<Tolerance> Of(Exact? low, Exact? high) =>
        low is null && high is null ? new ShopFault("low", "nothing", "give a low limit, a high limit, or both")
        : low is { } least
        && high is { } most
        && ShopMath.Allowed.NotAbove("low", least, "high limit", most) is { } fault
            ? fault
        : new Tolerance(low, high);

    /// <summary>Simple acceptance (ASME B89.7.3.1): whether a value lies in the zone.</summary>
    public bool Holds(Exact value) =>
        !(Low is { } low && value.CompareTo(low) < 0) && !(High is { } high && value.CompareTo(high) > 0);

    /// <summary>The zone made smaller by a guard band at each limit; null if nothing is left of it.</summary>
    /// <param name="band">0 or more.</param>
    public Tolerance? Guarded(Exact band) =>
        Of(Low is { } low ? low + band : null, High is { } high ? high - band : null)
            .TryGet(out Tolerance? inner, out _)
            ? inner
            : null;
}
