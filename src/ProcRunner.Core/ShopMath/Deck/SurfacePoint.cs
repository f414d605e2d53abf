namespace ProcRunner.ShopMath;

/// <summary>A height read at a place of a surface, mm.</summary>
/// <param name="XMillimetres">Along.</param>
/// <param name="YMillimetres">Across.</param>
/// <param name="ZMillimetres">The height read.</param>
public readonly record struct SurfacePoint(double XMillimetres, double YMillimetres, double ZMillimetres);
