namespace ProcRunner.Records.Story;

/// <summary>Something moved, and what rested on it no longer held.</summary>
/// <param name="Cause">What moved.</param>
/// <param name="Items">What no longer held, each with its positions.</param>
/// <param name="NotAgain">What of it was not taken again: it tells how the head came.</param>
/// <param name="StillOpen">What of it is still to be taken again.</param>
/// <param name="NotWanted">What of it nothing asked for any more: it wasn't taken again, and didn't have to be.</param>
/// <param name="By">Every entry in which that happened.</param>
public sealed record Renewal(
    string Cause,
    IReadOnlyList<string> Items,
    IReadOnlyList<string> NotAgain,
    IReadOnlyList<string> StillOpen,
    IReadOnlyList<string> NotWanted,
    IReadOnlyList<Stamped> By
);
