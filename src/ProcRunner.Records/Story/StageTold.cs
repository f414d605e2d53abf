namespace ProcRunner.Records.Story;

/// <summary>A stage as it was worked.</summary>
/// <param name="Name">Its name.</param>
/// <param name="People">Who made entries in it, in the order they came.</param>
/// <param name="First">Its first entry.</param>
/// <param name="Last">Its last entry.</param>
/// <param name="Marks">The marks under it.</param>
public sealed record StageTold(
    string Name,
    IReadOnlyList<string> People,
    Stamped First,
    Stamped Last,
    IReadOnlyList<MarkTold> Marks
);
