using ProcRunner.Problems;

namespace ProcRunner.Lessons;

/// <summary>What an inspection finds on the practice head.</summary>
/// <param name="Step">The inspection's full name.</param>
/// <param name="Of">The head's condition.</param>
/// <param name="Words">The finding for each word the condition can have; a condition without one is found as the first good finding.</param>
/// <param name="Source">Where it stands in the file.</param>
public sealed record BoundFinding(string Step, string Of, IReadOnlyDictionary<string, string> Words, Place Source)
{
    /// <summary>What is looked at, by which it is drawn: the condition itself, unless it shows itself in several ways.</summary>
    public string Seen { get; init; } = Of;
}
