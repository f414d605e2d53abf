namespace ProcRunner.Procedures;

/// <summary>One disposition that a step allows.</summary>
/// <param name="Text">The words that choose it.</param>
/// <param name="Kind">What it does.</param>
/// <param name="BackTo">Index of the step the work goes back to; null for kinds that stay.</param>
/// <param name="Replaces">The part that is replaced, or null.</param>
/// <param name="Decides">Decisions it changes: subject and choice.</param>
/// <param name="Moves">What it moves besides.</param>
public sealed record WayOn(
    string Text,
    WayKind Kind,
    int? BackTo,
    string? Replaces,
    IReadOnlyList<KeyValuePair<string, string>> Decides,
    IReadOnlyList<Move> Moves
);
