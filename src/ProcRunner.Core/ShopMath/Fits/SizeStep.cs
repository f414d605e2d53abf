using ProcRunner.Quantities;

namespace ProcRunner.ShopMath;

/// <summary>Steps of nominal sizes in ISO 286-1: each over the one before, up to and including its own.</summary>
internal static class SizeStep
{
    /// <summary>The index of the step that a size belongs to.</summary>
    public static ShopResult<int> Find(Exact nominal, IReadOnlyList<int> upToMillimetres)
    {
        Rational millimetres = nominal.In(Units.Millimetre);
        for (int i = 0; millimetres.Sign > 0 && i < upToMillimetres.Count; i++)
        {
            if (millimetres <= Rational.FromInteger(upToMillimetres[i]))
            {
                return i;
            }
        }

        return new ShopFault(
            "nominal",
            Allowed.Show(nominal),
            FormattableString.Invariant($"the table holds sizes over 0 up to and including {upToMillimetres[^1]} mm")
        );
    }
}
