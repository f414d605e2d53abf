using ProcRunner.Quantities;

namespace ProcRunner.ShopMath;

/// <summary>One diameter of a bore or stem.</summary>
/// <param name="Depth">Where along it, in the shop's words: <c>top</c>.</param>
/// <param name="Direction">Which way across: <c>along the head</c>.</param>
/// <param name="Diameter">As read, above 0.</param>
public sealed record DiameterReading(string Depth, string Direction, Exact Diameter);
