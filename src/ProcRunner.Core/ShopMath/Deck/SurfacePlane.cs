namespace ProcRunner.ShopMath;

/// <summary>The plane z = slope along x + slope across y + height, mm.</summary>
/// <param name="SlopeAlong">mm per mm.</param>
/// <param name="SlopeAcross">mm per mm.</param>
/// <param name="HeightMillimetres">At x = y = 0.</param>
public readonly record struct SurfacePlane(double SlopeAlong, double SlopeAcross, double HeightMillimetres)
{
    /// <summary>What a vertical distance is multiplied with to be square to the plane: 1 / sqrt(1 + slopes squared).</summary>
    public double ToNormal => 1 / Math.Sqrt(1 + (SlopeAlong * SlopeAlong) + (SlopeAcross * SlopeAcross));

    /// <summary>Height of a point above the plane, along z.</summary>
    public double Above(SurfacePoint point) =>
        point.ZMillimetres - (SlopeAlong * point.XMillimetres) - (SlopeAcross * point.YMillimetres) - HeightMillimetres;

    /// <summary>
    /// The plane with the least sum of squared vertical distances (Gaussian plane); its normal equations solved about the
    /// points' middle. Fewer than 3 points, points in one line and a coordinate that is no finite number are a fault of
    /// <c>points</c>.
    /// </summary>
    /// <param name="points">In mm, at least 3 that don't lie in one line.</param>
    public static ShopResult<SurfacePlane> LeastSquares(IReadOnlyList<SurfacePoint> points)
    {
        if (Unusable(points) is { } fault)
        {
            return fault;
        }

        double x = points.Average(one => one.XMillimetres);
        double y = points.Average(one => one.YMillimetres);
        double z = points.Average(one => one.ZMillimetres);
        double xx = 0;
        double xy = 0;
        double yy = 0;
        double xz = 0;
        double yz = 0;
        foreach (SurfacePoint point in points)
        {
            double dx = point.XMillimetres - x;
            double dy = point.YMillimetres - y;
            double dz = point.ZMillimetres - z;
            xx += dx * dx;
            xy += dx * dy;
            yy += dy * dy;
            xz += dx * dz;
            yz += dy * dz;
        }

        double determinant = (xx * yy) - (xy * xy);
        if (!double.IsFinite(determinant))
        {
            return new ShopFault(
                "points",
                FormattableString.Invariant($"{points.Count}"),
                "the places are too far apart to be reckoned with"
            );
        }

        if (determinant <= Collinear * xx * yy || xx == 0 || yy == 0)
        {
            return new ShopFault(
                "points",
                FormattableString.Invariant($"a line of {points.Count} points"),
                "a plane needs points that don't lie in one line; use straightness for a line"
            );
        }

        double along = ((xz * yy) - (yz * xy)) / determinant;
        double across = ((yz * xx) - (xz * xy)) / determinant;
        return new SurfacePlane(along, across, z - (along * x) - (across * y));
    }

    // Of the determinant of points that do span a plane, a square of side 1 has 1 and a strip of 1:1000000 askew has 1e-12.
    private const double Collinear = 1e-12;

    private static ShopFault? Unusable(IReadOnlyList<SurfacePoint> points) =>
        points.Count < 3
            ? new ShopFault("points", FormattableString.Invariant($"{points.Count}"), "at least 3 points are needed")
        : points.All(one =>
            double.IsFinite(one.XMillimetres) && double.IsFinite(one.YMillimetres) && double.IsFinite(one.ZMillimetres)
        )
            ? null
        : new ShopFault("points", "a coordinate that is no finite number", "coordinates are finite numbers");
}
