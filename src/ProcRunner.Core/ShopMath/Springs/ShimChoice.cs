using ProcRunner.Quantities;

namespace ProcRunner.ShopMath;

/// <summary>The shims that bring a spring to its height, from the thicknesses in the drawer. All exact.</summary>
/// <param name="Best">Nearest to the wanted height; of equals the fewest shims, then the higher spring. Null if none fits.</param>
/// <param name="All">Every stack that fits, the best first.</param>
/// <param name="Why">Why none fits; empty if one does.</param>
public sealed record ShimChoice(ShimPack? Best, IReadOnlyList<ShimPack> All, string Why)
{
    // More than these is no drawer of shims but a slip in a unit.
    private const int MostStacks = 100_000;
    private const int MostShims = 40;

    /// <summary>
    /// Tries every stack from the drawer, each thickness as often as needed. A stack fits if it is not over the stack limit and the
    /// height it leaves is within the tolerance of the wanted one, both ends included.
    /// </summary>
    /// <param name="measured">Installed height without shims, above 0.</param>
    /// <param name="wanted">Above 0.</param>
    /// <param name="tolerance">Either way, not below 0.</param>
    /// <param name="drawer">Thicknesses, each above 0; at least one.</param>
    /// <param name="stackLimit">Together no thicker than this, not below 0.</param>
    public static ShopResult<ShimChoice> Find(
        Exact measured,
        Exact wanted,
        Exact tolerance,
        IReadOnlyList<Exact> drawer,
        Exact stackLimit
    )
    {
        ShopFault? fault =
            Allowed.Above0("measured", measured)
            ?? Allowed.Above0("wanted", wanted)
            ?? Allowed.NotBelow0("tolerance", tolerance)
            ?? Allowed.NotBelow0("stack limit", stackLimit)
            ?? (drawer.Count == 0 ? new ShopFault("drawer", "nothing", "give the thicknesses there are") : null);
        fault ??= drawer.Select(one => Allowed.Above0("drawer", one)).FirstOrDefault(one => one is not null);
        if (fault is not null)
        {
            return fault;
        }

        Exact need = Spring.ShimFor(measured, wanted);
        Rational most = Min(stackLimit.Value, need.Value + tolerance.Value);
        List<Exact> thicknesses = [.. drawer.Distinct().OrderDescending()];
        List<IReadOnlyList<Exact>> stacks = [];
        if (
            most > thicknesses[^1].Value * Rational.FromInteger(MostShims)
            || !Collect(thicknesses, 0, [], most, stacks)
        )
        {
            return new ShopFault(
                "drawer",
                string.Join(", ", drawer.Select(Allowed.Show)),
                "there are too many stacks to try, or more than 40 of the thinnest fit: is a unit wrong?"
            );
        }

        List<ShimPack> fitting =
        [
            .. stacks
                .Select(shims => Stack(shims, measured))
                .Where(stack => stack.Height.CompareTo(wanted + tolerance) <= 0)
                .OrderBy(stack => (stack.Height - wanted).Value.Abs())
                .ThenBy(stack => stack.Shims.Count)
                .ThenByDescending(stack => stack.Height)
                .ThenByDescending(stack => stack.Shims.Count > 0 ? stack.Shims[0].Value : Rational.Zero),
        ];
        return fitting.Count > 0
            ? new ShimChoice(fitting[0], fitting, "")
            : new ShimChoice(null, [], Reason(need, tolerance, thicknesses, stackLimit));
    }

    // Every multiset whose sum is not over the most; false when there are too many.
    private static bool Collect(
        List<Exact> thicknesses,
        int from,
        IReadOnlyList<Exact> taken,
        Rational left,
        List<IReadOnlyList<Exact>> stacks
    )
    {
        if (left.Sign < 0)
        {
            return true;
        }

        stacks.Add(taken);
        bool few = stacks.Count <= MostStacks;
        for (int i = from; few && i < thicknesses.Count; i++)
        {
            Rational rest = left - thicknesses[i].Value;
            few = rest.Sign < 0 || Collect(thicknesses, i, [.. taken, thicknesses[i]], rest, stacks);
        }

        return few;
    }

    private static ShimPack Stack(IReadOnlyList<Exact> shims, Exact measured)
    {
        Exact thickness = shims.Aggregate(measured - measured, (sum, one) => sum + one);
        return new ShimPack(shims, thickness, measured - thickness);
    }

    private static string Reason(Exact need, Exact tolerance, List<Exact> thicknesses, Exact stackLimit)
    {
        Exact least = need - tolerance;
        return (need + tolerance).Value.Sign < 0 ? $"the height is {Show(need)} too small already: no shim helps"
            : least.CompareTo(stackLimit) > 0
                ? $"{Show(need)} of shim is needed, over the stack limit of {Show(stackLimit)}"
            : $"no stack of {string.Join(", ", thicknesses.Select(Allowed.Show))} comes within {Show(tolerance)} of the {Show(need)} needed";
    }

    private static string Show(Exact value) => Allowed.Show(value with { Value = value.Value.Abs() });

    private static Rational Min(Rational left, Rational right) => left < right ? left : right;
}
