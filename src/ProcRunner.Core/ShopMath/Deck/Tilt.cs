namespace ProcRunner.ShopMath;

/// <summary>Turns a part so that a plane on it lies level.</summary>
internal readonly record struct Tilt(SurfacePlane Plane)
{
    // Below this the vertical and the normal distance are the same in a double.
    private const double Least = 1e-9;

    public bool IsNone => Math.Abs(Plane.SlopeAlong) < Least && Math.Abs(Plane.SlopeAcross) < Least;

    /// <summary>The points in axes of which the third is square to the plane.</summary>
    public SurfacePoint[] Level(SurfacePoint[] points)
    {
        (double a, double b) = (Plane.SlopeAlong, Plane.SlopeAcross);
        double normal = Plane.ToNormal;
        double along = Math.Sqrt(1 + (a * a));
        SurfacePoint[] level = new SurfacePoint[points.Length];
        for (int i = 0; i < points.Length; i++)
        {
            (double x, double y, double z) = points[i];
            double first = (x + (a * z)) / along;
            double third = (z - (a * x) - (b * y)) * normal;

            // The second axis is the third crossed with the first, (1, 0, a) / along.
            double second = normal / along * ((-a * b * x) + ((1 + (a * a)) * y) + (b * z));
            level[i] = new SurfacePoint(first, second, third);
        }

        return level;
    }
}
