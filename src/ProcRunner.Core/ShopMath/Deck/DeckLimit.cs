using ProcRunner.Quantities;

namespace ProcRunner.ShopMath;

/// <summary>A limit of a deck with the cut it leaves.</summary>
/// <param name="Name">In words.</param>
/// <param name="Cut">Below 0 the limit is passed already.</param>
public sealed record DeckLimit(string Name, Exact Cut);
