namespace ProcRunner.Records.Story;

/// <summary>A reading, finding or choice whose place a later one took.</summary>
/// <param name="About">What it is about.</param>
/// <param name="Position">The position's name, or "head".</param>
/// <param name="Was">What it was.</param>
/// <param name="WasBy">Who entered it.</param>
/// <param name="Cause">Why it no longer held: what moved, what was decided, or which step asked for it again.</param>
/// <param name="Until">The entry in which it stopped holding.</param>
/// <param name="Then">What took its place.</param>
/// <param name="ThenBy">Who entered that.</param>
public sealed record Earlier(
    string About,
    string Position,
    string Was,
    Stamped WasBy,
    string Cause,
    Stamped Until,
    string Then,
    Stamped ThenBy
)
{
    /// <summary>True when it was taken again and came out the same.</summary>
    public bool IsSame => Was == Then;
}
