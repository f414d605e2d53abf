using ProcRunner.Quantities;

namespace ProcRunner.ShopMath;

/// <summary>What diameters read at depths and directions say of a bore or a stem. All exact; definitions are common practice.</summary>
/// <remarks>
/// A two-point gauge sees no three-lobed bore: such a bore is out of round by more than is worked out here. The folder: this is
/// the shape of one part, <see cref="StemClearance"/> the play between two, <see cref="RockReading"/> the play from a rocked dial.
/// </remarks>
/// <param name="Largest">Of all readings.</param>
/// <param name="Smallest">Of all readings.</param>
/// <param name="Mean">Of all readings.</param>
/// <param name="Taper">The most that readings in one direction differ along the part.</param>
/// <param name="OutOfRound">The most that readings at one depth differ.</param>
/// <param name="LargestAt">Where the largest reading was taken; of equals the first.</param>
/// <param name="SmallestAt">Where the smallest reading was taken; of equals the first.</param>
public sealed record RoundShape(
    Exact Largest,
    Exact Smallest,
    Exact Mean,
    Exact Taper,
    Exact OutOfRound,
    DiameterReading LargestAt,
    DiameterReading SmallestAt
)
{
    /// <summary>
    /// The shape. Too few readings for it are a fault: some depth needs two directions, some direction two depths. So are two readings
    /// of one place, and a diameter not above 0.
    /// </summary>
    /// <param name="readings">In any order and any unit.</param>
    public static ShopResult<RoundShape> Of(IReadOnlyList<DiameterReading> readings)
    {
        if (Check(readings) is { } fault)
        {
            return fault;
        }

        DiameterReading largest = readings.MaxBy(one => one.Diameter)!;
        DiameterReading smallest = readings.MinBy(one => one.Diameter)!;
        Exact sum = readings.Select(one => one.Diameter).Aggregate((total, one) => total + one);
        return new RoundShape(
            largest.Diameter,
            smallest.Diameter,
            sum with
            {
                Value = sum.Value / Rational.FromInteger(readings.Count),
            },
            MostSpread(readings, one => one.Direction),
            MostSpread(readings, one => one.Depth),
            largest,
            smallest
        );
    }

    private static ShopFault? Check(IReadOnlyList<DiameterReading> readings)
    {
        string count = FormattableString.Invariant($"{readings.Count} readings");
        if (!readings.GroupBy(one => one.Direction).Any(all => all.Count() > 1))
        {
            return new ShopFault("readings", count, "taper needs two depths or more in one direction");
        }

        if (!readings.GroupBy(one => one.Depth).Any(all => all.Count() > 1))
        {
            return new ShopFault("readings", count, "out-of-round needs two directions or more at one depth");
        }

        if (readings.GroupBy(one => (one.Depth, one.Direction)).FirstOrDefault(all => all.Count() > 1) is { } twice)
        {
            return new ShopFault(
                "readings",
                $"{twice.Count()} at {twice.Key.Depth}, {twice.Key.Direction}",
                "give one for each place"
            );
        }

        return readings.Select(one => Allowed.Above0(one.Depth, one.Diameter)).FirstOrDefault(one => one is not null);
    }

    private static Exact MostSpread(IEnumerable<DiameterReading> readings, Func<DiameterReading, string> by) =>
        readings.GroupBy(by).Select(all => all.Max(one => one.Diameter) - all.Min(one => one.Diameter)).Max();
}
