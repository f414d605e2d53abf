namespace ProcRunner.ShopMath;

/// <summary>How straight a line of readings is; all heights along the reading's direction, mm.</summary>
/// <param name="SlopeLeastSquares">Of the least-squares line, mm per mm.</param>
/// <param name="LeastSquaresMillimetres">Highest less lowest distance from it.</param>
/// <param name="MinimumZoneMillimetres">Least distance between two parallel lines that enclose the readings.</param>
/// <param name="EndPointMillimetres">Highest less lowest distance from the line through the first and last place.</param>
public sealed record Straightness(
    double SlopeLeastSquares,
    double LeastSquaresMillimetres,
    double MinimumZoneMillimetres,
    double EndPointMillimetres
)
{
    /// <summary>
    /// Of readings at places along a line, in any order; at least 2, no place twice. The minimum zone is exact: one of its lines
    /// runs along an edge of the readings' convex hull (ISO 12780-1, from memory). A fault names <c>x</c> or <c>y</c>.
    /// </summary>
    /// <param name="placesMillimetres">Along the line, in any order, at least 2, no place twice.</param>
    /// <param name="heightsMillimetres">Read there, one for each place.</param>
    public static ShopResult<Straightness> Of(
        IReadOnlyList<double> placesMillimetres,
        IReadOnlyList<double> heightsMillimetres
    )
    {
        if (Unusable(placesMillimetres, heightsMillimetres) is { } fault)
        {
            return fault;
        }

        (double X, double Z)[] points = [.. placesMillimetres.Zip(heightsMillimetres).OrderBy(one => one.First)];
        double x = points.Average(one => one.X);
        double z = points.Average(one => one.Z);
        double slope = points.Sum(one => (one.X - x) * (one.Z - z)) / points.Sum(one => (one.X - x) * (one.X - x));
        double ends = (points[^1].Z - points[0].Z) / (points[^1].X - points[0].X);
        IEnumerable<double> edges = HullSlopes(points, 1).Concat(HullSlopes(points, -1));
        return new Straightness(slope, Range(points, slope), edges.Min(one => Range(points, one)), Range(points, ends));
    }

    private static ShopFault? Unusable(IReadOnlyList<double> places, IReadOnlyList<double> heights) =>
        places.Count != heights.Count
            ? new ShopFault(
                "y",
                Count(heights),
                FormattableString.Invariant($"give one for each of {places.Count} places")
            )
        : places.Count < 2 ? new ShopFault("x", Count(places), "at least 2 places are needed")
        : (Allowed.Finite("x", places, "mm") ?? Allowed.Finite("y", heights, "mm")) is { } fault ? fault
        : places.Distinct().Count() < places.Count ? new ShopFault("x", "a place twice", "give each place once")
        : null;

    private static string Count(IReadOnlyList<double> all) => FormattableString.Invariant($"{all.Count} values");

    private static double Range((double X, double Z)[] points, double slope) =>
        points.Max(one => one.Z - (slope * one.X)) - points.Min(one => one.Z - (slope * one.X));

    // Slopes of the upper (side 1) or lower (side -1) hull of points in order of x, by Andrew's monotone chain.
    private static List<double> HullSlopes((double X, double Z)[] points, int side)
    {
        List<(double X, double Z)> hull = [];
        foreach ((double X, double Z) point in points)
        {
            while (hull.Count > 1 && side * Turn(hull[^2], hull[^1], point) >= 0)
            {
                hull.RemoveAt(hull.Count - 1);
            }

            hull.Add(point);
        }

        return [.. hull.Zip(hull.Skip(1), (from, to) => (to.Z - from.Z) / (to.X - from.X))];
    }

    private static double Turn((double X, double Z) a, (double X, double Z) b, (double X, double Z) c) =>
        ((b.X - a.X) * (c.Z - a.Z)) - ((b.Z - a.Z) * (c.X - a.X));
}
