using ProcRunner.Quantities;

namespace ProcRunner.ShopMath;

/// <summary>Shims on each other under one spring.</summary>
/// <param name="Shims">Thickest first; none at all is a stack too.</param>
/// <param name="Thickness">Together.</param>
/// <param name="Height">Installed height with them.</param>
public sealed record ShimPack(IReadOnlyList<Exact> Shims, Exact Thickness, Exact Height);
