namespace ProcRunner.Records.Story;

/// <summary>A reading, finding or choice whose place a later one took.</summary>
/// <param name="About">What it is about.</param>
/// <param name="Position">The position's name, or "head".</param>
/// <param name="Was">What it was.</param>
/// <param name="WasBy">Who entered it.</param>
/// <param name="Cause">What moved, so that it no longer held; empty when nothing did.</param>
/// <param name="Then">What took its place.</param>
/// <param name="ThenBy">Who entered that.</param>
public sealed record Earlier(
    string About,
    string Position,
    string Was,
    Stamped WasBy,
    string Cause,
    string Then,
    Stamped ThenBy
);
