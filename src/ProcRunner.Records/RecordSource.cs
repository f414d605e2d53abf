using ProcRunner.Runs;
using ProcRunner.Shop;

namespace ProcRunner.Records;

/// <summary>What a build record is made from, and nothing else.</summary>
/// <param name="State">The run, folded to its last entry.</param>
/// <param name="Shop">The shop book as the last entry knew it.</param>
/// <param name="Entries">Every entry, from the first.</param>
/// <param name="IsDemo">True for the demo shop, whose PINs everybody knows.</param>
/// <param name="Earlier">Of a head that came back the earlier job, as it stood when this one was opened; null where there is none, or
/// its trail doesn't hold.</param>
public sealed record RecordSource(
    RunState State,
    ShopState Shop,
    IReadOnlyList<RecordEntry> Entries,
    bool IsDemo,
    RunState? Earlier = null
);
