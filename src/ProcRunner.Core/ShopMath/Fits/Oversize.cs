using ProcRunner.Quantities;

namespace ProcRunner.ShopMath;

/// <summary>A part on offer and what it takes to fit it.</summary>
/// <param name="Part">Its diameter.</param>
/// <param name="TargetBore">The bore to cut for it.</param>
/// <param name="Cut">How much larger than now, on the diameter; 0 or more.</param>
public sealed record Oversize(Exact Part, Exact TargetBore, Exact Cut);
