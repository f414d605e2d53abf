using System.Collections.Immutable;
using ProcRunner.Trail;

namespace ProcRunner.Shop;

/// <summary>A job as the shop book knows it.</summary>
/// <param name="Id">The job's id.</param>
/// <param name="Stamp">Its stamp.</param>
/// <param name="Texts">Digests of its pinned texts.</param>
/// <param name="Anchors">How far its trail had got, each time that was written down; rising.</param>
/// <param name="IsClosedOut">True once nothing may follow in its trail.</param>
public sealed record ShopJob(
    string Id,
    string Stamp,
    ImmutableArray<Digest> Texts,
    ImmutableList<JobAnchor> Anchors,
    bool IsClosedOut
)
{
    /// <summary>The anchor that reaches furthest, null when there is none.</summary>
    public JobAnchor? LastAnchor => Anchors.IsEmpty ? null : Anchors[^1];
}
