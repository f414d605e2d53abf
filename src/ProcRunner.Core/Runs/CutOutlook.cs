using ProcRunner.Quantities;
using ProcRunner.ShopMath;

namespace ProcRunner.Runs;

/// <summary>What a cut works to at one moment.</summary>
/// <param name="Maths">The readout's arithmetic for this position.</param>
/// <param name="Limits">The window of the reading that ends the cut.</param>
/// <param name="Target">The number to work to; null when nothing is left to cut.</param>
/// <param name="Allowance">How far the approach stops short, as a length.</param>
internal sealed record CutOutlook(ReadoutMaths Maths, Limits Limits, CutTarget? Target, Exact Allowance);
