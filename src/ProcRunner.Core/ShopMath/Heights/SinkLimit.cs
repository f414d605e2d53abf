using ProcRunner.Quantities;

namespace ProcRunner.ShopMath;

/// <summary>A limit as far as a valve may still sink before it is reached.</summary>
/// <param name="Name">What is limited, in words.</param>
/// <param name="Left">Sink along the valve's axis that is left; below 0 the limit is passed already.</param>
public sealed record SinkLimit(string Name, Exact Left)
{
    /// <summary>The limit that binds: the first of those with the least left; null of none.</summary>
    /// <param name="limits">In the order in which equals are preferred.</param>
    public static SinkLimit? Binding(IReadOnlyList<SinkLimit> limits) =>
        limits.Count == 0 ? null : limits.Aggregate((least, one) => one.Left.CompareTo(least.Left) < 0 ? one : least);
}
