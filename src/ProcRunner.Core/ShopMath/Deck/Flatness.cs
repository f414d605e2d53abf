namespace ProcRunner.ShopMath;

/// <summary>How flat a surface is, by least squares and by the minimum zone (ISO 12781-1).</summary>
/// <param name="Plane">The least-squares plane.</param>
/// <param name="LeastSquaresMillimetres">Highest less lowest distance from it, along z; never below the minimum zone.</param>
/// <param name="HighestMillimetres">Above that plane.</param>
/// <param name="LowestMillimetres">Above that plane: below 0.</param>
/// <param name="RmsMillimetres">Root of the mean square distance.</param>
/// <param name="RawRangeMillimetres">Highest less lowest reading as set up: it holds the tilt of the set-up.</param>
/// <param name="Zone">The minimum zone.</param>
public sealed record Flatness(
    SurfacePlane Plane,
    double LeastSquaresMillimetres,
    double HighestMillimetres,
    double LowestMillimetres,
    double RmsMillimetres,
    double RawRangeMillimetres,
    MinimumZone Zone
)
{
    /// <summary>The least-squares flatness square to the plane.</summary>
    public double LeastSquaresNormalMillimetres => LeastSquaresMillimetres * Plane.ToNormal;

    /// <summary>
    /// Of points in mm (ISO 12781-1:2011, from memory). Fewer than 3, points in one line and a coordinate that is no finite number are a
    /// fault of <c>points</c>.
    /// </summary>
    /// <param name="points">At least 3 that don't lie in one line, in any order.</param>
    public static ShopResult<Flatness> Of(IReadOnlyList<SurfacePoint> points) =>
        SurfacePlane
            .LeastSquares(points)
            .Then(plane =>
                MinimumZone
                    .Of(points)
                    .Then<Flatness>(zone =>
                    {
                        double[] above = [.. points.Select(plane.Above)];
                        (double highest, double lowest) = (above.Max(), above.Min());
                        return new Flatness(
                            plane,
                            highest - lowest,
                            highest,
                            lowest,
                            Math.Sqrt(above.Average(one => one * one)),
                            points.Max(one => one.ZMillimetres) - points.Min(one => one.ZMillimetres),
                            zone
                        );
                    })
            );
}
