namespace ProcRunner.ShopMath;

/// <summary>
/// Factors of control charts for subgroups of 2 to 10, as textbooks print them (three places; d2 and d3 are moments of the
/// range of normal values). Rounded as printed, so that limits agree with published ones.
/// </summary>
/// <param name="Size">Readings in a subgroup.</param>
/// <param name="A2">Limits of the mean from the mean range.</param>
/// <param name="A3">Limits of the mean from the mean standard deviation.</param>
/// <param name="C4">Mean of the standard deviation in sigmas.</param>
/// <param name="D2">Mean of the range in sigmas (d2).</param>
/// <param name="RangeSpread">Standard deviation of the range in sigmas (d3).</param>
/// <param name="RangeLow">Lower limit of the range (D3).</param>
/// <param name="RangeHigh">Upper limit of the range (D4).</param>
public sealed record ChartConstants(
    int Size,
    double A2,
    double A3,
    double C4,
    double D2,
    double RangeSpread,
    double RangeLow,
    double RangeHigh
)
{
    /// <summary>All of them.</summary>
    public static IReadOnlyList<ChartConstants> All { get; } =
    [
        new(2, 1.880, 2.659, 0.7979, 1.128, 0.853, 0, 3.267),
        new(3, 1.023, 1.954, 0.8862, 1.693, 0.888, 0, 2.575),
        new(4, 0.729, 1.628, 0.9213, 2.059, 0.880, 0, 2.282),
        new(5, 0.577, 1.427, 0.9400, 2.326, 0.864, 0, 2.115),
        new(6, 0.483, 1.287, 0.9515, 2.534, 0.848, 0, 2.004),
        new(7, 0.419, 1.182, 0.9594, 2.704, 0.833, 0.076, 1.924),
        new(8, 0.373, 1.099, 0.9650, 2.847, 0.820, 0.136, 1.864),
        new(9, 0.337, 1.032, 0.9693, 2.970, 0.808, 0.184, 1.816),
        new(10, 0.308, 0.975, 0.9727, 3.078, 0.797, 0.223, 1.777),
    ];

    /// <summary>Of a subgroup size; a size without factors is a fault.</summary>
    /// <param name="size">Readings in a subgroup, a whole number from 2 to 10.</param>
    public static ShopResult<ChartConstants> Of(double size) =>
        All.FirstOrDefault(one => one.Size == size) is { } found
            ? found
            : new ShopFault("size", Allowed.Show(size, ""), "factors are known for subgroups of 2 to 10");
}
