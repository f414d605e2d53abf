namespace ProcRunner.ShopMath;

/// <summary>
/// What the least vertical distance V of two planes, proved by linear programming, says of the distance square to them.
/// </summary>
/// <remarks>
/// Planes of another slope, d away from the slope s found, are V(d) apart along z, and V(d) / sqrt(1 + |s + d|^2) square to them.
/// V(d) is the largest difference over all pairs of points, so any pairs give a bound from below.
/// </remarks>
internal static class NormalProof
{
    /// <summary>
    /// The reach r, mm, of the points that hold the planes: V(d) is at least V + r |d|. The root grows no faster than |d|, so
    /// where r is no less than the normal distance, no other planes are closer.
    /// </summary>
    /// <remarks>
    /// r is the distance from 0 to the rim of the convex hull of all ways from a point above to one below, three or four.
    /// </remarks>
    public static double Reach(SurfacePoint[] points, int[] above, int[] below)
    {
        (double X, double Y)[] ways =
        [
            .. from up in above
            from down in below
            select (
                points[down].XMillimetres - points[up].XMillimetres,
                points[down].YMillimetres - points[up].YMillimetres
            ),
        ];
        double reach = double.PositiveInfinity;
        foreach ((double X, double Y) from in ways)
        {
            foreach ((double X, double Y) to in ways)
            {
                double length = Math.Sqrt(Math.Pow(to.X - from.X, 2) + Math.Pow(to.Y - from.Y, 2));
                if (length > 0 && ways.All(one => Left(from, to, one) >= -1e-12 * length * length))
                {
                    reach = Math.Min(reach, Left(from, to, (0, 0)) / length);
                }
            }
        }

        return double.IsFinite(reach) ? reach : 0;
    }

    /// <summary>
    /// A bound for any points: V(d) is also at least w |d| - V, w the least width of the points seen from above, for which the
    /// least altitude of three of them stands. The two bounds meet at |d| = 2 V / w, where the distance is least.
    /// </summary>
    /// <param name="vertical">V, mm.</param>
    /// <param name="plane">The slope found.</param>
    /// <param name="a">One of three points far apart.</param>
    /// <param name="b">Another.</param>
    /// <param name="c">The third.</param>
    public static double Bound(double vertical, SurfacePlane plane, SurfacePoint a, SurfacePoint b, SurfacePoint c)
    {
        double area = Math.Abs(
            Left((a.XMillimetres, a.YMillimetres), (b.XMillimetres, b.YMillimetres), (c.XMillimetres, c.YMillimetres))
        );
        double longest = Math.Max(Apart(a, b), Math.Max(Apart(b, c), Apart(c, a)));
        double slope = Math.Sqrt((plane.SlopeAlong * plane.SlopeAlong) + (plane.SlopeAcross * plane.SlopeAcross));
        double farthest = slope + (2 * vertical * longest / area);
        return vertical / Math.Sqrt(1 + (farthest * farthest));
    }

    private static double Apart(SurfacePoint a, SurfacePoint b) =>
        Math.Sqrt(Math.Pow(a.XMillimetres - b.XMillimetres, 2) + Math.Pow(a.YMillimetres - b.YMillimetres, 2));

    // Twice the area of a triangle; above 0 where the third point lies to the left of the way from the first to the second.
    private static double Left((double X, double Y) from, (double X, double Y) to, (double X, double Y) point) =>
        ((to.X - from.X) * (point.Y - from.Y)) - ((to.Y - from.Y) * (point.X - from.X));
}
