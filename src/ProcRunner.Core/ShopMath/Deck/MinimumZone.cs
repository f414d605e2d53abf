namespace ProcRunner.ShopMath;

/// <summary>
/// The two parallel planes closest together that enclose all points (ISO 12781-1 minimum zone reference planes).
/// </summary>
/// <param name="VerticalMillimetres">Least distance along z, over all tilts.</param>
/// <param name="NormalMillimetres">
/// Distance square to the planes, the least that was found; it does not depend on how the part was set up.
/// </param>
/// <param name="NormalAtLeastMillimetres">
/// Proved: no two planes are closer together. The same as <paramref name="NormalMillimetres"/> where the points that hold the
/// planes stand farther apart than these, as on a deck; where points lie in one line it may be smaller.
/// </param>
/// <param name="Plane">Midway between the planes of the vertical distance.</param>
/// <param name="TouchingAbove">Indices of points that hold the upper plane.</param>
/// <param name="TouchingBelow">Indices of points that hold the lower plane.</param>
/// <param name="IsExact">
/// Whether the vertical distance is proved the least; if not, rounding stopped the search and it is an upper bound.
/// </param>
public sealed record MinimumZone(
    double VerticalMillimetres,
    double NormalMillimetres,
    double NormalAtLeastMillimetres,
    SurfacePlane Plane,
    IReadOnlyList<int> TouchingAbove,
    IReadOnlyList<int> TouchingBelow,
    bool IsExact
)
{
    // Each turn squares the error left; a deck is done after one or two.
    private const int MostTurns = 20;

    /// <summary><c>3+1</c> or <c>2+2</c>, the larger first; fewer where points are lined up.</summary>
    public string Contact =>
        FormattableString.Invariant(
            $"{Math.Max(TouchingAbove.Count, TouchingBelow.Count)}+{Math.Min(TouchingAbove.Count, TouchingBelow.Count)}"
        );

    /// <summary>Exact but for rounding of doubles: the planes are found by linear programming, not by trial.</summary>
    /// <param name="points">At least 3, not in one line.</param>
    public static ShopResult<MinimumZone> Of(IReadOnlyList<SurfacePoint> points)
    {
        SurfacePoint[] all = [.. points];
        return SurfacePlane.LeastSquares(all).Then(gaussian => Of(all, gaussian));
    }

    private static ShopResult<MinimumZone> Of(SurfacePoint[] points, SurfacePlane gaussian)
    {
        (MinimumZone zone, Tilt tilt) = Vertical(points, gaussian);
        (double normal, double atLeast) = (zone.NormalMillimetres, zone.NormalAtLeastMillimetres);
        SurfacePoint[] turned = points;
        for (int turn = 0; turn < MostTurns && atLeast < normal && !tilt.IsNone; turn++)
        {
            turned = tilt.Level(turned);
            if (!SurfacePlane.LeastSquares(turned).TryGet(out SurfacePlane plane, out _))
            {
                break;
            }

            (MinimumZone next, tilt) = Vertical(turned, plane);
            atLeast = Math.Max(atLeast, next.NormalAtLeastMillimetres);
            if (!(next.NormalMillimetres < normal))
            {
                break;
            }

            normal = next.NormalMillimetres;
        }

        return zone with
        {
            NormalMillimetres = normal,
            NormalAtLeastMillimetres = Math.Min(atLeast, normal),
        };
    }

    private static (MinimumZone Zone, Tilt Tilt) Vertical(SurfacePoint[] points, SurfacePlane gaussian)
    {
        double x0 = points.Average(one => one.XMillimetres);
        double y0 = points.Average(one => one.YMillimetres);
        double across = points.Max(one => Math.Max(Math.Abs(one.XMillimetres - x0), Math.Abs(one.YMillimetres - y0)));
        double[] x = [.. points.Select(one => (one.XMillimetres - x0) / across)];
        double[] y = [.. points.Select(one => (one.YMillimetres - y0) / across)];
        double[] above = [.. points.Select(gaussian.Above)];
        double range = above.Max() - above.Min();
        double noise = 1e-15 * points.Max(one => Math.Abs(one.ZMillimetres));
        if (range <= noise)
        {
            return (new MinimumZone(range, range, range, gaussian, [], [], true), new Tilt(gaussian));
        }

        ZoneSimplex simplex = new(x, y, [.. above.Select(one => one / range)]);
        (int first, int second, int third) = WideTriangle(x, y);
        simplex.Solve(first, second, third);
        double along = gaussian.SlopeAlong + (simplex.Slopes.Along * range / across);
        double acrossSlope = gaussian.SlopeAcross + (simplex.Slopes.Across * range / across);
        SurfacePlane level = new(along, acrossSlope, 0);
        double high = double.NegativeInfinity;
        double low = double.PositiveInfinity;
        foreach (SurfacePoint point in points)
        {
            double height = level.Above(point);
            high = Math.Max(high, height);
            low = Math.Min(low, height);
        }

        SurfacePlane middle = level with { HeightMillimetres = (high + low) / 2 };
        int[] touchingAbove = [.. simplex.Touching.Where(one => one.Above).Select(one => one.Point)];
        int[] touchingBelow = [.. simplex.Touching.Where(one => !one.Above).Select(one => one.Point)];
        double normal = (high - low) * middle.ToNormal;
        double atLeast =
            !simplex.IsOptimal ? 0
            : NormalProof.Reach(points, touchingAbove, touchingBelow) >= normal ? normal
            : NormalProof.Bound(high - low, middle, points[first], points[second], points[third]);
        MinimumZone zone = new(high - low, normal, atLeast, middle, touchingAbove, touchingBelow, simplex.IsOptimal);
        return (zone, new Tilt(middle));
    }

    // Three points far apart: the farthest from the middle, the farthest from it, the farthest from the line of both.
    private static (int First, int Second, int Third) WideTriangle(double[] x, double[] y)
    {
        int first = Farthest(x.Length, i => (x[i] * x[i]) + (y[i] * y[i]));
        int second = Farthest(x.Length, i => Math.Pow(x[i] - x[first], 2) + Math.Pow(y[i] - y[first], 2));
        double dx = x[second] - x[first];
        double dy = y[second] - y[first];
        int third = Farthest(x.Length, i => Math.Abs((dx * (y[i] - y[first])) - (dy * (x[i] - x[first]))));
        return (first, second, third);
    }

    private static int Farthest(int count, Func<int, double> measure)
    {
        int farthest = 0;
        double most = double.NegativeInfinity;
        for (int i = 0; i < count; i++)
        {
            double value = measure(i);
            if (value > most)
            {
                most = value;
                farthest = i;
            }
        }

        return farthest;
    }
}
