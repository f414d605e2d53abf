using ProcRunner.Quantities;

namespace ProcRunner.ShopMath;

/// <summary>Springs inside each other under one retainer: loads and rates add up, and the first to go solid binds. All exact.</summary>
/// <param name="Rate">Together.</param>
/// <param name="Closed">Load with the valve closed.</param>
/// <param name="Open">Load at full lift.</param>
/// <param name="LeastMargin">What the one nearest to solid has left at full lift; null if heights or solid heights are not given.</param>
/// <param name="Nearest">Which one that is, counted from 1; 0 if unknown.</param>
public sealed record NestedSprings(Exact Rate, Exact Closed, Exact Open, Exact? LeastMargin, int Nearest)
{
    /// <summary>Springs together. Lists of unequal length, a rate or height not above 0, or no spring at all is a fault.</summary>
    /// <param name="loads">Of each with the valve closed.</param>
    /// <param name="rates">Of each, above 0.</param>
    /// <param name="lift">Full lift, not below 0.</param>
    /// <param name="heights">Installed height of each; may be empty.</param>
    /// <param name="solids">Solid height of each; may be empty.</param>
    public static ShopResult<NestedSprings> Of(
        IReadOnlyList<Exact> loads,
        IReadOnlyList<Exact> rates,
        Exact lift,
        IReadOnlyList<Exact> heights,
        IReadOnlyList<Exact> solids
    )
    {
        ShopFault? fault =
            Counted("rates", rates.Count, loads.Count)
            ?? Counted("loads", loads.Count, Math.Max(loads.Count, 1))
            ?? (heights.Count + solids.Count == 0 ? null : Counted("heights", heights.Count, loads.Count))
            ?? (heights.Count + solids.Count == 0 ? null : Counted("solids", solids.Count, loads.Count))
            ?? Allowed.NotBelow0("lift", lift);
        fault ??= rates.Select(one => Allowed.Above0("rates", one)).FirstOrDefault(one => one is not null);
        if (fault is not null)
        {
            return fault;
        }

        Exact rate = rates.Aggregate((sum, one) => sum + one);
        Exact closed = loads.Aggregate((sum, one) => sum + one);
        List<Exact> margins = [];
        foreach ((Exact height, Exact solid) in heights.Zip(solids))
        {
            if (!Spring.CoilBindMargin(height, lift, solid).TryGet(out Exact margin, out ShopFault? wrong))
            {
                return wrong with { Argument = wrong.Argument + "s" };
            }

            margins.Add(margin);
        }

        return new NestedSprings(
            rate,
            closed,
            closed + (rate * lift),
            margins.Count > 0 ? margins.Min() : null,
            margins.Count > 0 ? margins.IndexOf(margins.Min()) + 1 : 0
        );
    }

    private static ShopFault? Counted(string argument, int count, int wanted) =>
        count == wanted
            ? null
            : new ShopFault(
                argument,
                FormattableString.Invariant($"{count} values"),
                FormattableString.Invariant($"give {wanted}, one for each spring")
            );
}
